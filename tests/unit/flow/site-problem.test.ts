import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createActor } from 'xstate';
import { getShortestPaths } from 'xstate/graph';
import {
	answersOf,
	siteProblemMachine,
	type Drawing,
	type FlowEvent,
	type FlowInput,
	type Grades
} from '#lib/flow/index.ts';
import { follows, right, rounded, tied, unreadable, wrong, wronglyTied } from './grades.ts';

const drawing: Drawing = { scenario: 'bridge-bearing', version: 1, drawVersion: 1, seed: 7, acceptedTry: 3 };
const input: FlowInput = { drawing, asks: ['free-fall', 'required', 'decision'], decisions: ['decision'] };

const ALL_RIGHT: Grades = { 'free-fall': right, required: rounded, decision: tied };
const ONE_WRONG: Grades = { 'free-fall': right, required: wrong, decision: wronglyTied };
const ONE_QUERY: Grades = { 'free-fall': unreadable, required: right, decision: tied };

const ENTERED: readonly FlowEvent[] = [
	{ type: 'TYPE', ask: 'free-fall', text: '1.40' },
	{ type: 'TYPE', ask: 'required', text: '3.50' },
	{ type: 'DECIDE', ask: 'decision', decision: 'tie-off' }
];

function after(...events: readonly FlowEvent[]) {
	const actor = createActor(siteProblemMachine, { input });
	actor.start();
	for (const event of events) actor.send(event);
	return actor.getSnapshot();
}

const graded = (grades: Grades, attempt = 'first'): readonly FlowEvent[] => [...ENTERED, { type: 'CHECK' }, { type: 'GRADED', grades, attempt }];

describe('working', () => {
	test('starts with reading, and the first typed number is work', () => {
		expect(after().value).toBe('reading');
		expect(after({ type: 'WORK' }).value).toBe('working');
		expect(after({ type: 'TYPE', ask: 'free-fall', text: '1' }).value).toBe('working');
	});

	test('a check of empty fields marks nothing and names the fields', () => {
		const { value, context } = after({ type: 'TYPE', ask: 'required', text: '3.5' }, { type: 'CHECK' });
		expect(value).toBe('working');
		expect(context.missing).toEqual(['free-fall', 'decision']);
		expect(context.sent).toEqual([]);
	});

	test('a field that is filled is missed no longer', () => {
		const { context } = after({ type: 'CHECK' }, { type: 'TYPE', ask: 'free-fall', text: '1' });
		expect(context.missing).toEqual(['required', 'decision']);
	});

	test('text of blanks is no answer', () => {
		expect(after(...ENTERED, { type: 'TYPE', ask: 'required', text: '  ' }, { type: 'CHECK' }).context.missing).toEqual(['required']);
	});

	test('an ask that the problem does not have changes nothing', () => {
		expect(after({ type: 'TYPE', ask: 'elsewhere', text: '1' }).context.entries).toEqual({});
	});

	test('"cannot be stated" takes the place of a typed number, and typing takes it back', () => {
		const stated = after(...ENTERED, { type: 'NOT_STATED', ask: 'required', on: true });
		expect(answersOf(stated.context).get('required')).toEqual({ kind: 'not-stated' });
		const typed = after(...ENTERED, { type: 'NOT_STATED', ask: 'required', on: true }, { type: 'TYPE', ask: 'required', text: '4' });
		expect(answersOf(typed.context).get('required')).toEqual({ kind: 'number', text: '4' });
	});
});

describe('help', () => {
	const hint: FlowEvent = { type: 'HELP', ask: 'required', level: 1 };

	test('comes one level after the other, apart for each question', () => {
		expect(after({ ...hint, level: 2 }).context.help).toEqual({});
		const { value, context } = after(hint, { ...hint, level: 2 }, { ...hint, ask: 'decision' }, { ...hint, level: 2 });
		expect(value).toBe('working');
		expect(context.help).toEqual({ required: 2, decision: 1 });
	});

	test('is for questions that are asked', () => {
		expect(after({ ...hint, ask: 'elsewhere' }).context.help).toEqual({});
	});

	test('stays through another try, and none is given once the answers are marked', () => {
		const { context } = after(hint, ...graded(ONE_WRONG), { ...hint, level: 2 }, { type: 'TRY_AGAIN' });
		expect(context.help).toEqual({ required: 1 });
	});
});

