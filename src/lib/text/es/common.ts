import type * as en from '../en/common.ts';

/** "y" is "e" before the sound i. */
function and(word: string): string {
	return /^(?:i|hi(?!e))/i.test(word) ? 'e' : 'y';
}

export const common: typeof en.common = {
	name: 'Underfoot',
	yes: 'Sí',
	no: 'No',
	notKnown: 'no se sabe',
	none: 'ninguno',
	list: (items) => {
		const last = items[items.length - 1] ?? '';
		return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} ${and(last)} ${last}`;
	},
	pair: ({ first, second }) => `${first} (${second})`,
	unit: 'Unidad',
	draftLanguage: 'Esta traducción es un borrador. Aún no la ha revisado ninguna persona competente y bilingüe.',
	language: 'Idioma'
};

export const turnedDown: typeof en.turnedDown = {
	refused: 'El plan es de un tipo que no se admite.',
	constraint: 'No se cumple una regla de los sorteos.',
	'no-answer': 'Una pregunta no tiene respuesta mayor que cero.',
	'near-limit': 'Una magnitud queda muy cerca de su límite.',
	'slip-looks-right': 'Un error da un número que pasaría por bueno.',
	'slips-look-alike': 'Dos errores dan números que no se distinguen.',
	'other-outcome': 'El plan resulta de otro modo que el buscado en este sorteo.',
	'from-memory': 'Decidiría un límite de memoria.'
};
