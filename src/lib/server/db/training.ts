/** How learners stand, asked of many at once: the read model `training_state`, within one organisation. */
import { sql, type ExpressionBuilder, type ExpressionWrapper, type SqlBool } from 'kysely';
import { TRAINING_STATES, type TrainingState } from '#lib/records/index.ts';
import type { Database } from './open.ts';
import { inParts } from './records.ts';
import type { Tables } from './schema.ts';

/** The two days that part the states: today, and the last day that is soon. */
export interface StateDays {
	readonly today: string;
	readonly soonUntil: string;
}

/** One word that is searched for. */
export interface SearchWord {
	/** Folded: it stands in the name or the number. */
	readonly text: string;
	/** Ids of crews in whose names it stands: their people are found too. */
	readonly crews: readonly string[];
}

/** Whom a list is about. */
export interface TrainingScope {
	readonly organisation: string;
	/** Those who left, or those who are there. */
	readonly gone: boolean;
	/** Each must be found. */
	readonly words: readonly SearchWord[];
	/** Only people of this crew; null for all. */
	readonly crew: string | null;
}

/** A learner as a list shows them. */
export interface ListedTraining {
	readonly id: string;
	readonly name: string;
	readonly number: string | null;
	readonly erased: boolean;
	readonly gone: boolean;
	readonly begun: boolean;
	/** Last valid day, `NO_END` for no end; null where no record counts. */
	readonly until: string | null;
	/** Due day of an open order of retraining. */
	readonly due: string | null;
	/** A `TrainingDetail`, or empty. */
	readonly detail: string;
}

type States = ExpressionBuilder<Tables, 'training_state'>;

/** The state of a row by its day, as `stateOn` has it. */
function isIn(eb: States, state: TrainingState, { today, soonUntil }: StateDays): ExpressionWrapper<Tables, 'training_state', SqlBool> {
	switch (state) {
		case 'current':
			return eb('until', '>', soonUntil);
		case 'expires-soon':
			return eb.and([eb('until', '>=', today), eb('until', '<=', soonUntil)]);
		case 'expired':
			return eb('until', '<', today);
		case 'in-training':
			return eb.and([eb('until', 'is', null), eb('begun', '=', 1)]);
		case 'never':
			return eb.and([eb('until', 'is', null), eb('begun', '=', 0)]);
	}
}

/** A pattern that stands for a text with anything before and behind. */
function around(text: string): string {
	return `%${text.replace(/[!%_]/g, '!$&')}%`;
}

function within(db: Database, { organisation, gone, words, crew }: TrainingScope) {
	let query = db
		.selectFrom('training_state')
		.where('training_state.organisation_id', '=', organisation)
		.where('gone', '=', gone ? 1 : 0);
	for (const word of words) {
		query = query.where((eb) => {
			const named = sql<SqlBool>`${eb.ref('search')} like ${around(word.text)} escape '!'`;
			return word.crews.length === 0 ? named : eb.or([named, eb('person_id', 'in', peopleOfCrews(db, word.crews))]);
		});
	}
	return crew === null ? query : query.where('person_id', 'in', peopleOfCrews(db, [crew]));
}

function peopleOfCrews(db: Database, crews: readonly string[]) {
	return db.selectFrom('crew_learner').select('crew_learner.person_id').where('crew_learner.crew_id', 'in', crews);
}

/** @returns how many people are in each state. */
export async function countStates(db: Database, scope: TrainingScope, days: StateDays): Promise<Readonly<Record<TrainingState, number>>> {
	const row = await within(db, scope)
		.select((eb) => {
			const count = (state: TrainingState) => eb.fn.countAll().filterWhere(isIn(eb, state, days));
			return [
				count('current').as('current'),
				count('expires-soon').as('soon'),
				count('expired').as('expired'),
				count('in-training').as('training'),
				count('never').as('never')
			];
		})
		.executeTakeFirstOrThrow();
	return {
		current: Number(row.current),
		'expires-soon': Number(row.soon),
		expired: Number(row.expired),
		'in-training': Number(row.training),
		never: Number(row.never)
	};
}

/** Part of a list that is in one order: people in some states, by name or by their last valid day. */
export interface Stretch {
	readonly states: readonly TrainingState[];
	readonly by: 'name' | 'until';
}

/** @returns the ids of people of a stretch, from a place in it on. */
export async function idsOfStretch(
	db: Database,
	scope: TrainingScope,
	days: StateDays,
	{ states, by }: Stretch,
	{ from, most }: { readonly from: number; readonly most: number }
): Promise<readonly string[]> {
	let query = within(db, scope).select('person_id');
	if (by === 'until') query = query.where('until', 'is not', null).orderBy('until');
	if (states.length < (by === 'until' ? STATES_WITH_END : ALL_STATES)) query = query.where((eb) => eb.or(states.map((state) => isIn(eb, state, days))));
	const rows = await query.orderBy('sort_name').orderBy('person_id').limit(most).offset(from).execute();
	return rows.map((row) => row.person_id);
}

/** How many states there are, and how many of them have a last valid day: a stretch of all needs no condition. */
const ALL_STATES = TRAINING_STATES.length;
const STATES_WITH_END = ALL_STATES - 2;

