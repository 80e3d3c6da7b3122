import type * as en from '../en/diagnosis.ts';

export const diagnosis: typeof en.diagnosis = {
	asserted: ({ clause }) => `Parece que ${clause}.`,
	couldBe: ({ clause }) => `Podría ser esto: ${clause}.`,
	couldBePair: ({ first, second }) => `Podrían ser dos cosas a la vez. Una: ${first}. Dos: ${second}.`,
	confirmed: ({ clause }) => `Entonces fue esto: ${clause}.`,
	step: ({ the }) => `Su número y el cálculo se separan en este paso: ${the}.`,
	twoFit: 'Dos errores explican su número. ¿Cuál fue el suyo?',
	severalFit: 'Más de un error explica su número. ¿Cuál fue el suyo?',
	whichUsed: ({ the, first, second }) => `Dos errores explican su número. ¿Qué usó para ${the}: ${first} o ${second}?`,
	neither: 'Ninguno de estos',
	none: 'Ningún error conocido explica este número.',
	noneHelp: 'Es común y no es grave. Vaya paso a paso: así verá dónde se separa.',
	alsoFits: ({ name }) => `Esto también encaja: ${name}.`,
	followsOwn: 'Bien con su propio número anterior. El error cuenta una vez, donde se hizo.',
	roundedEarly: 'Usted redondeó en el camino. Guarde una cifra más hasta el final.'
};

export const certainty: typeof en.certainty = {
	asserted: 'Lo más probable',
	'could-be': 'Podría ser',
	ambiguous: 'Más de uno encaja',
	none: 'Sin patrón'
};

export const entrySlips: typeof en.entrySlips = {
	'inches-as-decimals': {
		label: 'Pulgadas escritas como decimales',
		title: ({ typed }) => `Podría ser que ${typed} eran pies y pulgadas.`,
		hint: 'Un pie tiene 12 pulgadas. Escriba pies y pulgadas con sus unidades: 5 pies 6 pulg.'
	},
	'other-unit': {
		label: 'Otra unidad',
		title: ({ typed, unit }) => `Podría ser que ${typed} está en ${unit}.`,
		hint: 'Escriba la unidad tras el número, o pase el número a la unidad del campo.'
	},
	'digits-swapped': {
		label: 'Cifras cambiadas de lugar',
		title: ({ typed }) => `Podría ser que en ${typed} dos cifras cambiaron de lugar.`,
		hint: 'Escriba el número otra vez.'
	},
	'decimal-shifted': {
		label: 'Coma en otro lugar',
		title: ({ typed }) => `Podría ser que la coma de ${typed} está en otro lugar.`,
		hint: 'Imagine la medida junto a una persona. ¿Puede ser diez veces más, o diez veces menos?'
	},
	sign: {
		label: 'Signo',
		title: ({ typed }) => `Podría ser que ${typed} tiene el signo cambiado.`,
		hint: 'Las caídas y los espacios libres cuentan hacia abajo y van sin signo menos.'
	},
	'given-handed-in': {
		label: 'Un dato como respuesta',
		title: ({ typed, the }) => `${typed} es ${the}, tal como está en el problema.`,
		hint: 'La respuesta no está escrita allí. Hay que calcularla.'
	},
	'step-handed-in': {
		label: 'Un paso como respuesta',
		title: ({ typed, the }) => `${typed} es ${the}: un paso del camino, no el final.`,
		hint: 'Siga desde este número.'
	}
};