describe('grading', () => {
	test('all right is solved, by rounding too', () => {
		expect(after(...graded(ALL_RIGHT)).value).toBe('solved');
	});

	test('a wrong number is explained, and stands before the wrong decision that follows from it', () => {
		const { value, context } = after(...graded(ONE_WRONG));
		expect(value).toBe('explained');
		expect(context.focus).toBe('required');
	});

	test('a number that follows an own earlier error is not solved', () => {
		expect(after(...graded({ 'free-fall': wrong, required: follows, decision: tied })).context.focus).toBe('free-fall');
	});

	test('an entry that cannot be read goes back to work, is no attempt, and keeps no marks', () => {
		const { value, context } = after(...graded(ONE_QUERY));
		expect(value).toBe('working');
		expect(context.sent).toEqual([]);
		expect(Object.keys(context.grades ?? {})).toEqual(['free-fall']);
	});

	test('a question is forgotten once its field changes', () => {
		const { context } = after(...graded(ONE_QUERY), { type: 'TYPE', ask: 'free-fall', text: '1.4' });
		expect(context.grades).toEqual({});
	});
});

describe('after the explanation', () => {
	test('try again keeps what was typed and forgets the marks', () => {
		const { value, context } = after(...graded(ONE_WRONG), { type: 'TRY_AGAIN' });
		expect(value).toBe('working');
		expect(context.entries['required']?.text).toBe('3.50');
		expect(context.grades).toBeUndefined();
	});

	test('each attempt has an id of its own, the last at the end', () => {
		const { context } = after(...graded(ONE_WRONG), { type: 'TRY_AGAIN' }, { type: 'CHECK' }, { type: 'GRADED', grades: ALL_RIGHT, attempt: 'second' });
		expect(context.sent.map((one) => one.id)).toEqual(['first', 'second']);
	});

	test('the server’s grades take the place of the device’s where they mark otherwise, and it is said', () => {
		const { value, context } = after(...graded(ALL_RIGHT), { type: 'SERVER_GRADED', id: 'first', grades: ONE_WRONG });
		expect(value).toBe('explained');
		expect(context.serverDiffers).toBe(true);
		expect(context.grades).toEqual(ONE_WRONG);
		expect(context.sent).toEqual([{ id: 'first', state: 'stored' }]);
	});

	test('the same marks of the server change nothing but that they are stored', () => {
		const { value, context } = after(...graded(ONE_WRONG), { type: 'SERVER_GRADED', id: 'first', grades: ONE_WRONG });
		expect(value).toBe('explained');
		expect(context.serverDiffers).toBe(false);
	});

	test('grades of an attempt that is no longer on screen do not replace the ones that are', () => {
		const { value, context } = after(
			...graded(ONE_WRONG),
			{ type: 'TRY_AGAIN' },
			{ type: 'CHECK' },
			{ type: 'GRADED', grades: ALL_RIGHT, attempt: 'second' },
			{ type: 'SERVER_GRADED', id: 'first', grades: ONE_WRONG }
		);
		expect(value).toBe('solved');
		expect(context.sent[0]).toEqual({ id: 'first', state: 'stored' });
	});

	test('steps are worked one after the other, each only once it is graded', () => {
		const start: readonly FlowEvent[] = [...graded(ONE_WRONG), { type: 'STEP_THROUGH', ask: 'required', of: 2 }];
		expect(after(...start, { type: 'NEXT_STEP' }).context.walk?.at).toBe(0);
		const step = { type: 'STEP_GRADED', grade: { kind: 'step', mark: 'wrong', answer: 1, right: 2 } } as const;
		const first = after(...start, { type: 'TYPE_STEP', text: '1' }, step, { type: 'NEXT_STEP' });
		expect(first.value).toBe('stepping');
		expect(first.context.walk).toMatchObject({ at: 1, steps: [{ text: '1', grade: step.grade }, { text: '' }] });
		const last = after(...start, step, { type: 'NEXT_STEP' }, step, { type: 'NEXT_STEP' });
		expect(last.value).toBe('walked');
	});

	test('a graded step is not typed over', () => {
		const step = { type: 'STEP_GRADED', grade: { kind: 'step', mark: 'right', answer: 1, right: 1 } } as const;
		const { context } = after(...graded(ONE_WRONG), { type: 'STEP_THROUGH', ask: 'required', of: 2 }, { type: 'TYPE_STEP', text: '1' }, step, {
			type: 'TYPE_STEP',
			text: '2'
		});
		expect(context.walk?.steps[0]?.text).toBe('1');
	});

	test('next leaves the problem for good', () => {
		const { value, status } = after(...graded(ALL_RIGHT), { type: 'NEXT' });
		expect([value, status]).toEqual(['left', 'done']);
	});
});

