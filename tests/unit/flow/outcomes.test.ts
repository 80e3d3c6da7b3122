import { describe, expect, test } from 'vitest';
import { shippedScenario } from '#lib/course/shipped.ts';
import { outcomesOf } from '#lib/flow/index.ts';
import type { Grade } from '#lib/grading/index.ts';
import type { Ask } from '#lib/scenario/index.ts';
import { follows, right, rounded, tied, unreadable, wrong, wronglyTied } from './grades.ts';

const asks = shippedScenario('bridge-bearing')?.asks ?? [];
const FREE_FALL = { ask: 'free-fall', cell: 'free-fall', skill: 'freeFall' };
const REQUIRED = { ask: 'required', cell: 'required-clearance', skill: 'requiredClearance@surface' };
const DECISION = { ask: 'decision', cell: 'decisions', skill: 'decision' };
const FINE = { wrong: false, critical: false, slip: undefined };

function asNumber(grade: Grade): Extract<Grade, { kind: 'number' }> {
	if (grade.kind !== 'number') throw new Error('is no number');
	return grade;
}

const likeElongation: Grade = {
	...asNumber(wrong),
	diagnosis: { certainty: 'asserted', candidates: [{ kind: 'slips', slips: ['elongation-left-out'], steps: [], value: 1, weight: 0 }], step: undefined }
};

describe('what answers came to', () => {
	test('is told of each ask, by cell and finer skill', () => {
		expect(outcomesOf(asks, { 'free-fall': right, required: rounded, decision: tied })).toEqual([
			{ ...FREE_FALL, ...FINE },
			{ ...REQUIRED, ...FINE },
			{ ...DECISION, ...FINE }
		]);
	});

	test('a wrong number has the one slip that it looks like', () => {
		expect(outcomesOf(asks, { 'free-fall': right, required: likeElongation })).toEqual([
			{ ...FREE_FALL, ...FINE },
			{ ...REQUIRED, wrong: true, critical: true, slip: 'elongation-left-out' }
		]);
		expect(outcomesOf(asks, { required: { ...asNumber(wrong), mark: { kind: 'wrong', critical: false } } })).toEqual([{ ...REQUIRED, wrong: true, critical: false, slip: undefined }]);
		const guessed: Grade = { ...asNumber(likeElongation), diagnosis: { certainty: 'could-be', candidates: asNumber(likeElongation).diagnosis?.candidates ?? [], step: undefined } };
		expect(outcomesOf(asks, { required: guessed })).toMatchObject([{ wrong: true, slip: undefined }]);
	});

	test('a number stated outside the label’s range is a slip of its own', () => {
		expect(outcomesOf(asks, { required: { ...asNumber(wrong), right: undefined, label: 'overlooked' } })).toMatchObject([{ wrong: true, slip: 'label-range-overlooked' }]);
		expect(outcomesOf(asks, { required: { ...asNumber(wrong), label: 'misjudged' } })).toMatchObject([{ wrong: true, slip: undefined }]);
	});

	test('an error counts once: a number that follows from it is right', () => {
		expect(outcomesOf(asks, { 'free-fall': wrong, required: follows })).toEqual([
			{ ...FREE_FALL, wrong: true, critical: true, slip: undefined },
			{ ...REQUIRED, ...FINE }
		]);
	});

	test('a decision with wrong numbers counts only if it accepts a plan that fails', () => {
		expect(outcomesOf(asks, { decision: wronglyTied })).toEqual([{ ...DECISION, wrong: true, critical: true, slip: undefined }]);
		const refused: Grade = { kind: 'decision', mark: { kind: 'wrong', critical: false }, decision: 'do-not-tie-off', right: 'tie-off', counts: false };
		expect(outcomesOf(asks, { decision: refused })).toEqual([]);
		expect(outcomesOf(asks, { decision: { ...refused, counts: true } })).toEqual([{ ...DECISION, wrong: true, critical: false, slip: undefined }]);
	});

	test('what was not asked, or could not be read, tells nothing', () => {
		expect(outcomesOf(asks, { required: unreadable })).toEqual([]);
		expect(outcomesOf([] as readonly Ask[], { required: wrong })).toEqual([]);
	});
});
