import type { CompiledQuery, Insertable, Selectable } from 'kysely';
import { Gathering } from './gather.ts';
import { findOrAddGuest, type NewGuest } from './guests.ts';
import type { Database } from './open.ts';
import { isUniqueViolation } from './people.ts';
import type { AttemptTable, OutcomeTable, PaperAnswerTable, SetAnswerTable } from './schema.ts';

/** A stored answer. */
export type Attempt = Readonly<Selectable<AttemptTable>>;

/** An answer to be stored. */
export type NewAttempt = Readonly<Insertable<AttemptTable>>;

/** What is stored with an answer by the same commit: all or nothing. */
export interface Beside {
	/** What the answer to each ask came to. */
	readonly outcomes: readonly Readonly<OutcomeTable>[];
	/** The answer's place in a practice set; left out by the database where an earlier answer has it. */
	readonly set?: Readonly<SetAnswerTable>;
	/** The paper that it was typed in from. */
	readonly paper?: Readonly<PaperAnswerTable>;
}

/** An answer on its way to the disk. */
export interface Coming {
	readonly attempt: NewAttempt;
	readonly beside: Beside | undefined;
}

/**
 * What became of an answer: stored now; stored before by the same guest with the same content, whose first
 * grading holds; or refused, because the id stands for something else. Whose that is, is not told.
 */
export type StoreOutcome =
	| { kind: 'stored'; attempt: Attempt }
	| { kind: 'repeated'; attempt: Attempt }
	| { kind: 'conflict' };

/** What the client sent: by this, two sendings of the same answer are known. The rest is the server's own. */
const SENT = [
	'guest_id',
	'scenario_id',
	'scenario_version',
	'draw_version',
	'slip_set_version',
	'seed',
	'accepted_try',
	'answers',
	'language',
	'units'
] as const satisfies readonly (keyof AttemptTable)[];

/** How many answers one statement stores at most. @reason far below the 65,535 parameters that PostgreSQL takes. */
const MOST_TOGETHER = 100;

/** The answers that wait for the next commit, by database. */
const gatherings = new WeakMap<Database, Gathering<Coming, boolean>>();

/** Every column, each once: the type checker names one that is missing. */
const HAS_COLUMN: Readonly<Record<keyof AttemptTable, true>> = {
	id: true,
	guest_id: true,
	scenario_id: true,
	scenario_version: true,
	draw_version: true,
	slip_set_version: true,
	engine_version: true,
	seed: true,
	accepted_try: true,
	plan: true,
	answers: true,
	result: true,
	language: true,
	units: true,
	created_at: true
};

/** The columns, in the order in which values are handed over. */
const COLUMNS = Object.keys(HAS_COLUMN) as readonly (keyof AttemptTable)[];

type InsertQuery = CompiledQuery<Pick<Attempt, 'id'>>;

/** The statements that insert so many answers, by database and number. */
const insertQueries = new WeakMap<Database, Map<number, InsertQuery>>();

/** The statement for these answers; its SQL is written once for each number of them, for that takes longer than running it. */
function insertQuery(db: Database, attempts: readonly NewAttempt[]): InsertQuery {
	let queries = insertQueries.get(db);
	if (queries === undefined) {
		queries = new Map();
		insertQueries.set(db, queries);
	}
	let query = queries.get(attempts.length);
	if (query === undefined) {
		query = db
			.insertInto('attempt')
			.values(attempts.map((attempt) => Object.fromEntries(COLUMNS.map((column) => [column, attempt[column]])) as NewAttempt))
			.onConflict((conflict) => conflict.column('id').doNothing())
			.returning('id')
			.compile();
		queries.set(attempts.length, query);
	}
	return { ...query, parameters: attempts.flatMap((attempt) => COLUMNS.map((column) => attempt[column])) };
}

/**
 * Inserts answers in one statement, all or none.
 * @returns for each whether it was stored by this; false for one whose id is taken
 */
async function insertAll(db: Database, attempts: readonly NewAttempt[]): Promise<readonly boolean[]> {
	const { rows } = await db.executeQuery(insertQuery(db, attempts));
	const stored = new Set(rows.map(({ id }) => id));
	// Of two with one id the first was stored: delete() is true for it alone.
	return attempts.map(({ id }) => stored.delete(id));
}

/** Inserts answers and what belongs to them, all or none. What belongs to an answer whose id is taken is left out. */
async function insertComing(db: Database, coming: readonly Coming[]): Promise<readonly boolean[]> {
	const attempts = coming.map(({ attempt }) => attempt);
	if (coming.every(({ beside }) => beside === undefined)) return insertAll(db, attempts);
	return db.transaction().execute((transaction) => insertWithin(transaction, coming));
}

