import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { createActor } from 'xstate';
import {
	MACHINE_VERSION,
	readSnapshot,
	resume,
	siteProblemMachine,
	writeSnapshot,
	type Drawing,
	type FlowContext,
	type FlowEvent,
	type FlowInput
} from '#lib/flow/index.ts';
import { right, tied, unreadable, wrong } from './grades.ts';

const drawing: Drawing = { scenario: 'bridge-bearing', version: 1, drawVersion: 1, seed: 7, acceptedTry: 3 };
const asks = ['free-fall', 'required', 'decision'];
const input: FlowInput = { drawing, asks, decisions: ['decision'] };
const grades = { 'free-fall': right, required: wrong, decision: tied };
const regrading = {
	grade: () => grades,
	walk: (_ask: string, texts: readonly string[]) =>
		texts.map((text) => (text === '' ? undefined : ({ kind: 'step', mark: 'right', answer: 1, right: 1 } as const)))
};

const ENTERED: readonly FlowEvent[] = [
	{ type: 'TYPE', ask: 'free-fall', text: '1.40' },
	{ type: 'TYPE', ask: 'required', text: '2.30' },
	{ type: 'DECIDE', ask: 'decision', decision: 'tie-off' }
];
const EXPLAINED: readonly FlowEvent[] = [...ENTERED, { type: 'CHECK' }, { type: 'GRADED', grades, attempt: 'one' }];

function kept(...events: readonly FlowEvent[]): { text: string; state: string; context: FlowContext } {
	const actor = createActor(siteProblemMachine, { input });
	actor.start();
	for (const event of events) actor.send(event);
	const { value, context } = actor.getSnapshot();
	return { text: writeSnapshot(value, context), state: value, context };
}

describe('what was kept goes on where it was', () => {
	test.each<[string, readonly FlowEvent[]]>([
		['reading', []],
		['working', [...ENTERED, { type: 'HELP', ask: 'required', level: 1 }, { type: 'HELP', ask: 'required', level: 2 }]],
		['explained', [...EXPLAINED, { type: 'SENT', id: 'one', state: 'waiting' }, { type: 'CHOOSE', ask: 'required', candidate: 2 }]],
		['stepping', [...EXPLAINED, { type: 'STEP_THROUGH', ask: 'required', of: 3 }, { type: 'TYPE_STEP', text: '1' }]],
		['walked', [...EXPLAINED, { type: 'STEP_THROUGH', ask: 'required', of: 1 }, { type: 'LEAVE_STEPS' }]]
	])('%s', (state, events) => {
		const before = kept(...events);
		expect(before.state).toBe(state);
		const after = resume(input, readSnapshot(before.text, drawing, asks), regrading);
		expect(after.state).toBe(state);
		expect(after.context.entries).toEqual(before.context.entries);
		expect(after.context.sent).toEqual(before.context.sent);
		expect(after.context.chosen).toEqual(before.context.chosen);
		expect(after.context.help).toEqual(before.context.help);
		expect(after.context.walk?.steps.map((step) => step.text)).toEqual(before.context.walk?.steps.map((step) => step.text));
		// The machine takes it: an actor that starts from it can be spoken to.
		const snapshot = siteProblemMachine.resolveState({ value: after.state, context: after.context });
		const actor = createActor(siteProblemMachine, { input, snapshot });
		actor.start();
		actor.send({ type: 'TRY_AGAIN' });
		expect(actor.getSnapshot().status).toBe('active');
	});

	test('a check that was cut off is work again', () => {
		const before = kept(...ENTERED, { type: 'CHECK' });
		expect(before.state).toBe('grading');
		expect(resume(input, readSnapshot(before.text, drawing, asks), regrading).state).toBe('working');
	});

	test('grades that come out otherwise today lead to the state that fits them', () => {
		const { text } = kept(...EXPLAINED);
		const solved = resume(input, readSnapshot(text, drawing, asks), { ...regrading, grade: () => ({ ...grades, required: right }) });
		expect(solved.state).toBe('solved');
		const asked = resume(input, readSnapshot(text, drawing, asks), { ...regrading, grade: () => ({ ...grades, required: unreadable }) });
		expect(asked.state).toBe('working');
	});

	test('a step-through with another number of steps than today is shown explained', () => {
		const { text } = kept(...EXPLAINED, { type: 'STEP_THROUGH', ask: 'required', of: 3 });
		expect(resume(input, readSnapshot(text, drawing, asks), { ...regrading, walk: () => [] }).state).toBe('explained');
	});
});

describe('what is broken starts over, and typed text is saved if it can be', () => {
	const { text } = kept(...EXPLAINED);
	const changed = (change: Record<string, unknown>): string => JSON.stringify({ ...JSON.parse(text), ...change });

	test.each<[string, string]>([
		['another machine version', changed({ machine: MACHINE_VERSION + 1 })],
		['a state that does not exist', changed({ state: 'flying' })],
		['a walk of the wrong form', changed({ walk: { ask: 'required', at: 9, of: 2, texts: [] } })],
		['steps without a walk', changed({ state: 'stepping', walk: null })]
	])('%s', (_name, broken) => {
		const found = readSnapshot(broken, drawing, asks);
		expect(found.kind).toBe('typed');
		const { state, context } = resume(input, found, regrading);
		expect(state).toBe('working');
		expect(context.entries['required']?.text).toBe('2.30');
	});

	test.each<[string, string | null]>([
		['nothing kept', null],
		['no JSON', '{'],
		['a list', '[1]'],
		['null', 'null'],
		['another seed', changed({ drawing: { ...drawing, seed: 8 } })],
		['another version', changed({ drawing: { ...drawing, version: 2 } })],
		['no drawing', changed({ drawing: null })]
	])('%s', (_name, broken) => {
		expect(readSnapshot(broken, drawing, asks)).toEqual({ kind: 'nothing' });
	});

	test('fields of the wrong form are dropped, each by itself', () => {
		const found = readSnapshot(
			changed({
				entries: { 'free-fall': { text: 7 }, required: { text: 'x'.repeat(9999), decision: 'jump' }, elsewhere: { text: '1' } },
				sent: [{ id: 'a', state: 'lost' }, { id: 3 }, 'b', { id: 'c', state: 'stored' }],
				chosen: { required: -1, 'free-fall': 0.5, decision: 2 },
				help: { required: 4, 'free-fall': 2, elsewhere: 1 },
				focus: 'elsewhere'
			}),
			drawing,
			asks
		);
		if (found.kind !== 'whole') throw new Error(found.kind);
		expect(found.snapshot.entries['free-fall']).toEqual({ text: '', notStated: false, decision: undefined });
		expect(found.snapshot.entries['required']?.text).toHaveLength(200);
		expect(Object.keys(found.snapshot.entries)).toEqual(['free-fall', 'required']);
		expect(found.snapshot.sent).toEqual([{ id: 'c', state: 'stored' }]);
		expect(found.snapshot.chosen).toEqual({ decision: 2 });
		expect(found.snapshot.help).toEqual({ 'free-fall': 2 });
		expect(found.snapshot.focus).toBeNull();
	});

	test('no text makes reading fail', () => {
		fc.assert(
			fc.property(fc.oneof(fc.string(), fc.json()), (anything) => {
				expect(['whole', 'typed', 'nothing']).toContain(readSnapshot(anything, drawing, asks).kind);
			})
		);
	});
});
