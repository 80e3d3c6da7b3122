/** What exports read of a whole organisation, in pages. */
import { sql, type Selectable } from 'kysely';
import type { AuditRow, Span } from './audit.ts';
import type { Database } from './open.ts';
import { pages } from './paging.ts';
import { inParts, type IdentityRow, type RecordEntryRow } from './records.ts';
import type { CertificateTable, CheckEventTable, CheckTryTable, CompletionTable, CrewTable, JobReportTable, PersonTable, RecordCheckpointTable, SignOffTable } from './schema.ts';

/** A person without what signs in: whether there is a secret is told, not which. */
export type ExportedPerson = Readonly<Omit<Selectable<PersonTable>, 'secret' | 'answerer_id'>> & { readonly joined: boolean };
export type CheckTryRow = Readonly<Selectable<CheckTryTable>>;
export type CheckEventRow = Readonly<Selectable<CheckEventTable>>;

/** All but what signs in. */
const PERSON_COLUMNS = ['id', 'organisation_id', 'role', 'name', 'personal_number', 'email', 'language', 'closed_at', 'created_at'] as const;

type Pages<Row> = AsyncGenerator<readonly Row[], void, undefined>;

/** A person of an organisation, as exports tell of them; null for one of another. */
export async function exportedPerson(db: Database, organisation: string, id: string): Promise<(ExportedPerson & { readonly answerer: string }) | null> {
	const row = await db
		.selectFrom('person')
		.select([...PERSON_COLUMNS, 'answerer_id as answerer'])
		.select((eb) => eb('secret', 'is not', null).as('joined'))
		.where('id', '=', id)
		.where('organisation_id', '=', organisation)
		.executeTakeFirst();
	return row === undefined ? null : { ...row, joined: Boolean(row.joined) };
}

/** Everyone of an organisation. @param size people in a page */
export function personPages(db: Database, organisation: string, size?: number): Pages<ExportedPerson> {
	return pages(async (after, most) => {
		const rows = await db
			.selectFrom('person')
			.select(PERSON_COLUMNS)
			.select((eb) => eb('secret', 'is not', null).as('joined'))
			.where('organisation_id', '=', organisation)
			.where('id', '>', after?.id ?? '')
			.orderBy('id')
			.limit(most)
			.execute();
		return rows.map((row) => ({ ...row, joined: Boolean(row.joined) }));
	}, size);
}