/** Inserts answers and what belongs to them, within a transaction. */
async function insertWithin(transaction: Database, coming: readonly Coming[]): Promise<readonly boolean[]> {
	const stored = await insertAll(transaction, coming.map(({ attempt }) => attempt));
	await insertBeside(transaction, coming.flatMap(({ beside }, i) => (stored[i] === true && beside !== undefined ? [beside] : [])));
	return stored;
}

/**
 * Stores new answers that belong together: all of them with what is noted of it, or nothing.
 * @param note notes it, within the transaction
 * @returns false if something of it is stored already; nothing is stored then
 */
export async function storeTogether(db: Database, coming: readonly Coming[], note: (transaction: Database) => Promise<void>): Promise<boolean> {
	try {
		await db.transaction().execute(async (transaction) => {
			await insertWithin(transaction, coming);
			await note(transaction);
		});
		return true;
	} catch (error) {
		if (isUniqueViolation(error)) return false;
		throw error;
	}
}

/** Inserts what belongs to answers that were just stored. Call it within their transaction. */
export async function insertBeside(db: Database, all: readonly Beside[]): Promise<void> {
	const counted = await insertSetAnswers(db, all.flatMap(({ set }) => (set === undefined ? [] : [set])));
	const outcomes = all.flatMap((one) => (one.set === undefined || counted.has(one.set.attempt_id) ? one.outcomes : one.outcomes.map(asPractice)));
	if (outcomes.length > 0) await db.insertInto('outcome').values(outcomes).execute();
	const papers = all.flatMap(({ paper }) => (paper === undefined ? [] : [paper]));
	if (papers.length > 0) await db.insertInto('paper_answer').values(papers).execute();
}

/** Of two answers to one problem of a set the first counts. @returns the attempts that do. */
async function insertSetAnswers(db: Database, sets: readonly Readonly<SetAnswerTable>[]): Promise<ReadonlySet<string>> {
	if (sets.length === 0) return new Set();
	const rows = await db
		.insertInto('set_answer')
		.values(sets)
		.onConflict((conflict) => conflict.columns(['assignment_id', 'person_id', 'place']).doNothing())
		.returning('attempt_id')
		.execute();
	return new Set(rows.map((row) => row.attempt_id));
}

/** What an answer came to that was meant for a set and came second: practice. */
function asPractice(outcome: Readonly<OutcomeTable>): OutcomeTable {
	return { ...outcome, way: 'practice', assignment_id: null };
}

/**
 * Stores an answer once, however often it is sent; together with others that are sent at the same time.
 * @param beside what is stored by the same commit, if the answer is
 */
export async function storeAttempt(db: Database, attempt: NewAttempt, beside?: Beside): Promise<StoreOutcome> {
	let gathering = gatherings.get(db);
	if (gathering === undefined) {
		gathering = new Gathering((coming) => insertComing(db, coming), MOST_TOGETHER);
		gatherings.set(db, gathering);
	}
	return (await gathering.add({ attempt, beside })) ? { kind: 'stored', attempt } : earlierOutcome(db, attempt);
}

/** What became of an answer whose id is taken. */
async function earlierOutcome(db: Database, attempt: NewAttempt): Promise<StoreOutcome> {
	const earlier = await findAttempt(db, attempt.guest_id, attempt.id);
	if (earlier === null || SENT.some((column) => earlier[column] !== attempt[column])) {
		return { kind: 'conflict' };
	}
	return { kind: 'repeated', attempt: earlier };
}

/**
 * Stores the first answer of a guest who is not known yet, together with the guest: both or neither. If the
 * guest has become known meanwhile, by a first answer that arrived at the same time, the answer is that guest's.
 */
export async function storeFirstAttempt(
	db: Database,
	guest: NewGuest,
	attempt: Omit<NewAttempt, 'guest_id'>
): Promise<StoreOutcome> {
	try {
		return await db.transaction().execute(async (transaction) => {
			const guestId = await findOrAddGuest(transaction, guest);
			const own = { ...attempt, guest_id: guestId };
			const [stored] = await insertAll(transaction, [own]);
			const outcome: StoreOutcome = stored === true ? { kind: 'stored', attempt: own } : await earlierOutcome(transaction, own);
			if (outcome.kind === 'conflict') throw new ConflictError();
			return outcome;
		});
	} catch (error) {
		if (error instanceof ConflictError) return { kind: 'conflict' };
		throw error;
	}
}

/** The id is taken, so that neither answer nor guest is stored. */
class ConflictError extends Error {}

/** A guest's own stored answer; null when there is none of that id, or when it is somebody else's. */
export async function findAttempt(
	db: Database,
	guestId: string,
	id: string
): Promise<Attempt | null> {
	const row = await db
		.selectFrom('attempt')
		.selectAll()
		.where('id', '=', id)
		.where('guest_id', '=', guestId)
		.executeTakeFirst();
	return row ?? null;
}