const EVENTS: readonly FlowEvent[] = [
	{ type: 'WORK' },
	...ENTERED,
	{ type: 'HELP', ask: 'required', level: 1 },
	{ type: 'CHECK' },
	{ type: 'GRADED', grades: ALL_RIGHT, attempt: 'a' },
	{ type: 'GRADED', grades: ONE_WRONG, attempt: 'b' },
	{ type: 'GRADED', grades: ONE_QUERY, attempt: 'c' },
	{ type: 'SERVER_GRADED', id: 'a', grades: ONE_WRONG },
	{ type: 'SERVER_GRADED', id: 'b', grades: ALL_RIGHT },
	{ type: 'SENT', id: 'a', state: 'waiting' },
	{ type: 'CHOOSE', ask: 'required', candidate: 1 },
	{ type: 'FOCUS', ask: 'free-fall' },
	{ type: 'STEP_THROUGH', ask: 'required', of: 1 },
	{ type: 'STEP_GRADED', grade: { kind: 'step', mark: 'right', answer: 1, right: 1 } },
	{ type: 'NEXT_STEP' },
	{ type: 'LEAVE_STEPS' },
	{ type: 'TRY_AGAIN' }
];

test('whatever happens, in whatever order, nothing typed is lost and nothing shown is ungraded', () => {
	fc.assert(
		fc.property(fc.array(fc.constantFrom(...EVENTS), { maxLength: 40 }), (events) => {
			const actor = createActor(siteProblemMachine, { input });
			actor.start();
			let typed: string | undefined;
			for (const event of events) {
				actor.send(event);
				if (event.type === 'TYPE' && event.ask === 'required') {
					const { value } = actor.getSnapshot();
					if (value === 'working') typed = '3.50';
				}
			}
			const { value, context } = actor.getSnapshot();
			if (typed !== undefined) expect(context.entries['required']?.text).toBe(typed);
			if (value === 'explained' || value === 'solved' || value === 'walked' || value === 'stepping') {
				expect(context.grades).toBeDefined();
				expect(context.sent.length).toBeGreaterThan(0);
			}
			if (value === 'stepping') expect(context.walk).toBeDefined();
			expect(JSON.parse(JSON.stringify(context.drawing))).toEqual(drawing);
		})
	);
});

test('every state can be reached, and each but the last can be left for another try or the next problem', () => {
	const paths = getShortestPaths(siteProblemMachine, {
		events: [...EVENTS, { type: 'NEXT' }],
		input,
		serializeState: (state) => JSON.stringify([state.value, state.context.walk?.at, Object.keys(state.context.entries).length]),
		limit: 100_000
	});
	const states = paths.flatMap((path) => [path.state, ...path.steps.map((step) => step.state)]);
	const reached = new Set(states.map((state) => String(state.value)));
	expect([...reached].sort()).toEqual(['explained', 'grading', 'left', 'reading', 'solved', 'stepping', 'walked', 'working']);
	for (const value of ['explained', 'solved', 'stepping', 'walked']) {
		const found = states.find((state) => state.value === value);
		expect(found?.can({ type: 'TRY_AGAIN' }), value).toBe(true);
		expect(found?.can({ type: 'NEXT' }), value).toBe(true);
	}
});