/** @returns the entries about some people but those of checks, by person, each in order. Whose people they are, the caller has asked. */
export async function entriesBesideChecks(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, readonly RecordEntryRow[]>> {
	const found = new Map<string, RecordEntryRow[]>(people.map((person) => [person, []]));
	for (const part of inParts(people)) {
		const rows = await db.selectFrom('record_entry').selectAll().where('person_id', 'in', part).where('kind', '!=', 'check-ended').orderBy('person_id').orderBy('seq').execute();
		for (const row of rows) found.get(row.person_id ?? '')?.push(row);
	}
	return found;
}

/** @returns which of some people have begun the course. */
export async function begunOf(db: Database, people: readonly string[]): Promise<ReadonlySet<string>> {
	const found = new Set<string>();
	for (const part of inParts(people)) {
		const rows = await db.selectFrom('course_start').select('person_id').where('person_id', 'in', part).execute();
		for (const row of rows) found.add(row.person_id);
	}
	return found;
}

/** A crew of a person. */
export interface CrewOf {
	readonly id: string;
	readonly name: string;
	readonly as: 'learner' | 'trainer';
	readonly since: string;
}

/** @returns the crews of some people, whose lists they are on or which they teach, by person. */
export async function crewsOfPeople(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, readonly CrewOf[]>> {
	const found = new Map<string, CrewOf[]>(people.map((person) => [person, []]));
	for (const part of inParts(people)) {
		for (const as of ['learner', 'trainer'] as const) {
			const table = as === 'learner' ? 'crew_learner' : 'crew_trainer';
			const rows = await db
				.selectFrom(table)
				.innerJoin('crew', 'crew.id', `${table}.crew_id`)
				.select(['crew.id', 'crew.name', `${table}.person_id as person`, `${table}.since as since`])
				.where(`${table}.person_id`, 'in', part)
				.orderBy('crew.name')
				.orderBy('crew.id')
				.execute();
			for (const { person, ...crew } of rows) found.get(person)?.push({ ...crew, as });
		}
	}
	return found;
}

/** @returns the tries of some people that were begun on some days. */
export async function triesOfPeople(db: Database, people: readonly string[], days: { readonly from: string; readonly to: string }): Promise<readonly CheckTryRow[]> {
	const found: CheckTryRow[] = [];
	for (const part of inParts(people)) {
		found.push(
			...(await db
				.selectFrom('check_try')
				.selectAll()
				.where('person_id', 'in', part)
				.where('day', '>=', days.from)
				.where('day', '<=', days.to)
				.orderBy('person_id')
				.orderBy('at')
				.orderBy('id')
				.execute())
		);
	}
	return found;
}

/** @returns what happened in some tries, by try, in order. @param kind of the events; all where it is left out */
export async function checkEventsOf(db: Database, tries: readonly string[], kind?: string): Promise<ReadonlyMap<string, readonly CheckEventRow[]>> {
	const found = new Map<string, CheckEventRow[]>(tries.map((one) => [one, []]));
	for (const part of inParts(tries)) {
		let query = db.selectFrom('check_event').selectAll().where('check_id', 'in', part).orderBy('check_id').orderBy('seq');
		if (kind !== undefined) query = query.where('kind', '=', kind);
		for (const row of await query.execute()) found.get(row.check_id)?.push(row);
	}
	return found;
}

/** The chain of an organisation. */
export function entryPages(db: Database, organisation: string): Pages<RecordEntryRow> {
	return pages((after, most) =>
		db.selectFrom('record_entry').selectAll().where('organisation_id', '=', organisation).where('seq', '>', after?.seq ?? 0).orderBy('seq').limit(most).execute()
	);
}

/** What the commitments of an organisation hold. */
export function identityPages(db: Database, organisation: string): Pages<IdentityRow> {
	return pages((after, most) =>
		db.selectFrom('identity').selectAll().where('organisation_id', '=', organisation).where('commitment', '>', after?.commitment ?? '').orderBy('commitment').limit(most).execute()
	);
}

export function checkpointPages(db: Database, organisation: string): Pages<Readonly<Selectable<RecordCheckpointTable>>> {
	return pages((after, most) =>
		db.selectFrom('record_checkpoint').selectAll().where('organisation_id', '=', organisation).where('size', '>', after?.size ?? 0).orderBy('size').limit(most).execute()
	);
}

export function completionPages(db: Database, organisation: string): Pages<Readonly<Selectable<CompletionTable>>> {
	return pages((after, most) => db.selectFrom('completion').selectAll().where('organisation_id', '=', organisation).where('id', '>', after?.id ?? '').orderBy('id').limit(most).execute());
}

export function signOffPages(db: Database, organisation: string): Pages<Readonly<Selectable<SignOffTable>>> {
	return pages((after, most) => db.selectFrom('sign_off').selectAll().where('organisation_id', '=', organisation).where('id', '>', after?.id ?? '').orderBy('id').limit(most).execute());
}

export function certificatePages(db: Database, organisation: string): Pages<Readonly<Selectable<CertificateTable>>> {
	return pages((after, most) =>
		db.selectFrom('certificate').selectAll().where('organisation_id', '=', organisation).where('code', '>', after?.code ?? '').orderBy('code').limit(most).execute()
	);
}

export function crewPages(db: Database, organisation: string): Pages<Readonly<Selectable<CrewTable>>> {
	return pages((after, most) => db.selectFrom('crew').selectAll().where('organisation_id', '=', organisation).where('id', '>', after?.id ?? '').orderBy('id').limit(most).execute());
}

export function jobReportPages(db: Database, organisation: string): Pages<Readonly<Selectable<JobReportTable>>> {
	return pages((after, most) =>
		db.selectFrom('job_report').selectAll().where('organisation_id', '=', organisation).where('id', '>', after?.id ?? '').orderBy('id').limit(most).execute()
	);
}

/** What happened in an organisation in a span of time, the first first. */
export function auditPages(db: Database, organisation: string, span: Span): Pages<AuditRow> {
	return pages((after, most) => {
		const query = db.selectFrom('audit').selectAll().where('organisation_id', '=', organisation).orderBy('at').orderBy('id').limit(most);
		const until = span.before === null ? query : query.where('at', '<', span.before);
		// One bound on each side: with two, SQLite reads from the further one.
		if (after !== undefined) return until.where(sql<boolean>`(at, id) > (${after.at}, ${after.id})`).execute();
		return (span.from === null ? until : until.where('at', '>=', span.from)).execute();
	});
}
