/** Which slips, alone and by two, a person can make in an ask, and what each then answers. */
import { byHand, onPaper } from './sheet.ts';
import { SLIPS_IN_ORDER, type HandStep, type HandTarget, type HandValues } from './values.ts';

/** One slip, or two in the order in which they act, with the answer in SI. */
export interface HandMistake {
	readonly slips: readonly string[];
	/** The step in which each acts. */
	readonly steps: readonly HandStep[];
	readonly value: number;
}

export interface HandMistakes {
	/** The right answer; undefined where the problem does not show a number that it needs. */
	readonly right: number | undefined;
	readonly singles: readonly HandMistake[];
	readonly pairs: readonly HandMistake[];
}

/** Answers nearer to each other than this are one answer. */
const SAME = 1e-9;

function isAnother(value: number, than: number): boolean {
	return !Number.isFinite(than) || Math.abs(value - than) > SAME;
}

/**
 * @returns all that applies: a slip has a place, its value is finite, positive and not the right one; a
 * pair differs from each of its two slips alone as well, and both of them have a place by themselves.
 */
export function mistakesIn(values: HandValues, target: HandTarget): HandMistakes {
	const right = byHand(values, target, []);
	if (right === undefined) return { right, singles: [], pairs: [] };
	const placed: HandMistake[] = [];
	for (const slip of SLIPS_IN_ORDER) {
		const answered = onPaper(values, target, [slip]);
		if (answered !== undefined) placed.push({ slips: [slip], ...answered });
	}
	const applies = (value: number): boolean => Number.isFinite(value) && value > 0 && isAnother(value, right);
	const pairs: HandMistake[] = [];
	placed.forEach((first, i) => {
		for (const second of placed.slice(i + 1)) {
			const slips = [...first.slips, ...second.slips];
			const answered = onPaper(values, target, slips);
			if (answered === undefined || !applies(answered.value)) continue;
			const { value } = answered;
			if (isAnother(value, first.value) && isAnother(value, second.value)) pairs.push({ slips, ...answered });
		}
	});
	return { right, singles: placed.filter((one) => applies(one.value)), pairs };
}
