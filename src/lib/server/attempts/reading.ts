import { echoQuantity, unitSymbol, writeQuantity, type Language, type Question, type UnitId, type Unreadable, type WrittenUnit } from '#lib/quantity/index.ts';
import { entryUnit, type NumberAsk } from '#lib/scenario/index.ts';
import type { Messages } from '#lib/text/index.ts';
import type { InputProblem } from '../problems.ts';

/** A good entry for each unit that answers are asked in, SI: of the size that such answers have. */
const EXAMPLES: Readonly<Partial<Record<UnitId, { readonly si: number; readonly unit: WrittenUnit }>>> = {
	m: { si: 1.4, unit: 'm' },
	ft: { si: 1.3716, unit: 'ft' },
	in: { si: 1.3716, unit: 'ft-in' },
	kg: { si: 95, unit: 'kg' },
	lb: { si: 95, unit: 'lb' },
	kN: { si: 4000, unit: 'kN' },
	lbf: { si: 4000, unit: 'lbf' }
};

/** An entry for an ask that would be read. */
function exampleFor(ask: NumberAsk, language: Language): string {
	const example = EXAMPLES[ask.precision.unit];
	return example === undefined ? '1' : writeQuantity(example.si, { unit: example.unit, language });
}

/**
 * What is said of an entry that is not read as one number. It is no wrong answer: it is asked for again.
 * @param field the name of the entry
 */
export function readingProblem(
	field: string,
	reading: Unreadable | Question,
	ask: NumberAsk,
	language: Language,
	words: Messages
): InputProblem {
	if (reading.kind === 'question') {
		const [first, second] = reading.readings;
		const readings = { first: echoQuantity(first, language), second: echoQuantity(second, language) };
		return { field, problem: words.questions[reading.reason](readings), remedy: words.reading.choose };
	}
	const parts = {
		part: reading.part ?? '',
		unit: unitSymbol(entryUnit(ask), language),
		example: exampleFor(ask, language)
	};
	const told = words.unreadable[reading.reason](parts);
	// The last sentence says what would be right; where there is no other, the entry holds no number at all.
	const end = told.lastIndexOf('. ');
	if (end < 0) return { field, problem: firstSentence(words.unreadable['no-number'](parts)), remedy: told };
	return { field, problem: told.slice(0, end + 1), remedy: told.slice(end + 2) };
}

function firstSentence(text: string): string {
	return text.slice(0, text.indexOf('. ') + 1);
}
