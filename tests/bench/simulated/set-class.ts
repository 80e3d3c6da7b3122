/** A class at a practice set: an organisation in a database file, a set that a crew has, and everyone's right answers to it. */
import { randomUUID } from 'node:crypto';
import { placesOf, type SetContent } from '#lib/flow/index.ts';
import { draw, type Problem } from '#lib/scenario/index.ts';
import { assignSet, makeSet, setStates, type Database, type Person } from '#lib/server/index.ts';
import { putOnList } from '#lib/server/db/crew-list.ts';
import { addCrew, addTrainer } from '#lib/server/db/crews.ts';
import { openDatabase } from '#lib/server/db/open.ts';
import { insertOrganisation } from '#lib/server/db/people.ts';
import { startSession } from '#lib/server/people/session.ts';
import { enterPeople } from '#lib/server/records/names.ts';
import { answered } from '../../support/answered.ts';
import { shippedScenarios } from './shipped.ts';

/** One of the class: who it is, the cookie of the session, and the bodies of their answers, in order. */
export interface ClassLearner {
	readonly person: string;
	readonly cookie: string;
	readonly bodies: readonly string[];
}

/** A set that a crew works on, and the trainer who looks on. */
export interface SetClass {
	readonly set: string;
	readonly trainer: string;
	readonly learners: readonly ClassLearner[];
}

/** @param problems of a round; all are asked in whole. */
function contentOf(problems: number): SetContent {
	return {
		scenarios: shippedScenarios().map(({ id, version, asks }) => ({ id, version, asks: asks.map((ask) => ask.id) })),
		count: problems,
		rule: { right: problems, critical: 0 },
		sameForAll: false,
		language: null,
		aims: []
	};
}

async function cookieOf(db: Database, person: string, now: Date): Promise<string> {
	let token = '';
	const cookies = { get: () => undefined, set: (_: string, value: string) => void (token = value), delete: () => undefined };
	await startSession(db, cookies, false, person, now);
	return `session=${token}`;
}

/** The problem of a seed. @throws if it gives none */
function problemAt(scenario: string, seed: number): Problem {
	const found = shippedScenarios().find((one) => one.id === scenario);
	const result = found === undefined ? undefined : draw(found, seed);
	if (result?.kind !== 'drawn') throw new Error(`${scenario} has no problem for seed ${String(seed)}`);
	return result.problem;
}

/** Makes all of it in a database that no server has open yet. @param file the SQLite file */
export async function setClass(file: string, people: number, problems: number): Promise<SetClass> {
	const db = await openDatabase(`file:${file}`);
	const now = new Date();
	const organisation = randomUUID();
	const of = { id: organisation, name: 'Harrow Bridges', rules: 'us-construction', units: 'metric', language: 'en', zone: 'UTC', pass_rule: 'staged' };
	await insertOrganisation(db, { ...of, created_at: now.toISOString() });
	const [trainer = ''] = await db.transaction().execute((transaction) => enterPeople(transaction, organisation, [{ role: 'trainer', name: 'Helle Brandt', email: 'trainer@example.org' }], null, now));
	const crew = randomUUID();
	await addCrew(db, { id: crew, organisation, name: 'Bridges North', joinCode: 'HARR0W23', now: now.toISOString() });
	await addTrainer(db, crew, trainer, now.toISOString());
	const workers = Array.from({ length: people }, (_, i) => ({ role: 'learner' as const, name: `Worker ${String(i + 1)}`, personalNumber: `K-${String(i + 1)}` }));
	const persons = await db.transaction().execute((transaction) => enterPeople(transaction, organisation, workers, null, now));
	for (const person of persons) await putOnList(db, crew, person, now.toISOString());
	const who: Person = { kind: 'person', id: trainer, organisation, role: 'trainer', name: 'Helle Brandt', answerer: '', language: null };
	const content = contentOf(problems);
	const made = await makeSet(db, who, { name: 'Before the mast job', content }, now);
	if (made.kind !== 'made') throw new Error('the set was not made');
	await assignSet(db, who, made.id, { crews: [crew], people: [], dueDay: null }, now);
	const assignment = (await setStates(db, who, made.id, now))?.assignments[0]?.id ?? '';
	const { seed } = await db.selectFrom('set_assignment').select('seed').where('id', '=', assignment).executeTakeFirstOrThrow();
	const scenarios = shippedScenarios();
	const learners: ClassLearner[] = [];
	for (const person of persons) {
		const bodies = placesOf(content, scenarios, seed, person, 0).map((place, i) =>
			JSON.stringify({ ...answered(problemAt(place.scenario, place.seed)), set: { assignment, place: i } })
		);
		learners.push({ person, cookie: await cookieOf(db, person, now), bodies });
	}
	const looksOn = await cookieOf(db, trainer, now);
	await db.destroy();
	return { set: made.id, trainer: looksOn, learners };
}
