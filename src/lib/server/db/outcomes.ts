/**
 * What the answers of a crew's people came to. Such pictures are for those who teach: every query is within the crews
 * that the asking person is in charge of, as a trainer of the crew. An employer who is not finds nothing.
 */
import { sql, type Expression, type SqlBool } from 'kysely';
import { weekOf } from '../attempts/outcomes.ts';
import { ownCrewIds, type Asker, type Crew } from './crews.ts';
import type { Database } from './open.ts';

/** How many answers are looked back on. @reason what went wrong before that may go right by now */
export const LAST_ANSWERS = 10;

/** How many people one statement names. @reason far below what either database takes as parameters */
const PEOPLE_TOGETHER = 500;

/** Which answers are looked at. */
export interface OutcomeFilter {
	/** From this time on, ISO 8601, UTC; null for all. */
	readonly since: string | null;
	/** Before this time, ISO 8601, UTC; null for all. */
	readonly before: string | null;
	/** Id of a scenario; null for all. */
	readonly scenario: string | null;
	/** Id of a practice set; null for all. */
	readonly set: string | null;
}

/** A learner of a crew, and under which id the answers are kept. */
export interface Answerer {
	readonly id: string;
	readonly name: string;
	readonly number: string;
	readonly answerer: string;
}

/** How some answers went. */
export interface Tally {
	readonly answers: number;
	readonly wrong: number;
	readonly critical: number;
}

/** The crews that a person teaches. */
function taughtCrewIds(db: Database, who: Asker) {
	return ownCrewIds(db, who).where('crew.id', 'in', db.selectFrom('crew_trainer').select('crew_id').where('person_id', '=', who.id));
}

/** @returns a crew that this person teaches; null for any other. */
export async function findTaughtCrew(db: Database, who: Asker, crew: string): Promise<Pick<Crew, 'id' | 'name'> | null> {
	return (await db.selectFrom('crew').select(['id', 'name']).where('id', '=', crew).where('id', 'in', taughtCrewIds(db, who)).executeTakeFirst()) ?? null;
}

/** @returns whether somebody is on the list of a crew that this person teaches. */
export async function teaches(db: Database, who: Asker, person: string): Promise<boolean> {
	const row = await db.selectFrom('crew_learner').select('person_id').where('person_id', '=', person).where('crew_id', 'in', taughtCrewIds(db, who)).limit(1).executeTakeFirst();
	return row !== undefined;
}

/** The learners of a crew who have not left. */
function learners(db: Database, who: Asker, crew: string) {
	return db
		.selectFrom('crew_learner')
		.innerJoin('person', 'person.id', 'crew_learner.person_id')
		.where('crew_learner.crew_id', '=', crew)
		.where('crew_learner.crew_id', 'in', taughtCrewIds(db, who))
		.where('person.closed_at', 'is', null);
}

/** @returns the learners of a crew that this person teaches, by name; none of another crew. */
export async function answerersOf(db: Database, who: Asker, crew: string): Promise<readonly Answerer[]> {
	const rows = await learners(db, who, crew)
		.select(['person.id', 'person.name', 'person.personal_number', 'person.answerer_id as answerer'])
		.orderBy('person.name')
		.orderBy('person.personal_number')
		.execute();
	return rows.map(({ personal_number, ...row }) => ({ ...row, number: personal_number ?? '' }));
}

/** What every query of outcomes asks of a row. */
function conditions(db: Database, filter: OutcomeFilter): readonly Expression<SqlBool>[] {
	const { since, before, scenario, set } = filter;
	const asked: Expression<SqlBool>[] = [];
	const at = sql.ref('outcome.at');
	if (since !== null) asked.push(sql<SqlBool>`${at} >= ${since}`);
	if (before !== null) asked.push(sql<SqlBool>`${at} < ${before}`);
	if (scenario !== null) asked.push(sql<SqlBool>`${sql.ref('outcome.scenario_id')} = ${scenario}`);
	if (set !== null) {
		const assignments = db.selectFrom('set_assignment').select('id').where('set_id', '=', set);
		asked.push(sql<SqlBool>`${sql.ref('outcome.assignment_id')} in ${assignments}`);
	}
	return asked;
}

/**
 * The same for one person and one cell, whose weeks lie in a row in the index. Not for many people at a time: told of
 * weeks, SQLite would go through everybody's.
 */
function inWeeks(db: Database, filter: OutcomeFilter): Expression<SqlBool> {
	const asked = [...conditions(db, filter)];
	const week = sql.ref('outcome.week');
	if (filter.since !== null) asked.push(sql<SqlBool>`${week} >= ${weekOf(new Date(filter.since))}`);
	if (filter.before !== null) asked.push(sql<SqlBool>`${week} <= ${weekOf(new Date(filter.before))}`);
	return all(asked);
}

