/** Crews, each query within what the asking person may see: another's crew is not found. */
import { sql, type SqlBool } from 'kysely';
import type { Person } from '../people/who.ts';
import type { Database } from './open.ts';

/** Who asks, as far as queries need it. */
export type Asker = Pick<Person, 'id' | 'organisation' | 'role'>;

/** A crew as its trainers and the employer see it. */
export interface Crew {
	readonly id: string;
	readonly name: string;
	readonly joinCode: string;
	/** ISO 8601; null for one that works. */
	readonly archivedAt: string | null;
}

/** A crew in the list of crews. */
export interface ListedCrew extends Crew {
	readonly learners: number;
	readonly trainers: readonly string[];
}

/** A member of staff who may be put in charge of a crew, or is. */
export interface Trainer {
	readonly id: string;
	readonly name: string;
	readonly email: string | null;
}

const FIELDS = ['crew.id', 'crew.name', 'crew.join_code as joinCode', 'crew.archived_at as archivedAt'] as const;

/** The crews that a person may see and change: an employer all of the organisation, a trainer the own ones. */
function within(db: Database, who: Asker) {
	const all = db.selectFrom('crew').where('crew.organisation_id', '=', who.organisation);
	switch (who.role) {
		case 'employer':
			return all;
		case 'trainer':
			return all.where('crew.id', 'in', db.selectFrom('crew_trainer').select('crew_id').where('person_id', '=', who.id));
		case 'learner':
			return all.where(sql<SqlBool>`1 = 0`);
	}
}

/** @returns a query for the ids of the crews that a person may change, for use in other queries. */
export function ownCrewIds(db: Database, who: Asker) {
	return within(db, who).select('crew.id');
}

/** @returns all crews that a person may see, those that work first, by name. */
export async function listCrews(db: Database, who: Asker): Promise<readonly ListedCrew[]> {
	const crews = await within(db, who)
		.select(FIELDS)
		.select((eb) =>
			eb
				.selectFrom('crew_learner')
				.select((inner) => inner.fn.countAll().as('n'))
				.whereRef('crew_learner.crew_id', '=', 'crew.id')
				.as('learners')
		)
		.orderBy('crew.name')
		.orderBy('crew.id')
		.execute();
	const trainers = await db
		.selectFrom('crew_trainer')
		.innerJoin('person', 'person.id', 'crew_trainer.person_id')
		.select(['crew_trainer.crew_id', 'person.name'])
		.where('crew_trainer.crew_id', 'in', ownCrewIds(db, who))
		.orderBy('person.name')
		.execute();
	return crews
		.map((crew) => ({
			...crew,
			learners: Number(crew.learners),
			trainers: trainers.filter((one) => one.crew_id === crew.id).map((one) => one.name)
		}))
		.sort((a, b) => Number(a.archivedAt !== null) - Number(b.archivedAt !== null));
}

/** @returns a crew; null if there is none of that id, or it is not this person's to see. */
export async function findCrew(db: Database, who: Asker, id: string): Promise<Crew | null> {
	return (await within(db, who).select(FIELDS).where('crew.id', '=', id).executeTakeFirst()) ?? null;
}

/** A crew to be made. */
export interface NewCrew {
	readonly id: string;
	readonly organisation: string;
	readonly name: string;
	readonly joinCode: string;
	/** ISO 8601, UTC. */
	readonly now: string;
}

/** Makes a crew. @returns false if another has this join code already; nothing is made then. */
export async function addCrew(db: Database, crew: NewCrew): Promise<boolean> {
	const made = await db
		.insertInto('crew')
		.values({
			id: crew.id,
			organisation_id: crew.organisation,
			name: crew.name,
			join_code: crew.joinCode,
			archived_at: null,
			created_at: crew.now
		})
		.onConflict((conflict) => conflict.column('join_code').doNothing())
		.returning('id')
		.executeTakeFirst();
	return made !== undefined;
}

/** @returns false if the crew is not found. */
export async function renameCrew(db: Database, who: Asker, id: string, name: string): Promise<boolean> {
	return changed(await db.updateTable('crew').set({ name }).where('id', '=', id).where('id', 'in', ownCrewIds(db, who)).execute());
}

/** Puts a crew away or takes it up again. @param at when; null to take it up again. @returns false if nothing changed. */
export async function archiveCrew(db: Database, who: Asker, id: string, at: string | null): Promise<boolean> {
	return changed(
		await db
			.updateTable('crew')
			.set({ archived_at: at })
			.where('id', '=', id)
			.where('archived_at', at === null ? 'is not' : 'is', null)
			.where('id', 'in', ownCrewIds(db, who))
			.execute()
	);
}

function changed(results: readonly { readonly numUpdatedRows: bigint }[]): boolean {
	return results.some((result) => result.numUpdatedRows > 0n);
}

/** @returns the staff of an organisation who may have crews, by name: its trainers and employers who have not left. */
export async function staffOf(db: Database, organisation: string): Promise<readonly Trainer[]> {
	return db
		.selectFrom('person')
		.select(['id', 'name', 'email'])
		.where('organisation_id', '=', organisation)
		.where('role', 'in', ['trainer', 'employer'])
		.where('closed_at', 'is', null)
		.orderBy('name')
		.orderBy('id')
		.execute();
}

/** @returns the trainers of a crew, by name; none if the crew is not this person's to see. */
export async function trainersOf(db: Database, who: Asker, crew: string): Promise<readonly Trainer[]> {
	return db
		.selectFrom('crew_trainer')
		.innerJoin('person', 'person.id', 'crew_trainer.person_id')
		.select(['person.id', 'person.name', 'person.email'])
		.where('crew_trainer.crew_id', '=', crew)
		.where('crew_trainer.crew_id', 'in', ownCrewIds(db, who))
		.orderBy('person.name')
		.orderBy('person.id')
		.execute();
}

/** Puts a member of staff in charge of a crew; who is, stays. @returns false if that was so before. */
export async function addTrainer(db: Database, crew: string, trainer: string, now: string): Promise<boolean> {
	const added = await db
		.insertInto('crew_trainer')
		.values({ crew_id: crew, person_id: trainer, since: now })
		.onConflict((conflict) => conflict.columns(['crew_id', 'person_id']).doNothing())
		.returning('person_id')
		.executeTakeFirst();
	return added !== undefined;
}

/** @returns false if that person was not in charge of the crew. */
export async function removeTrainer(db: Database, crew: string, trainer: string): Promise<boolean> {
	const removed = await db
		.deleteFrom('crew_trainer')
		.where('crew_id', '=', crew)
		.where('person_id', '=', trainer)
		.returning('person_id')
		.executeTakeFirst();
	return removed !== undefined;
}
