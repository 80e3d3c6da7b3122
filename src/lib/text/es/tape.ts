import { de } from '../nouns.ts';
import type * as en from '../en/tape.ts';

export const tape: typeof en.tape = {
	needed: 'Hace falta',
	own: 'Su cinta',
	total: 'Hace falta',
	zero: ({ place }) => `0 = ${place}`,
	missing: ({ amount }) => `faltan ${amount}`,
	tooMuch: ({ amount }) => `sobran ${amount}`,
	instead: ({ amount, right }) => `${amount} en lugar de ${right}`,
	topOf: ({ thing }) => `parte alta ${de(thing)}`,
	firstMet: 'lo primero que se toca',
	thereIs: 'Hay',
	shortBy: 'Faltan',
	spare: 'Sobran',
	you: ({ value }) => `usted: ${value}`,
	youSame: 'usted: igual',
	youLeftOut: 'usted: falta',
	youTwice: 'usted: dos veces',
	noOwnTape: 'Su número no da una cadena propia.'
};