const SHOWN = ['training_state.person_id', 'person.name', 'person.personal_number', 'erased', 'gone', 'begun', 'until', 'due', 'detail'] as const;

interface ShownRow {
	readonly person_id: string;
	readonly name: string;
	readonly personal_number: string | null;
	readonly erased: number;
	readonly gone: number;
	readonly begun: number;
	readonly until: string | null;
	readonly due: string | null;
	readonly detail: string;
}

function listed({ person_id, name, personal_number, erased, gone, begun, until, due, detail }: ShownRow): ListedTraining {
	return { id: person_id, name, number: personal_number, erased: erased === 1, gone: gone === 1, begun: begun === 1, until, due, detail };
}

/** People with how they stand. */
function people(db: Database) {
	return db.selectFrom('training_state').innerJoin('person', 'person.id', 'training_state.person_id').select(SHOWN);
}

/** @returns people of an organisation with how they stand, in the order of their ids. */
export async function trainingOf(db: Database, organisation: string, ids: readonly string[]): Promise<readonly ListedTraining[]> {
	const found = new Map<string, ListedTraining>();
	for (const part of inParts(ids)) {
		// Asked for the organisation too, SQLite would look through all of its people for these few.
		const rows = await people(db).select('training_state.organisation_id').where('training_state.person_id', 'in', part).execute();
		for (const row of rows) if (row.organisation_id === organisation) found.set(row.person_id, listed(row));
	}
	return ids.flatMap((id) => found.get(id) ?? []);
}

/** @returns who has which of these numbers, by number; numbers as they are kept. */
export async function trainingByNumber(db: Database, organisation: string, numbers: readonly string[]): Promise<ReadonlyMap<string, ListedTraining>> {
	const found = new Map<string, ListedTraining>();
	for (const part of inParts(numbers)) {
		const rows = await people(db).where('person.organisation_id', '=', organisation).where('person.personal_number', 'in', part).execute();
		for (const row of rows) found.set(row.personal_number ?? '', listed(row));
	}
	return found;
}

/** @returns who has which of these names, by the key of the name, in no order. @param keys as `keyOfName` gives them; none is empty */
export async function trainingByName(db: Database, organisation: string, keys: readonly string[]): Promise<ReadonlyMap<string, readonly ListedTraining[]>> {
	const found = new Map<string, ListedTraining[]>();
	for (const part of inParts(keys)) {
		// In no order: for one, SQLite would go through all people of the organisation.
		const rows = await people(db).select('name_key').where('training_state.organisation_id', '=', organisation).where('name_key', 'in', part).execute();
		for (const row of rows) {
			const before = found.get(row.name_key);
			if (before === undefined) found.set(row.name_key, [listed(row)]);
			else before.push(listed(row));
		}
	}
	return found;
}

/** A crew by its name. */
export interface NamedCrew {
	readonly id: string;
	readonly name: string;
	readonly putAway: boolean;
}

/** @returns all crews of an organisation by name, those that are put away too. */
export async function crewsByName(db: Database, organisation: string): Promise<readonly NamedCrew[]> {
	const rows = await db.selectFrom('crew').select(['id', 'name', 'archived_at']).where('organisation_id', '=', organisation).orderBy('name').orderBy('id').execute();
	return rows.map(({ id, name, archived_at }) => ({ id, name, putAway: archived_at !== null }));
}

/** @returns the names of the crews of some people, by person: those that are not put away. */
export async function crewNamesOf(db: Database, organisation: string, ids: readonly string[]): Promise<ReadonlyMap<string, readonly string[]>> {
	const found = new Map<string, string[]>();
	for (const part of inParts(ids)) {
		const rows = await db
			.selectFrom('crew_learner')
			.innerJoin('crew', 'crew.id', 'crew_learner.crew_id')
			.select(['crew_learner.person_id', 'crew.name'])
			.where('crew_learner.person_id', 'in', part)
			.where('crew.organisation_id', '=', organisation)
			.where('crew.archived_at', 'is', null)
			.orderBy('crew.name')
			.execute();
		for (const { person_id, name } of rows) {
			const before = found.get(person_id);
			if (before === undefined) found.set(person_id, [name]);
			else before.push(name);
		}
	}
	return found;
}

/** Kinds of events of a course that pass a lesson or open it again. */
const PASSING = ['check-ended', 'reopened'] as const;

/** @returns what was stored of the ends of lesson checks and of lessons opened again, by person, in order: JSON as `readPayload` reads it. */
export async function lessonEnds(db: Database, ids: readonly string[]): Promise<ReadonlyMap<string, readonly string[]>> {
	const found = new Map<string, string[]>();
	for (const part of inParts(ids)) {
		const rows = await db
			.selectFrom('course_event')
			.select(['person_id', 'payload'])
			.where('person_id', 'in', part)
			.where('kind', 'in', PASSING)
			.orderBy('person_id')
			.orderBy('seq')
			.execute();
		for (const { person_id, payload } of rows) {
			const before = found.get(person_id);
			if (before === undefined) found.set(person_id, [payload]);
			else before.push(payload);
		}
	}
	return found;
}
