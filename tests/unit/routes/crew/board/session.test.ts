/** The board over plans that somebody entered: whatever can be typed in, it shows the engine's answer or the engine's reason. */
import { beforeAll, describe, expect, test } from 'vitest';
import { analyse, plausibleOf, targetKey } from '#lib/arrest/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { gradeAsk } from '#lib/grading/index.ts';
import { draw, firstDrawn, targetOf, type Problem } from '#lib/scenario/index.ts';
import { messages, staffMessages, type Messages, type StaffMessages } from '#lib/text/index.ts';
import { drawBackdrop } from '../../../../../src/lib/scene/backdrop/draw.ts';
import { layoutElevation } from '../../../../../src/lib/scene/layout/elevation.ts';
import { withCalled } from '../../../../../src/routes/crew/board/model/called.ts';
import { enterPlan } from '../../../../../src/routes/crew/board/model/enter-plan.ts';
import { fieldsOf, type PlanEntry } from '../../../../../src/routes/crew/board/model/plan-fields.ts';
import { BoardSession } from '../../../../../src/routes/crew/board/session.svelte.ts';

let m: Messages & StaffMessages;
beforeAll(async () => {
	m = { ...(await messages('en')), ...(await staffMessages('en')) };
});

function drawn(id: string): Problem {
	const scenario = shippedScenarios().find((one) => one.id === id);
	if (scenario === undefined) throw new Error(`${id} is not shipped`);
	return firstDrawn((one) => draw(scenario, one), 5);
}

async function entered(problem: Problem, entry: PlanEntry): Promise<BoardSession> {
	const session = new BoardSession(problem, problem.scenario.asks.map((one) => one.id), 'en', m);
	await session.enter(entry);
	return session;
}

/** Goes through all that the board shows of one question; throws where any of it does. */
function walkThrough(session: BoardSession): void {
	if (session.marked && session.ask !== undefined) {
		for (const answer of session.ask.kind === 'number' ? ([{ kind: 'number', text: '2.3' }, { kind: 'not-stated' }] as const) : ([{ kind: 'decision', decision: 'tie-off' }] as const)) {
			session.call(withCalled(session.called, answer, gradeAsk(session.speech.problem, session.ask.id, answer, { language: 'en' })));
		}
	}
	const said: string[] = [session.story.lead, ...session.story.paragraphs];
	for (const stop of session.stops) {
		session.to(stop);
		said.push(session.told?.heading ?? '', ...(session.told?.lines ?? []), ...session.calledRows.map((row) => row.value));
		const { tape } = session;
		for (const term of tape.kind === 'draft' ? tape.draft.terms : tape.kind === 'pair' ? tape.pair.needed.terms : []) said.push(term.label);
	}
	said.push(session.absent, session.refusal ?? '', ...session.rows.map((row) => row.value), ...(session.verdict?.rows.map((row) => row.text) ?? []));
	const { fall } = session;
	said.push(...(fall.kind === 'none' ? [fall.why] : Object.values(fall.fall.told)));
	expect(said.join(' ')).not.toMatch(/NaN|Infinity|undefined|null/);
}

/** One question of each plan, another of the next: all together meet every question many times. */
function walkOne(session: BoardSession, i: number): void {
	session.asked(session.asks[i % session.asks.length]?.id ?? '');
	walkThrough(session);
}

/** The ends of what a field can be, in the units of the schema. */
function extremes(problem: Problem): readonly PlanEntry[] {
	const entries = fieldsOf(problem).flatMap(({ id }) => {
		const { least, greatest } = plausibleOf(id);
		const unit = /Mass|Capacity/.test(id) ? 'kg' : /Force|Strength/.test(id) ? 'N' : 'm';
		return [least, greatest].map((value) => ({ texts: { [id]: `${value} ${unit}` }, facts: {} }));
	});
	return entries.filter((entry) => enterPlan(problem, entry, 'en').kind === 'plan');
}

describe('a plan at the end of what can be', () => {
	test.each(['bridge-bearing', 'gutter-repair'])('is answered or refused in words: %s', async (id) => {
		const problem = drawn(id);
		const entries = extremes(problem);
		expect(entries.length).toBeGreaterThan(20);
		for (const [i, entry] of entries.entries()) walkOne(await entered(problem, entry), i);
	});

	test.each(['silo-top'])('is drawn: %s', async (id) => {
		const problem = drawn(id);
		for (const entry of extremes(problem).filter((one) => /Height|Depth|Length|offset|Top|stature|Drop/.test(Object.keys(one.texts)[0] ?? ''))) {
			const session = await entered(problem, entry);
			const drawing = layoutElevation(session.model, { width: 480, height: 340, textScale: 1, tape: { kind: 'none' }, scaleText: null, backdrop: drawBackdrop });
			expect(drawing.height, JSON.stringify(entry)).toBeLessThan(50_000);
		}
	});
});

