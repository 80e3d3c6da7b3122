/** Sets, learners and answers, for tests of practice sets. */
import { shippedScenario } from '#lib/course/shipped.ts';
import type { SetContent, SetPlace } from '#lib/flow/index.ts';
import { draw, type Scenario } from '#lib/scenario/index.ts';
import { receiveAnswers, type Receipt } from '#lib/server/attempts/receive.ts';
import type { Database } from '#lib/server/db/open.ts';
import type { Person } from '#lib/server/people/who.ts';
import { scenariosFor } from '#lib/server/scenarios/found.ts';
import { setDesk } from '#lib/server/sets/learner.ts';
import { makeSet } from '#lib/server/sets/make.ts';
import { answered, type SentBody } from '../../../support/answered.ts';
import { NOW, aLearner, type TestCrew } from '../people/organisation.ts';

const COOKIES = { get: () => undefined, set: () => undefined, delete: () => undefined, getAll: () => [], serialize: () => '' };

/** A set of two scenarios: so many problems, of which so many must be right. */
export function aContent(change: Partial<SetContent> = {}): SetContent {
	const scenarios = ['bridge-bearing', 'stage-grid'].map((id) => {
		const scenario = shippedScenario(id);
		if (scenario === undefined) throw new Error(`no scenario ${id} is shipped`);
		return { id, version: scenario.version, asks: scenario.asks.map((ask) => ask.id) };
	});
	return { scenarios, count: 3, rule: { right: 2, critical: 3 }, sameForAll: false, language: null, aims: [], ...change };
}

/** @returns the id of a new set. */
export async function aSet(db: Database, maker: Person, change: Partial<SetContent> = {}, name = 'Monday problems'): Promise<string> {
	const made = await makeSet(db, maker, { name, content: aContent(change) }, NOW);
	if (made.kind === 'refused') throw new Error(JSON.stringify(made.problems));
	return made.id;
}

let numbers = 0;

/** A learner on the lists of some crews, as whoever signs in. */
export async function aSignedIn(db: Database, organisation: string, crews: readonly TestCrew[], name = 'Dario Penn'): Promise<Person> {
	const id = await aLearner(db, organisation, `S${String((numbers += 1))}`, crews, name);
	const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', id).executeTakeFirstOrThrow();
	return { kind: 'person', id, organisation, role: 'learner', name, answerer, language: null };
}

/** What a browser sends for a place: right, or with a wrong number in the first ask. */
export function bodyFor(assignment: string, place: SetPlace, nth: number, right = true, scenario: Scenario | undefined = shippedScenario(place.scenario)): SentBody & { set: { assignment: string; place: number } } {
	const result = scenario === undefined ? undefined : draw(scenario, place.seed);
	if (result?.kind !== 'drawn') throw new Error(`${place.scenario} gives nothing for ${place.seed}`);
	const body = answered(result.problem);
	const numbered = result.problem.scenario.asks.find((ask) => ask.kind === 'number');
	if (!right && numbered !== undefined) body.answers[numbered.id] = { kind: 'number', text: '77' };
	return { ...body, set: { assignment, place: nth } };
}

/** Sends a body as a person, or as a guest. */
export async function send(db: Database, who: Person | null, body: unknown, now = NOW): Promise<Receipt> {
	const visitor = { cookies: COOKIES, secure: true, answerer: who?.answerer ?? null, who: who ?? ({ kind: 'guest' } as const) };
	return receiveAnswers(db, visitor, body, await scenariosFor(db, who?.organisation ?? null), now);
}

/** The places of somebody's round at hand. */
export async function placesAt(db: Database, learner: Person, assignment: string): Promise<readonly SetPlace[]> {
	const desk = await setDesk(db, learner, assignment, NOW);
	if (desk === null) throw new Error('no such set');
	return desk.places;
}

/** Works a whole round: each place right or not. */
export async function workRound(db: Database, learner: Person, assignment: string, rights: readonly boolean[], now = NOW): Promise<void> {
	const desk = await setDesk(db, learner, assignment, now);
	if (desk === null) throw new Error('no such set');
	for (const [i, right] of rights.entries()) {
		const place = desk.places[i];
		if (place === undefined) throw new Error(`no place ${i}`);
		const receipt = await send(db, learner, bodyFor(assignment, place, desk.round * desk.count + i, right), now);
		if (receipt.kind === 'refused') throw new Error(JSON.stringify(receipt.problems));
	}
}
