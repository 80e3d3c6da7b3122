/** What the invented crew did: a set that was handed out, answered in part, with invented slips. For looking around only. */
import { randomUUID } from 'node:crypto';
import { shippedScenario } from '#lib/course/shipped.ts';
import { valuesOf } from '#lib/expression/index.ts';
import { asksOfPlace, type SetContent } from '#lib/flow/index.ts';
import { analysisOf, rightValue } from '#lib/grading/index.ts';
import { writeQuantity } from '#lib/quantity/index.ts';
import { draw, inputsFor, slipsWithEffect, variantsFor, type Ask, type NumberAsk, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { SLIP_SET_VERSION, type SlipId } from '#lib/slips/index.ts';
import { receiveAnswers } from '../attempts/receive.ts';
import { shippedVersions } from '../attempts/shipped.ts';
import { dayIn } from '../course/day.ts';
import { findPersonById } from '../db/people.ts';
import type { Database } from '../db/open.ts';
import { assignSet } from '../sets/assign.ts';
import { setDesk } from '../sets/learner.ts';
import { makeSet } from '../sets/make.ts';
import type { Person } from './who.ts';

const SITES = ['bridge-bearing', 'tank-landing', 'shaft-landing'];
const PROBLEMS = 6;
const NAME = 'Clearance before the spring jobs';
const HOUR = 60 * 60 * 1000;
const DAY = 24 * HOUR;

/** Of each learner of the crew, in order: the slips of the problems answered so far; null where the answer is right. */
const ANSWERED: readonly (readonly (SlipId | null)[])[] = [
	['elongation-left-out', 'elongation-left-out', null, 'margin-left-out', 'elongation-left-out'],
	['margin-left-out', null, null, 'margin-left-out', null],
	['elongation-left-out', null, 'lanyard-for-free-fall', null],
	[null, null, null],
	['body-left-out', null],
	[]
];

/** @returns the scenarios of the set. */
function sites(): readonly Scenario[] {
	return SITES.flatMap((id) => shippedScenario(id) ?? []);
}

/** Hands a set out to a crew two days ago, and answers part of it. @param learners ids, in the order of the crew's list */
export async function fillDemoSet(db: Database, trainer: Person, crew: string, learners: readonly string[], now: Date): Promise<void> {
	const scenarios = sites();
	const content: SetContent = {
		scenarios: scenarios.map(({ id, version, asks }) => ({ id, version, asks: asks.map((ask) => ask.id) })),
		count: PROBLEMS,
		rule: { right: PROBLEMS - 1, critical: 0 },
		sameForAll: false,
		language: null,
		aims: []
	};
	const then = new Date(now.getTime() - 2 * DAY);
	const made = await makeSet(db, trainer, { name: NAME, content }, then);
	if (made.kind !== 'made') throw new Error('The set of the demo was refused');
	const dueDay = dayIn('UTC', new Date(now.getTime() + 2 * DAY));
	const assigned = await assignSet(db, trainer, made.id, { crews: [crew], people: [], dueDay }, then);
	if (assigned.kind !== 'assigned') throw new Error('The set of the demo was not assigned');
	const [assignment = ''] = assigned.assignments;
	for (const [i, id] of learners.entries()) {
		const learner = await learnerOf(db, id);
		const slips = ANSWERED[i] ?? [];
		const desk = await setDesk(db, learner, assignment, then);
		for (const [place, of] of (desk?.places ?? []).slice(0, slips.length).entries()) {
			const scenario = scenarios.find((one) => one.id === of.scenario);
			const drawn = scenario === undefined ? undefined : draw(scenario, of.seed);
			if (scenario === undefined || drawn?.kind !== 'drawn') throw new Error('A problem of the demo cannot be drawn');
			const body = { ...answersTo(drawn.problem, asksOfPlace(scenario, of), slips[place] ?? null), set: { assignment, place } };
			const at = new Date(then.getTime() + (place + 1) * HOUR);
			const receipt = await receiveAnswers(db, { cookies: NO_COOKIES, secure: true, answerer: learner.answerer, who: learner }, body, shippedVersions, at);
			if (receipt.kind !== 'stored') throw new Error('An answer of the demo was refused');
		}
	}
}

/** Nobody's browser: who answers is known. */
const NO_COOKIES = { get: () => undefined, set: () => undefined };

async function learnerOf(db: Database, id: string): Promise<Person> {
	const row = await findPersonById(db, id);
	if (row === null) throw new Error('A learner of the demo is not there');
	return { kind: 'person', id, organisation: row.organisation_id, role: 'learner', name: row.name, answerer: row.answerer_id, language: null };
}

/** Answers as a device sends them: right, but for a slip in the first number that it changes. */
function answersTo(problem: Problem, asks: readonly Ask[], slip: SlipId | null): object {
	const { scenario, drawVersion, seed, acceptedTry } = problem;
	const slipped = asks.find((ask): ask is NumberAsk => ask.kind === 'number' && slip !== null && slipsWithEffect(problem, ask).includes(slip));
	const answers = asks.map((ask) => {
		if (ask.kind === 'decision') return [ask.id, { kind: 'decision', decision: analysisOf(problem).verdict.decision }];
		const value = ask === slipped && slip !== null ? slipValue(problem, ask, slip) : rightValue(problem, ask);
		return [ask.id, value === undefined ? { kind: 'not-stated' } : { kind: 'number', text: writeQuantity(value, { unit: 'm', decimals: 2, language: 'en' }) }];
	});
	return {
		id: randomUUID(),
		scenario: scenario.id,
		version: scenario.version,
		drawVersion,
		slipSetVersion: SLIP_SET_VERSION,
		seed,
		acceptedTry,
		language: 'en',
		answers: Object.fromEntries(answers)
	};
}

/** What a slip makes of a number, SI. */
function slipValue(problem: Problem, ask: NumberAsk, slip: SlipId): number | undefined {
	const set = variantsFor(problem, ask);
	return valuesOf(set.singleProgram, inputsFor(problem, set))[set.singles.findIndex((one) => one.slips[0] === slip) + 1];
}
