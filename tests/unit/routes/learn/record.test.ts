import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CourseRecord } from '#lib/flow/index.ts';
import { recordFrom } from '../../../../src/routes/learn/course/record.ts';

const outcome = { task: 'bridge-bearing.free-fall', kind: 'bridge-bearing', difficulty: 'easy', day: '2026-11-25', aided: false } as const;
const credit = { cell: 'free-fall', skills: ['freeFall'], right: true } as const;

const RECORDS: readonly CourseRecord[] = [
	{ kind: 'shown', lesson: 'free-fall', step: 3 },
	{ kind: 'went-on', lesson: 'stages' },
	{ kind: 'helped', lesson: 'swing', level: 2 },
	{ kind: 'answered', lesson: 'free-fall', right: true, outcome: { ...outcome, credits: [credit, { ...credit, guess: 0.02 }] } },
	{ kind: 'answered', lesson: 'stages', right: false, outcome: { ...outcome, credits: [] } }
];

describe('a record kept on a device', () => {
	test.each(RECORDS.map((record) => [record.kind, record] as const))('is read back as it was: %s', (_kind, record) => {
		expect(recordFrom(JSON.parse(JSON.stringify(record)))).toEqual(record);
	});

	test.each<[string, unknown]>([
		['a lesson that is none', { kind: 'went-on', lesson: 'flying' }],
		['a check, which happens on the server only', { kind: 'check-ended', lesson: 'stages', passed: true }],
		['a step that is no count', { kind: 'shown', lesson: 'stages', step: -1 }],
		['a level that there is not', { kind: 'helped', lesson: 'stages', level: 4 }],
		['no outcome', { kind: 'answered', lesson: 'stages', right: true }],
		['a day that is none', { kind: 'answered', lesson: 'stages', right: true, outcome: { ...outcome, day: '2026-02-30', credits: [] } }],
		['a credit without a cell', { kind: 'answered', lesson: 'stages', right: true, outcome: { ...outcome, credits: [{ skills: [], right: true }] } }],
		['a chance beyond all', { kind: 'answered', lesson: 'stages', right: true, outcome: { ...outcome, credits: [{ ...credit, guess: 7 }] } }],
		['skills that are no texts', { kind: 'answered', lesson: 'stages', right: true, outcome: { ...outcome, credits: [{ ...credit, skills: [1] }] } }]
	])('is dropped where it is broken: %s', (_what, broken) => {
		expect(recordFrom(broken)).toBeUndefined();
	});

	test('never makes reading fail', () => {
		fc.assert(fc.property(fc.anything(), (anything) => {
			const read = recordFrom(anything);
			expect(read === undefined || typeof read.kind === 'string').toBe(true);
		}));
	});
});
