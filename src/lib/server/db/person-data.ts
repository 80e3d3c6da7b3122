/** All that is kept of one person, in pages. Whose person it is, the caller has asked. */
import { sql, type Selectable } from 'kysely';
import type { AuditRow } from './audit.ts';
import type { Database } from './open.ts';
import { pages } from './paging.ts';
import type { AttemptTable, CourseEventTable, OutcomeTable } from './schema.ts';

/** What a person did in the course, in order. */
export function courseEventPages(db: Database, person: string) {
	return pages<Omit<Selectable<CourseEventTable>, 'person_id'>>((after, most) =>
		db
			.selectFrom('course_event')
			.select(['id', 'seq', 'lesson', 'kind', 'sent', 'payload', 'day', 'at'])
			.where('person_id', '=', person)
			.where('seq', '>', after?.seq ?? 0)
			.orderBy('seq')
			.limit(most)
			.execute()
	);
}

/** Answers in a page. @reason each holds the drawn plan and its grades: some ten kilobytes */
const ANSWERS = 50;

/** Answered site problems: of practice, of the course, of sets and from paper. @param answerer the guest row that they are kept under */
export function attemptPages(db: Database, answerer: string) {
	return pages<Selectable<AttemptTable>>(
		(after, most) => {
			const query = db.selectFrom('attempt').selectAll().where('guest_id', '=', answerer);
			const behind = after === undefined ? query : query.where(sql<boolean>`(created_at, id) > (${after.created_at}, ${after.id})`);
			return behind.orderBy('created_at').orderBy('id').limit(most).execute();
		},
		ANSWERS
	);
}

/** @returns the guests that joined as a person: whose answers from before are theirs. */
export async function joinedGuests(db: Database, person: string): Promise<readonly { readonly guest_id: string; readonly at: string }[]> {
	return db.selectFrom('joined_guest').select(['guest_id', 'at']).where('person_id', '=', person).orderBy('at').execute();
}

/** What the answers of a person came to. */
export function outcomePages(db: Database, answerer: string) {
	return pages<Selectable<OutcomeTable>>((after, most) => {
		const query = db.selectFrom('outcome').selectAll().where('answerer_id', '=', answerer);
		const behind = after === undefined ? query : query.where(sql<boolean>`(answer_id, ask) > (${after.answer_id}, ${after.ask})`);
		return behind.orderBy('answer_id').orderBy('ask').limit(most).execute();
	});
}

/** What a person did, or what was done to a person, the first first. */
export function auditAbout(db: Database, organisation: string, person: string, as: 'actor_id' | 'subject_id') {
	return pages<AuditRow>((after, most) => {
		const query = db.selectFrom('audit').selectAll().where('organisation_id', '=', organisation).where(as, '=', person);
		const behind = after === undefined ? query : query.where(sql<boolean>`(at, id) > (${after.at}, ${after.id})`);
		return behind.orderBy('at').orderBy('id').limit(most).execute();
	});
}

/** Tables that hold few rows of a person: each whole. Secrets, tokens, and seeds that problems to come are drawn from are left out. */
export async function fewRowsOf(db: Database, person: string) {
	return {
		sessions: await db.selectFrom('session').select(['created_at', 'seen_at', 'expires_at']).where('person_id', '=', person).orderBy('created_at').execute(),
		course_starts: await db.selectFrom('course_start').select(['course', 'version', 'at']).where('person_id', '=', person).orderBy('at').execute(),
		identities: await db.selectFrom('identity').selectAll().where('person_id', '=', person).orderBy('at').orderBy('commitment').execute(),
		check_openings: await db.selectFrom('check_opening').selectAll().where('person_id', '=', person).orderBy('at').execute(),
		check_unlocks: await db.selectFrom('check_unlock').selectAll().where('person_id', '=', person).orderBy('at').execute(),
		completions: await db.selectFrom('completion').selectAll().where('person_id', '=', person).orderBy('at').execute(),
		sign_offs: await db.selectFrom('sign_off').selectAll().where('person_id', '=', person).orderBy('at').execute(),
		certificates: await db.selectFrom('certificate').selectAll().where('person_id', '=', person).orderBy('at').execute(),
		set_assignments: await db.selectFrom('set_assignment').select(['id', 'set_id', 'due_day', 'assigned_by', 'at', 'recalled_at']).where('person_id', '=', person).orderBy('at').execute(),
		training_state: await db.selectFrom('training_state').selectAll().where('person_id', '=', person).executeTakeFirst()
	};
}

/** Answers that counted in practice sets. */
export function setAnswerPages(db: Database, person: string, answerer: string) {
	return ownAnswerPages(db, answerer, (ids) => db.selectFrom('set_answer').selectAll().where('attempt_id', 'in', ids).where('person_id', '=', person).execute());
}

/** Answers that were typed in from paper. */
export function paperAnswerPages(db: Database, person: string, answerer: string) {
	return ownAnswerPages(db, answerer, (ids) => db.selectFrom('paper_answer').selectAll().where('attempt_id', 'in', ids).where('person_id', '=', person).execute());
}

/** Answers from before joining, as they were graded again then. */
export function practisedPages(db: Database, person: string, guest: string) {
	return ownAnswerPages(db, guest, (ids) => db.selectFrom('practised').selectAll().where('attempt_id', 'in', ids).where('person_id', '=', person).execute());
}

/** Rows that hang on a person's attempts, found by these: none of the tables is indexed by person alone. */
async function* ownAnswerPages<Row>(db: Database, answerer: string, find: (attempts: readonly string[]) => Promise<readonly Row[]>): AsyncGenerator<readonly Row[], void, undefined> {
	const ids = pages<Pick<Selectable<AttemptTable>, 'id' | 'created_at'>>((after, most) => {
		const query = db.selectFrom('attempt').select(['id', 'created_at']).where('guest_id', '=', answerer);
		const behind = after === undefined ? query : query.where(sql<boolean>`(created_at, id) > (${after.created_at}, ${after.id})`);
		return behind.orderBy('created_at').orderBy('id').limit(most).execute();
	});
	for await (const attempts of ids) yield await find(attempts.map(({ id }) => id));
}