function all(asked: readonly Expression<SqlBool>[]): Expression<SqlBool> {
	return asked.length === 0 ? sql<SqlBool>`1 = 1` : sql<SqlBool>`${sql.join([...asked], sql` and `)}`;
}

/** Whether a row belongs to one of some people. */
function ofPeople(people: readonly Answerer[]): Expression<SqlBool> {
	return sql<SqlBool>`${sql.ref('outcome.answerer_id')} in (${sql.join(people.map((one) => one.answerer))})`;
}

/** Asks of so many people at a time as a statement takes. */
async function together<Row>(people: readonly Answerer[], ask: (some: readonly Answerer[]) => Promise<readonly Row[]>): Promise<readonly Row[]> {
	const rows: Row[] = [];
	for (let i = 0; i < people.length; i += PEOPLE_TOGETHER) rows.push(...(await ask(people.slice(i, i + PEOPLE_TOGETHER))));
	return rows;
}

/** Three counts of at most `LAST_ANSWERS` in one number: a statement for each would read the same rows three times. */
const PLACE = 100;

/** What is looked up: a cell, or one of the finer skills in it. */
export interface AskedCell {
	readonly cell: string;
	/** Empty for all skills of the cell. */
	readonly skill: string;
}

/** The last answers of one person in one cell or skill. */
export interface CellTally extends AskedCell, Tally {
	readonly person: string;
}

/**
 * How the last answers of each person in each of some cells went: at most `LAST_ANSWERS` of each. Cells that a person
 * has not met are left out. Each is looked up by itself, so that the time does not grow with what people did before.
 */
export async function lastAnswers(db: Database, who: Asker, crew: string, cells: readonly AskedCell[], filter: OutcomeFilter): Promise<readonly CellTally[]> {
	if (cells.length === 0) return [];
	// Said to be text: PostgreSQL does not guess the type of a parameter.
	const asked = sql.join(cells.map(({ cell, skill }) => sql`select cast(${cell} as text) as cell, cast(${skill} as text) as skill`), sql` union all `);
	const latest = sql`select wrong, critical from outcome
		where outcome.answerer_id = person.answerer_id and outcome.cell = asked.cell
			and (asked.skill = '' or outcome.skill = asked.skill) and ${inWeeks(db, filter)}
		order by outcome.week desc, outcome.at desc, outcome.ask desc limit ${sql.lit(LAST_ANSWERS)}`;
	const rows = await learners(db, who, crew)
		.crossJoin(sql<AskedCell>`(${asked})`.as('asked'))
		.select(['person.id as person', 'asked.cell', 'asked.skill'])
		.select(
			sql<number | string | null>`(select sum(1 + ${sql.lit(PLACE)} * wrong + ${sql.lit(PLACE * PLACE)} * critical) from (${latest}) as latest)`.as('counts')
		)
		.execute();
	return rows.flatMap(({ counts: sum, ...row }) => {
		if (sum === null) return [];
		const counts = Number(sum);
		return [{ ...row, answers: counts % PLACE, wrong: Math.floor(counts / PLACE) % PLACE, critical: Math.floor(counts / (PLACE * PLACE)) }];
	});
}

/** @returns the finer skills of one cell that some people met. */
export async function skillsMet(db: Database, people: readonly Answerer[], cell: string, filter: OutcomeFilter): Promise<readonly string[]> {
	const rows = await together(people, (some) =>
		db.selectFrom('outcome').select('skill').distinct().where(ofPeople(some)).where('outcome.cell', '=', cell).where(all(conditions(db, filter))).execute()
	);
	return [...new Set(rows.map(({ skill }) => skill))];
}

function tally(row: { readonly answers: unknown; readonly wrong: unknown; readonly critical: unknown }): Tally {
	return { answers: Number(row.answers), wrong: Number(row.wrong), critical: Number(row.critical) };
}

/** How the answers of one week went. */
export interface WeekTally extends Tally {
	/** Its Monday. */
	readonly week: string;
}

/** @returns how the answers of some people went, week by week, the first week first; weeks without answers are left out. */
export async function byWeek(db: Database, people: readonly Answerer[], filter: OutcomeFilter): Promise<readonly WeekTally[]> {
	const rows = await together(people, (some) =>
		db
			.selectFrom(
				// First in the order in which the index lies, which needs no sorting; there are few rows to add up then.
				db
					.selectFrom('outcome')
					.select((eb) => ['week', eb.fn.countAll<number>().as('answers'), eb.fn.sum<number>('wrong').as('wrong'), eb.fn.sum<number>('critical').as('critical')])
					.where(ofPeople(some))
					.where(all(conditions(db, filter)))
					.groupBy(['answerer_id', 'cell', 'week'])
					.as('part')
			)
			.select((eb) => ['week', eb.fn.sum('answers').as('answers'), eb.fn.sum('wrong').as('wrong'), eb.fn.sum('critical').as('critical')])
			.groupBy('week')
			.execute()
	);
	const weeks = new Map<string, Tally>();
	for (const row of rows) {
		const before = weeks.get(row.week) ?? { answers: 0, wrong: 0, critical: 0 };
		const { answers, wrong, critical } = tally(row);
		weeks.set(row.week, { answers: before.answers + answers, wrong: before.wrong + wrong, critical: before.critical + critical });
	}
	return [...weeks].map(([week, one]) => ({ week, ...one })).sort((a, b) => (a.week < b.week ? -1 : 1));
}

