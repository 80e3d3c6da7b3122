import type { Insertable, Selectable } from 'kysely';
import type { Database } from './open.ts';
import { isUniqueViolation } from './people.ts';
import type { CheckEventTable, CheckTryTable, CompletionTable, CourseEventTable } from './schema.ts';

/** A try at a check. */
export type CheckTry = Readonly<Selectable<CheckTryTable>>;
/** Something that happened in it. */
export type CheckEvent = Readonly<Selectable<CheckEventTable>>;
/** A passed final check. */
export type Completion = Readonly<Selectable<CompletionTable>>;

/** What one step of a check writes: all of it or nothing. */
export interface CheckWrites {
	/** What is taken before anything is written: a lock. */
	readonly first?: (transaction: Database) => Promise<unknown>;
	readonly start?: Readonly<Insertable<CheckTryTable>>;
	readonly events: readonly Readonly<Insertable<CheckEventTable>>[];
	/** What it does to the course. */
	readonly course: readonly Readonly<Insertable<CourseEventTable>>[];
	/** The opening that a supervised try uses up. */
	readonly opening?: string;
	readonly completion?: Readonly<Insertable<CompletionTable>>;
	/** What else belongs to the step: done in its transaction, when the rest is written. */
	readonly beside?: (transaction: Database) => Promise<void>;
}

/**
 * Writes one step of a check.
 * @returns false if something else took a place in the meantime: read again and try again
 */
export async function writeCheck(db: Database, writes: CheckWrites): Promise<boolean> {
	try {
		await db.transaction().execute(async (transaction) => {
			const { first, start, events, course, opening, completion, beside } = writes;
			await first?.(transaction);
			if (start !== undefined) await transaction.insertInto('check_try').values(start).execute();
			if (events.length > 0) await transaction.insertInto('check_event').values([...events]).execute();
			if (course.length > 0) await transaction.insertInto('course_event').values([...course]).execute();
			if (opening !== undefined && start !== undefined) {
				const used = await transaction
					.updateTable('check_opening')
					.set({ check_id: start.id })
					.where('id', '=', opening)
					.where('check_id', 'is', null)
					.where(({ exists, selectFrom }) => exists(selectFrom('person').select('person.id').whereRef('person.id', '=', 'check_opening.trainer_id').where('closed_at', 'is', null)))
					.executeTakeFirst();
				if (Number(used.numUpdatedRows) !== 1) throw new TakenError();
			}
			if (completion !== undefined) await transaction.insertInto('completion').values(completion).execute();
			await beside?.(transaction);
		});
		return true;
	} catch (error) {
		if (error instanceof TakenError || isUniqueViolation(error)) return false;
		throw error;
	}
}

/** Somebody else was faster. */
class TakenError extends Error {}

/** A person's tries at a check, the first one first. */
export async function triesAt(db: Database, person: string, lesson: string): Promise<readonly CheckTry[]> {
	return db.selectFrom('check_try').selectAll().where('person_id', '=', person).where('lesson', '=', lesson).orderBy('nth').execute();
}

/** A person's own try, or null. */
export async function findTry(db: Database, person: string, id: string): Promise<CheckTry | null> {
	const row = await db.selectFrom('check_try').selectAll().where('id', '=', id).where('person_id', '=', person).executeTakeFirst();
	return row ?? null;
}

/** What happened in a try, in order. */
export async function eventsOf(db: Database, check: string): Promise<readonly CheckEvent[]> {
	return db.selectFrom('check_event').selectAll().where('check_id', '=', check).orderBy('seq').execute();
}

/** A person's completions, the newest first. */
export async function completionsOf(db: Database, person: string): Promise<readonly Completion[]> {
	return db.selectFrom('completion').selectAll().where('person_id', '=', person).orderBy('at', 'desc').execute();
}

/** @returns the final checks that some people passed. */
export async function completedChecksOf(db: Database, people: readonly string[]): Promise<readonly { readonly person: string; readonly check: string }[]> {
	if (people.length === 0) return [];
	return db.selectFrom('completion').select(['person_id as person', 'check_id as check']).where('person_id', 'in', people).execute();
}
