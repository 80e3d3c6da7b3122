import { describe, expect, test } from 'vitest';
import type { Certainty, Grade } from '#lib/grading/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { foundSlips, mostFrequent } from '#lib/flow/index.ts';
import { right, tied, wrong } from './grades.ts';

function wrongBy(certainty: Certainty, ...slips: SlipId[]): Grade {
	if (wrong.kind !== 'number') throw new Error('wrong is no number');
	const candidates = [{ kind: 'slips', slips, steps: [], value: 1, weight: 0 } as const];
	return { ...wrong, diagnosis: { certainty, candidates, step: undefined } };
}

describe('slips found in answers', () => {
	test('are those that were said to look so, each once; guesses and right answers say nothing', () => {
		const grades = {
			'free-fall': wrongBy('asserted', 'lanyard-for-free-fall'),
			required: wrongBy('asserted', 'lanyard-for-free-fall'),
			available: wrongBy('could-be', 'margin-left-out', 'elongation-left-out'),
			capacity: right,
			decision: tied
		};
		expect(foundSlips(grades)).toEqual(['lanyard-for-free-fall']);
		expect(foundSlips({ 'free-fall': wrong })).toEqual([]);
	});

	test('are told by how often they were found, three at most, and alike ones by their names', () => {
		const found = [['c', 'a'], ['c'], ['b'], ['d'], []];
		expect(mostFrequent(found)).toEqual([
			{ slip: 'c', count: 2 },
			{ slip: 'a', count: 1 },
			{ slip: 'b', count: 1 }
		]);
		expect(mostFrequent([])).toEqual([]);
	});
});
