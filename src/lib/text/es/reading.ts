import type * as en from '../en/reading.ts';

export const questions: typeof en.questions = {
	'thousands-or-decimal': ({ first, second }) => `¿Es ${first} o ${second}?`,
	'feet-inches-or-decimal': ({ first, second }) => `¿Es ${first} o ${second}?`,
	'centimetres-or-decimal': ({ first, second }) => `¿Es ${first} o ${second}?`
};

export const unreadable: typeof en.unreadable = {
	empty: ({ example }) => `Escriba aquí un número, por ejemplo ${example}.`,
	'too-long': ({ example }) => `Es muy largo para un número. Escriba algo como ${example}.`,
	'no-number': ({ example }) => `Aquí no hay ningún número. Escriba algo como ${example}.`,
	'text-before-number': ({ part, example }) => `Quite «${part}» antes del número. Escriba algo como ${example}.`,
	'malformed-number': ({ part, example }) => `«${part}» no se puede leer como número. Escriba algo como ${example}.`,
	'two-numbers': ({ part, example }) => `«${part}» tiene dos números. Escriba uno, por ejemplo ${example}.`,
	calculation: ({ part, example }) => `«${part}» es una cuenta. Escriba el resultado, por ejemplo ${example}.`,
	'unknown-unit': ({ part, unit }) => `«${part}» no es una unidad conocida aquí. El campo cuenta en ${unit}.`,
	'wrong-dimension': ({ part, unit }) => `«${part}» mide otra cosa. El campo cuenta en ${unit}.`,
	'not-finite': ({ example }) => `No es un número que se pueda medir. Escriba algo como ${example}.`
};

export const reading: typeof en.reading = {
	echo: ({ value }) => `Usted escribió ${value}.`,
	notCounted: 'Esto no cuenta como error.',
	unitIs: ({ unit }) => `en ${unit}`,
	choose: '¿Cuál quiere decir?'
};
