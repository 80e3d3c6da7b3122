/** What a trainer allows one person: a supervised final check, another try after the tries were used up. */
import type { Database } from './open.ts';

/** A final check that a trainer who is present has opened. */
export interface Opening {
	readonly id: string;
	readonly person: string;
	/** Who opened it and is present. */
	readonly trainer: string;
	readonly place: string;
	readonly identified: string;
	/** ISO 8601. */
	readonly expiresAt: string;
}

/** An opening to be entered. */
export interface NewOpening extends Opening {
	readonly now: string;
}

export async function addOpening(db: Database, opening: NewOpening): Promise<void> {
	await db
		.insertInto('check_opening')
		.values({
			id: opening.id,
			person_id: opening.person,
			trainer_id: opening.trainer,
			place: opening.place,
			identified: opening.identified,
			at: opening.now,
			expires_at: opening.expiresAt,
			check_id: null
		})
		.execute();
}

/** @returns the openings of some people that are neither used nor over, the newest last. One ends with the account of the trainer who is present. */
export async function openingsOf(db: Database, people: readonly string[], now: string): Promise<readonly Opening[]> {
	if (people.length === 0) return [];
	return db
		.selectFrom('check_opening')
		.innerJoin('person', 'person.id', 'check_opening.trainer_id')
		.select(['check_opening.id', 'person_id as person', 'trainer_id as trainer', 'place', 'identified', 'expires_at as expiresAt'])
		.where('person_id', 'in', people)
		.where('person.closed_at', 'is', null)
		.where('check_id', 'is', null)
		.where('expires_at', '>', now)
		.orderBy('check_opening.at')
		.execute();
}

/** Id of the final check among lessons. */
const FINAL = 'final';

/** How often a person tried a check, and how many tries there had been at the last unlocking (0 if none). */
export interface Tries {
	readonly made: number;
	readonly unlockedAfter: number;
}

/** @returns the tries of each of some people at a check; a person without any is left out. Only the final check is unlocked. */
export async function triesOf(db: Database, people: readonly string[], lesson: string): Promise<ReadonlyMap<string, Tries>> {
	if (people.length === 0) return new Map();
	const made = await db
		.selectFrom('check_try')
		.select((eb) => ['person_id', eb.fn.countAll().as('n')])
		.where('person_id', 'in', people)
		.where('lesson', '=', lesson)
		.groupBy('person_id')
		.execute();
	if (lesson !== FINAL) return new Map(made.map((row) => [row.person_id, { made: Number(row.n), unlockedAfter: 0 }]));
	const unlocked = await db
		.selectFrom('check_unlock')
		.select((eb) => ['person_id', eb.fn.max('after').as('n')])
		.where('person_id', 'in', people)
		.groupBy('person_id')
		.execute();
	const after = new Map(unlocked.map((row) => [row.person_id, Number(row.n)]));
	return new Map(made.map((row) => [row.person_id, { made: Number(row.n), unlockedAfter: after.get(row.person_id) ?? 0 }]));
}

/** Lets a person try again. @param after how many tries there were */
export async function addUnlock(
	db: Database,
	unlock: { readonly id: string; readonly person: string; readonly trainer: string; readonly after: number; readonly now: string }
): Promise<void> {
	await db
		.insertInto('check_unlock')
		.values({ id: unlock.id, person_id: unlock.person, trainer_id: unlock.trainer, after: unlock.after, at: unlock.now })
		.execute();
}