describe('a plan that was entered', () => {
	test('changes the answer as the engine has it', async () => {
		const problem = drawn('bridge-bearing');
		const session = await entered(problem, { texts: { anchorageHeight: '2.05', lanyardLength: '1.9', elongation: '1.05' }, facts: {} });
		expect(session.entered).toBe(true);
		const outcome = analyse(session.speech.problem.drawn.plan);
		if (outcome.kind === 'refused') throw new Error(outcome.refusal.why);
		for (const ask of session.asks) {
			if (ask.kind !== 'number') continue;
			session.asked(ask.id);
			const finding = outcome.analysis.quantities.get(targetKey(targetOf(ask)));
			expect(session.result).toEqual({ kind: 'known', value: finding?.known === true ? finding.value : NaN });
		}
		const before = new BoardSession(problem, ['free-fall'], 'en', m);
		const fresh = await entered(problem, { texts: { anchorageHeight: '2.05', lanyardLength: '1.9' }, facts: {} });
		fresh.asked('free-fall');
		expect(fresh.result).not.toEqual(before.result);
	});

	test.each<[string, PlanEntry, RegExp]>([
		['a line that does not reach', { texts: { anchorageHeight: '6', lanyardLength: '1' }, facts: {} }, /does not reach the D-ring/],
		['too heavy for the label', { texts: { bodyMass: '190' }, facts: {} }, /cannot be stated from this label/]
	])('tells why it has no answer: %s', async (_what, entry, words) => {
		const session = await entered(drawn('bridge-bearing'), entry);
		session.asked('required');
		expect(session.absent).toMatch(words);
		expect(session.rows).toEqual([]);
		walkThrough(session);
	});

	test('of a kind that is refused says it by name, and asks nothing', async () => {
		const session = await entered(drawn('bridge-bearing'), { texts: {}, facts: { edge: 'yes' } });
		expect(session.refusal).toMatch(/over an edge/);
		expect(session.stops).toEqual([{ kind: 'problem' }]);
	});

	test('that is not whole leaves the drawing as it was', async () => {
		const problem = drawn('bridge-bearing');
		const session = await entered(problem, { texts: { lanyardLength: '40' }, facts: {} });
		expect(session.entered).toBe(false);
		expect(session.problems).toMatchObject({ lanyardLength: { kind: 'range' } });
		expect(session.speech.problem.drawn.plan).toEqual(problem.drawn.plan);
	});
});

test.each(['en', 'es'] as const)('nobody is named, in any scenario: %s', async (language) => {
	const words = { ...(await messages(language)), ...(await staffMessages(language)) };
	for (const scenario of shippedScenarios()) {
		const problem = firstDrawn((one) => draw(scenario, one), 3);
		const session = new BoardSession(problem, scenario.asks.map((one) => one.id), language, words);
		const told = [session.story.title, session.story.lead, ...session.story.paragraphs, ...(session.fall.kind === 'shown' ? Object.values(session.fall.fall.told) : [])].join(' ');
		for (const name of scenario.people) expect(told).not.toContain(name);
		expect(told).toMatch(language === 'en' ? /the worker/i : /la persona/i);
	}
});

test('a number with a known slip is named as that slip', () => {
	const problem = drawn('bridge-bearing');
	const session = new BoardSession(problem, ['required'], 'en', m);
	const { ask } = session;
	if (ask?.kind !== 'number' || session.result?.kind !== 'known') throw new Error('the scenario asks for the clearance');
	const elongation = problem.drawn.plan.absorber?.elongation ?? 0;
	const text = (session.result.value - elongation).toFixed(2);
	session.call(withCalled([], { kind: 'number', text }, gradeAsk(problem, ask.id, { kind: 'number', text }, { language: 'en' })));
	session.to({ kind: 'called', at: 0 });
	expect(session.told?.slips).toEqual(['elongation-left-out']);
	expect(session.told?.critical).toBe(true);
	expect(session.tape).toMatchObject({ kind: 'pair', pair: { notes: [{ id: 'elongation' }] } });
});
