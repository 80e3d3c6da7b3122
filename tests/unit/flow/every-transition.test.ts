import { expect, test } from 'vitest';
import { checkMachine, lessonMachine, setMachine, siteProblemMachine, type CheckEvent, type FlowEvent, type LessonEvent, type SetEvent } from '#lib/flow/index.ts';
import { walkEveryTransition } from '../../support/every-transition.ts';
import { right, tied, unreadable, wrong, wronglyTied } from './grades.ts';

const bools = [true, false];

test('every transition of the lesson machine is taken', () => {
	const events: LessonEvent[] = [
		{ type: 'SHOWN', step: 0 },
		{ type: 'SHOWN', step: 1 },
		{ type: 'GO_ON' },
		...bools.flatMap((isRight) =>
			bools.flatMap((aided) => bools.map((ready): LessonEvent => ({ type: 'ANSWERED', right: isRight, aided, ready })))
		),
		{ type: 'CHECK_STARTED' },
		{ type: 'CHECK_ENDED', passed: true },
		{ type: 'CHECK_ENDED', passed: false },
		{ type: 'REOPENED' }
	];
	for (const rungs of [0, 2]) {
		const walked = walkEveryTransition(lessonMachine, { lesson: 'free-fall', steps: 2, rungs }, events);
		const cannot = rungs === 0 ? /^fading|--> fading$|showing --GO_ON\[1\]/ : /trying --ANSWERED\[1\]/;
		expect(walked.never.filter((one) => !cannot.test(one))).toEqual([]);
		expect(walked.all.length).toBeGreaterThan(20);
	}
});

test('every transition of the check machine is taken', () => {
	const events: CheckEvent[] = [
		{ type: 'FILLED', item: 'i1' },
		{ type: 'FILLED', item: 'i2' },
		{ type: 'FILLED', item: 'elsewhere' },
		{ type: 'EMPTIED', item: 'i1' },
		{ type: 'REVIEW' },
		{ type: 'BACK' },
		{ type: 'HAND_IN' },
		{ type: 'JUDGED', standing: 'more', items: ['i3'] },
		{ type: 'JUDGED', standing: 'passed', items: [] },
		{ type: 'JUDGED', standing: 'failed', items: [] },
		{ type: 'JUDGED', standing: 'cells-open', items: [] }
	];
	const walked = walkEveryTransition(checkMachine, { items: ['i1', 'i2'] }, events);
	expect(walked.never).toEqual([]);
	expect(walked.all.length).toBeGreaterThan(11);
});

test('every transition of the practice-set machine is taken', () => {
	const events: SetEvent[] = [
		...[0, 1, 2, 3, 4, 5].flatMap((place) => bools.map((isRight): SetEvent => ({ type: 'ANSWERED', place, right: isRight, critical: 0 }))),
		{ type: 'ANSWERED', place: 0, right: false, critical: 2 },
		{ type: 'ANSWERED', place: 9, right: true, critical: 0 },
		{ type: 'RECALLED' }
	];
	const walked = walkEveryTransition(setMachine, { count: 3, rule: { right: 2, critical: 0 } }, events);
	// After nothing, one answer ends a round of one problem alone.
	const single = walkEveryTransition(setMachine, { count: 1, rule: { right: 1, critical: 0 } }, events);
	expect(walked.never.filter((one) => single.never.includes(one))).toEqual([]);
	expect(walked.all.length).toBeGreaterThan(10);
});

test('every transition of the site-problem machine is taken', () => {
	const step = { kind: 'step', mark: 'right', answer: 1, right: 1 } as const;
	const events: FlowEvent[] = [
		{ type: 'WORK' },
		{ type: 'TYPE', ask: 'free-fall', text: '1.4' },
		{ type: 'NOT_STATED', ask: 'free-fall', on: true },
		{ type: 'DECIDE', ask: 'decision', decision: 'tie-off' },
		{ type: 'HELP', ask: 'free-fall', level: 1 },
		{ type: 'CHECK' },
		{ type: 'GRADED', grades: { 'free-fall': right, decision: tied }, attempt: 'first' },
		{ type: 'GRADED', grades: { 'free-fall': wrong, decision: wronglyTied }, attempt: 'first' },
		{ type: 'GRADED', grades: { 'free-fall': unreadable, decision: tied }, attempt: 'first' },
		{ type: 'SENT', id: 'first', state: 'waiting' },
		{ type: 'SERVER_GRADED', id: 'first', grades: { 'free-fall': right, decision: tied } },
		{ type: 'SERVER_GRADED', id: 'first', grades: { 'free-fall': wrong, decision: wronglyTied } },
		{ type: 'CHOOSE', ask: 'free-fall', candidate: 0 },
		{ type: 'FOCUS', ask: 'free-fall' },
		{ type: 'FOCUS', ask: 'elsewhere' },
		{ type: 'TRY_AGAIN' },
		{ type: 'STEP_THROUGH', ask: 'free-fall', of: 2 },
		{ type: 'TYPE_STEP', text: '1' },
		{ type: 'STEP_GRADED', grade: step },
		{ type: 'NEXT_STEP' },
		{ type: 'LEAVE_STEPS' },
		{ type: 'NEXT' }
	];
	const drawing = { scenario: 'bridge-bearing', version: 1, drawVersion: 1, seed: 7, acceptedTry: 3 };
	const input = { drawing, asks: ['free-fall', 'decision'], decisions: ['decision'] };
	const entry = { text: '1', notStated: false, decision: undefined };
	const entries = { 'free-fall': entry, decision: { ...entry, text: '', decision: 'tie-off' as const } };
	const walked = walkEveryTransition(siteProblemMachine, input, events);
	const goneOn = walkEveryTransition(siteProblemMachine, { ...input, entries }, events);
	expect(walked.never.filter((one) => goneOn.never.includes(one))).toEqual([]);
});
