/** Grades as they come from the marking, small enough to read. */
import type { Grade } from '#lib/grading/index.ts';

export const right: Grade = {
	kind: 'number',
	mark: { kind: 'right' },
	answer: 1.4,
	read: undefined,
	right: 1.4,
	diagnosis: undefined,
	label: undefined
};

export const wrong: Grade = { ...right, mark: { kind: 'wrong', critical: true }, answer: 2.3 };
export const rounded: Grade = { ...right, mark: { kind: 'right-by-rounding' } };
export const follows: Grade = { ...right, mark: { kind: 'follows-own', ask: 'free-fall', critical: true } };
export const unreadable: Grade = { kind: 'unreadable', reading: { kind: 'unreadable', reason: 'no-number' } };
export const tied: Grade = { kind: 'decision', mark: { kind: 'right' }, decision: 'tie-off', right: 'tie-off', counts: true };
export const wronglyTied: Grade = {
	kind: 'decision',
	mark: { kind: 'wrong', critical: true },
	decision: 'tie-off',
	right: 'do-not-tie-off',
	counts: false
};
