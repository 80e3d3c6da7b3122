/** The tables that an organisation exports, each streamed: nothing is held but a page of rows. */
import type { AuditRow } from '../db/audit.ts';
import { auditPages, personPages } from '../db/exports.ts';
import { namesNow } from '../db/names.ts';
import type { Database } from '../db/open.ts';
import { ANSWER_COLUMNS, answerRows, type AnswerRow } from './answer-rows.ts';
import { COMPLETION_COLUMNS, completionRows, type CompletionRow } from './completion-rows.ts';
import { csvOf, type Row } from './csv.ts';
import { endedChecks } from './ended-checks.ts';
import { ERASED, walkPeople } from './people.ts';
import { PEOPLE_COLUMNS, personRow, type PersonRow } from './people-rows.ts';
import { ALL_DAYS, spanOf, type DayRange } from './range.ts';
import { RETRAINING_COLUMNS, retrainingRows, type RetrainingRow } from './retraining-rows.ts';
import { exportSite } from './site.ts';

/** What is asked of an export. */
export interface TableOptions {
	/** Local days; every day where left out. */
	readonly range?: DayRange;
	/** Begins with a byte order mark. */
	readonly mark?: boolean;
	readonly now?: Date;
}

type Text = AsyncGenerator<string, void, undefined>;
type RowPages<One> = AsyncGenerator<readonly One[], void, undefined>;

const rangeOf = ({ range }: TableOptions): DayRange => range ?? ALL_DAYS;

/** Everyone of an organisation, with how training stands today. */
export function peopleCsv(db: Database, organisation: string, options: TableOptions = {}): Text {
	async function* rows(): RowPages<PersonRow> {
		const { today } = await exportSite(db, organisation, options.now ?? new Date());
		for await (const people of walkPeople(db, organisation)) yield people.map((one) => personRow(one, today));
	}
	return csvOf(PEOPLE_COLUMNS, rows(), options);
}

/** Every completion and every prior training of an organisation. */
export function completionsCsv(db: Database, organisation: string, options: TableOptions = {}): Text {
	async function* rows(): RowPages<CompletionRow> {
		const { organisation: site } = await exportSite(db, organisation, options.now ?? new Date());
		for await (const people of walkPeople(db, organisation)) yield people.flatMap((one) => completionRows(one, rangeOf(options), site));
	}
	return csvOf(COMPLETION_COLUMNS, rows(), options);
}

/** Every order of retraining, and what became of it. */
export function retrainingCsv(db: Database, organisation: string, options: TableOptions = {}): Text {
	async function* rows(): RowPages<RetrainingRow> {
		const { today } = await exportSite(db, organisation, options.now ?? new Date());
		for await (const people of walkPeople(db, organisation)) yield people.flatMap((one) => retrainingRows(one, rangeOf(options), today));
	}
	return csvOf(RETRAINING_COLUMNS, rows(), options);
}

/** People whose answers are at hand together. @reason a check's answers with their evidence are some hundred kilobytes */
const ANSWERING = 4;

/** Every answer of checks that were handed in. */
export function answersCsv(db: Database, organisation: string, options: TableOptions = {}): Text {
	async function* rows(): RowPages<AnswerRow> {
		const { today } = await exportSite(db, organisation, options.now ?? new Date());
		for await (const people of personPages(db, organisation, ANSWERING)) {
			const byId = new Map(people.map((one) => [one.id, one]));
			for (const check of await endedChecks(db, [...byId.keys()], rangeOf(options), 'handed-in')) {
				const person = byId.get(check.of.person_id);
				const name = person === undefined || person.name === '' ? ERASED : person.name;
				yield answerRows(check, { person_id: check.of.person_id, name, personal_number: person?.personal_number ?? null }, today.zone);
			}
		}
	}
	return csvOf(ANSWER_COLUMNS, rows(), options);
}

const LOG_COLUMNS = ['at', 'zone', 'kind', 'actor_id', 'actor', 'actor_role', 'subject_id', 'subject', 'detail', 'id'] as const;
type LogRow = Row<(typeof LOG_COLUMNS)[number]>;

/** Rows of the log with the names that people have now. Whose name is forgotten stands there without. */
async function logRows(db: Database, organisation: string, zone: string, events: readonly AuditRow[]): Promise<readonly LogRow[]> {
	const names = await namesNow(db, organisation, events.flatMap((one) => [one.actor_id, one.subject_id].filter((id) => id !== null)));
	const nameOf = (id: string | null): string | null => {
		const name = id === null ? undefined : names.get(id)?.name;
		return name === '' ? ERASED : (name ?? null);
	};
	return events.map((one) => ({
		at: one.at,
		zone,
		kind: one.kind,
		actor_id: one.actor_id,
		actor: nameOf(one.actor_id),
		actor_role: names.get(one.actor_id ?? '')?.role ?? null,
		subject_id: one.subject_id,
		subject: nameOf(one.subject_id),
		detail: one.detail,
		id: one.id
	}));
}

/** What was noted of deeds, the first first. */
export function logCsv(db: Database, organisation: string, options: TableOptions = {}): Text {
	async function* rows(): RowPages<LogRow> {
		const { today } = await exportSite(db, organisation, options.now ?? new Date());
		for await (const events of auditPages(db, organisation, spanOf(today.zone, rangeOf(options)))) yield await logRows(db, organisation, today.zone, events);
	}
	return csvOf(LOG_COLUMNS, rows(), options);
}
