import { expect, test } from 'vitest';
import { messages } from '#lib/text/index.ts';

// Real Academia Española, Ortografía 2010, from memory: comma or point; this program writes the comma in Spanish.
test.each([
	['5,000 lbf (22.2 kN)', '5.000 lbf (22,2 kN)'],
	['0.6 m', '0,6 m'],
	['6 ft', '6 ft'],
	['2 ft.', '2 ft.']
])('a number that a law prints as %s reads %s in Spanish, and as printed in English', async (printed, spanish) => {
	expect((await messages('es')).lessons.printed({ value: printed })).toBe(spanish);
	expect((await messages('en')).lessons.printed({ value: printed })).toBe(printed);
});
