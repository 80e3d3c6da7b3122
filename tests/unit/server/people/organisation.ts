/** An organisation with staff and learners, for tests of what they may do. */
import { randomUUID } from 'node:crypto';
import { putOnList } from '#lib/server/db/crew-list.ts';
import { addCrew, addTrainer } from '#lib/server/db/crews.ts';
import type { Database } from '#lib/server/db/open.ts';
import type { NewPerson } from '#lib/server/db/people.ts';
import type { Person, Role } from '#lib/server/people/who.ts';
import { enterPeople } from '#lib/server/records/names.ts';

export const NOW = new Date('2026-11-25T09:00:00.000Z');

/** @returns the time so many seconds after NOW. */
export function later(seconds: number): Date {
	return new Date(NOW.getTime() + seconds * 1000);
}

export async function anOrganisation(db: Database): Promise<string> {
	const id = randomUUID();
	await db
		.insertInto('organisation')
		.values({ id, name: 'Harrow Bridges', rules: 'us-construction', units: 'metric', language: 'en', zone: 'UTC', pass_rule: 'staged', created_at: NOW.toISOString() })
		.execute();
	return id;
}

async function enter(db: Database, organisation: string, person: Omit<NewPerson, 'organisation'>): Promise<string> {
	const [id] = await db.transaction().execute((transaction) => enterPeople(transaction, organisation, [person], null, NOW));
	if (id === undefined) throw new Error('Nobody was entered');
	return id;
}

export async function aMember(db: Database, organisation: string, role: Role, name = 'Helle Brandt'): Promise<Person> {
	const id = await enter(db, organisation, { role, name, email: `${randomUUID()}@example.org` });
	const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', id).executeTakeFirstOrThrow();
	return { kind: 'person', id, organisation, role, name, answerer, language: null };
}

export interface TestCrew {
	readonly id: string;
	readonly joinCode: string;
}

/** A crew with its trainers. */
export async function aCrew(db: Database, organisation: string, trainers: readonly Person[] = []): Promise<TestCrew> {
	const crew = { id: randomUUID(), joinCode: randomUUID().replaceAll('-', '').slice(0, 8).toUpperCase() };
	await addCrew(db, { ...crew, organisation, name: 'Bridges North', now: NOW.toISOString() });
	for (const trainer of trainers) await addTrainer(db, crew.id, trainer.id, NOW.toISOString());
	return crew;
}

/** A learner without a PIN, on the lists of some crews. @returns the person's id */
export async function aLearner(db: Database, organisation: string, number: string, crews: readonly TestCrew[] = [], name = 'Dario Penn'): Promise<string> {
	const id = await enter(db, organisation, { role: 'learner', name, personalNumber: number });
	for (const crew of crews) await putOnList(db, crew.id, id, NOW.toISOString());
	return id;
}