/** Wrong answers of one person that look like one slip. */
export interface PersonSlip {
	readonly answerer: string;
	/** Empty for those that look like no one slip. */
	readonly slip: string;
	readonly wrong: number;
	readonly critical: number;
}

/** Wrong answers, in the index of wrong ones. */
function wrongAnswers(db: Database, some: readonly Answerer[], filter: OutcomeFilter) {
	return db
		.selectFrom('outcome')
		.where('outcome.wrong', '=', sql.lit(1))
		.where(ofPeople(some))
		.where(all(conditions(db, filter)));
}

/** @returns the wrong answers of some people, by person and slip. @param cell of this cell alone; null for all */
export async function slipsOfPeople(db: Database, people: readonly Answerer[], cell: string | null, filter: OutcomeFilter): Promise<readonly PersonSlip[]> {
	const rows = await together(people, (some) =>
		wrongAnswers(db, some, filter)
			.$if(cell !== null, (query) => query.where('outcome.cell', '=', cell ?? ''))
			.select((eb) => ['answerer_id as answerer', 'slip', eb.fn.countAll().as('wrong'), eb.fn.sum('critical').as('critical')])
			.groupBy(['answerer_id', 'slip'])
			.execute()
	);
	return rows.map((row) => ({ answerer: row.answerer, slip: row.slip, wrong: Number(row.wrong), critical: Number(row.critical) }));
}

/** Where an answer with a slip is found. */
export interface SlippedAnswer {
	readonly answerer: string;
	readonly answer: string;
	readonly ask: string;
	readonly critical: boolean;
	readonly at: string;
}

/** @returns some answers that look like one slip: critical ones first, then the newest. */
export async function answersWithSlip(db: Database, people: readonly Answerer[], slip: string, filter: OutcomeFilter, most: number): Promise<readonly SlippedAnswer[]> {
	const rows = await together(people, (some) =>
		wrongAnswers(db, some, filter)
			.select(['answerer_id as answerer', 'answer_id as answer', 'ask', 'critical', 'at'])
			.where('slip', '=', slip)
			.orderBy('critical', 'desc')
			.orderBy('at', 'desc')
			.orderBy('answer_id')
			.limit(most)
			.execute()
	);
	return rows
		.map((row) => ({ ...row, critical: row.critical !== 0 }))
		.sort((a, b) => Number(b.critical) - Number(a.critical) || (a.at < b.at ? 1 : -1))
		.slice(0, most);
}

/** A stored answer, as far as it is explained again. */
export interface StoredAnswer {
	readonly id: string;
	readonly scenario: string;
	readonly version: number;
	readonly seed: number;
	readonly acceptedTry: number;
	/** JSON of what was drawn. */
	readonly plan: string;
	/** JSON of the server's own grades, by ask. */
	readonly result: string;
}

/** @returns stored answers of some people by their ids; what is not theirs is not found. */
export async function answersById(db: Database, people: readonly Answerer[], ids: readonly string[]): Promise<ReadonlyMap<string, StoredAnswer>> {
	if (ids.length === 0) return new Map();
	const rows = await db
		.selectFrom('attempt')
		.select(['id', 'guest_id', 'scenario_id as scenario', 'scenario_version as version', 'seed', 'accepted_try as acceptedTry', 'plan', 'result'])
		.where('id', 'in', ids)
		.execute();
	const theirs = new Set(people.map((one) => one.answerer));
	return new Map(rows.filter((row) => theirs.has(row.guest_id)).map(({ guest_id: _, ...row }) => [row.id, { ...row, seed: Number(row.seed) }]));
}

/** A practice set that people of a crew have. */
export interface SetOfCrew {
	readonly id: string;
	readonly name: string;
}

/** @returns the sets that were assigned to a crew that this person teaches, or to people of it, by name. */
export async function setsOfCrew(db: Database, who: Asker, crew: string): Promise<readonly SetOfCrew[]> {
	const assigned = db
		.selectFrom('set_assignment')
		.select('set_id')
		.where((eb) =>
			eb.or([
				eb('set_assignment.crew_id', 'in', taughtCrewIds(db, who).where('crew.id', '=', crew)),
				eb('set_assignment.person_id', 'in', learners(db, who, crew).select('person.id'))
			])
		);
	return db.selectFrom('practice_set').select(['id', 'name']).where('organisation_id', '=', who.organisation).where('id', 'in', assigned).orderBy('name').orderBy('id').execute();
}
