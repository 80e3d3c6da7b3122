/** All that is kept of one person, for whoever they ask for it. */
import { exportedPerson, type ExportedPerson } from '../db/exports.ts';
import type { Database } from '../db/open.ts';
import { attemptPages, auditAbout, courseEventPages, fewRowsOf, joinedGuests, outcomePages, paperAnswerPages, practisedPages, setAnswerPages } from '../db/person-data.ts';
import { entriesAbout } from '../db/records.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { ANSWER_COLUMNS, answerRows, type AnswerRow } from './answer-rows.ts';
import { COMPLETION_COLUMNS, completionRows, type CompletionRow } from './completion-rows.ts';
import { csvOf } from './csv.ts';
import { endedChecks } from './ended-checks.ts';
import type { ExportFile } from './files.ts';
import { jsonOf } from './json.ts';
import { attemptMember, checkMember, detailMember, eachAs, entryMember, eventMember, signOffMember, without } from './members.ts';
import { ERASED, walked } from './people.ts';
import { ALL_DAYS } from './range.ts';
import { exportSite } from './site.ts';

/** In which form: everything as JSON, or a table. */
const PERSON_FORMS = ['json', 'completions', 'answers'] as const;

type Subject = ExportedPerson & { readonly answerer: string };
type Parts = AsyncGenerator<string, void, undefined>;

/**
 * Notes that a person's data was taken, and gives it.
 * @returns null for somebody of another organisation, or a form that there is none of
 */
export async function exportPerson(db: Database, who: Person, id: string, form: string, now: Date): Promise<ExportFile | null> {
	const person = await exportedPerson(db, who.organisation, id);
	const as = PERSON_FORMS.find((one) => one === form);
	if (person === null || as === undefined) return null;
	await noteDeed(db, who, 'person-data-exported', id, now, { form: as });
	switch (as) {
		case 'json':
			return { name: `person-${id}.json`, type: 'json', parts: personJson(db, who.organisation, person, now) };
		case 'completions':
			return { name: `person-${id}-completions.csv`, type: 'csv', parts: completionsOf(db, who.organisation, person, now) };
		case 'answers':
			return { name: `person-${id}-answers.csv`, type: 'csv', parts: answersOf(db, who.organisation, person, now) };
	}
}

async function* completionsOf(db: Database, organisation: string, person: Subject, now: Date): Parts {
	async function* rows(): AsyncGenerator<readonly CompletionRow[], void, undefined> {
		const site = await exportSite(db, organisation, now);
		yield (await walked(db, organisation, [person])).flatMap((one) => completionRows(one, ALL_DAYS, site.organisation));
	}
	yield* csvOf(COMPLETION_COLUMNS, rows());
}

async function* answersOf(db: Database, organisation: string, person: Subject, now: Date): Parts {
	async function* rows(): AsyncGenerator<readonly AnswerRow[], void, undefined> {
		const { today } = await exportSite(db, organisation, now);
		const named = { person_id: person.id, name: person.name === '' ? ERASED : person.name, personal_number: person.personal_number };
		for (const check of await endedChecks(db, [person.id], ALL_DAYS, 'handed-in')) yield answerRows(check, named, today.zone);
	}
	yield* csvOf(ANSWER_COLUMNS, rows());
}

async function* checksOf(db: Database, person: string): AsyncGenerator<readonly unknown[], void, undefined> {
	for (const check of await endedChecks(db, [person], ALL_DAYS, 'all')) yield [checkMember(check)];
}

/** Answers under all the rows that were this person's: their own, and those of guests who joined as them. */
async function* underAll<One>(answerers: readonly string[], of: (answerer: string) => AsyncIterable<readonly One[]>, as?: (row: One) => unknown): AsyncGenerator<readonly unknown[], void, undefined> {
	for (const answerer of answerers) yield* eachAs(of(answerer), as);
}

async function* personJson(db: Database, organisation: string, person: Subject, now: Date): Parts {
	const { today, organisation: site } = await exportSite(db, organisation, now);
	const [one] = await walked(db, organisation, [person]);
	const { sign_offs, training_state, ...few } = await fewRowsOf(db, person.id);
	const guests = await joinedGuests(db, person.id);
	const answerers = [person.answerer, ...guests.map(({ guest_id }) => guest_id)];
	const entries = (await entriesAbout(db, [person.id])).get(person.id) ?? [];
	yield* jsonOf([
		['format', 'underfoot-person'],
		['version', 1],
		['made_at', now.toISOString()],
		['day', today.day],
		['zone', today.zone],
		['organisation', { id: site.id, name: site.name }],
		['account', without(person, ['answerer'])],
		['crews', one?.crews ?? []],
		['training_state', training_state ?? null],
		['entries', entries.map(entryMember)],
		...Object.entries(few),
		['sign_offs', sign_offs.map(signOffMember)],
		['joined_as_guest', guests],
		['course_events', eachAs(courseEventPages(db, person.id), eventMember)],
		['checks', checksOf(db, person.id)],
		['attempts', underAll(answerers, (answerer) => attemptPages(db, answerer), attemptMember)],
		['outcomes', underAll(answerers, (answerer) => outcomePages(db, answerer))],
		['set_answers', underAll(answerers, (answerer) => setAnswerPages(db, person.id, answerer))],
		['paper_answers', underAll(answerers, (answerer) => paperAnswerPages(db, person.id, answerer))],
		['practised', underAll(answerers, (answerer) => practisedPages(db, person.id, answerer))],
		['audit_by', eachAs(auditAbout(db, organisation, person.id, 'actor_id'), detailMember)],
		['audit_about', eachAs(auditAbout(db, organisation, person.id, 'subject_id'), detailMember)]
	]);
}
