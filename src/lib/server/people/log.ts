/** Who did what: the log of an organisation, as its employer reads it. */
import { folded } from '../records/folded.ts';
import { logPage, type AuditRow, type LogPlace } from '../db/audit.ts';
import { namesNow, staffNames, thingNames, type NamedNow } from '../db/names.ts';
import type { Database } from '../db/open.ts';
import { settingsOf } from './organisation.ts';
import type { AuditKind } from './audit.ts';
import { spanOf, type DayRange } from '../exports/range.ts';
import type { Person } from './who.ts';

/** What deeds are about. */
export const LOG_GROUPS = ['sign-ins', 'people', 'crews-and-sets', 'records', 'exports', 'settings'] as const;
export type LogGroup = (typeof LOG_GROUPS)[number];

/** Every kind has its group. */
const GROUP_OF: Readonly<Record<AuditKind, LogGroup>> = {
	'signed-in': 'sign-ins',
	'signed-out': 'sign-ins',
	'sign-in-refused': 'sign-ins',
	'pin-set': 'sign-ins',
	'pin-reset': 'sign-ins',
	'staff-enrolled': 'sign-ins',
	'staff-reset': 'sign-ins',
	'person-unlocked': 'sign-ins',
	'signing-refused': 'sign-ins',
	'staff-invited': 'people',
	'person-closed': 'people',
	'learner-added': 'people',
	'learner-joined': 'people',
	'learner-moved': 'people',
	'person-left': 'people',
	'person-returned': 'people',
	'name-changed': 'people',
	'name-forgotten': 'people',
	'forgetting-refused': 'people',
	'crew-made': 'crews-and-sets',
	'crew-changed': 'crews-and-sets',
	'crew-archived': 'crews-and-sets',
	'scenario-made': 'crews-and-sets',
	'scenario-published': 'crews-and-sets',
	'scenario-retired': 'crews-and-sets',
	'scenario-restored': 'crews-and-sets',
	'scenario-discarded': 'crews-and-sets',
	'set-made': 'crews-and-sets',
	'set-assigned': 'crews-and-sets',
	'set-recalled': 'crews-and-sets',
	'set-archived': 'crews-and-sets',
	'paper-printed': 'crews-and-sets',
	'paper-typed': 'crews-and-sets',
	'check-opened': 'records',
	'check-unlocked': 'records',
	'hands-on-signed': 'records',
	'retraining-ordered': 'records',
	'retraining-withdrawn': 'records',
	'record-revoked': 'records',
	'record-reinstated': 'records',
	'prior-training-entered': 'records',
	'training-acknowledged': 'records',
	'chain-checked': 'records',
	'certificate-handed-out': 'exports',
	'credential-handed-out': 'exports',
	'records-exported': 'exports',
	'person-data-exported': 'exports',
	'checkpoint-handed-out': 'exports',
	'organisation-set-up': 'settings',
	'settings-changed': 'settings',
	'record-settings-changed': 'settings',
	'pass-rule-chosen': 'settings',
	'pass-rule-made': 'settings',
	'judges-review-entered': 'settings'
};

function kindsOf(group: LogGroup): readonly string[] {
	return Object.entries(GROUP_OF).flatMap(([kind, of]) => (of === group ? [kind] : []));
}

/** What is looked for. */
export interface LogFilter {
	/** Left out: everything. */
	readonly group?: LogGroup | undefined;
	/** Part of the name of a member of staff; empty for anybody. */
	readonly who: string;
	/** Local days. */
	readonly range: DayRange;
}

/** A deed, with names as they are now. */
export interface ToldDeed {
	readonly id: string;
	readonly kind: string;
	/** ISO 8601, UTC. */
	readonly at: string;
	/** Null for the program itself, and for somebody unknown. */
	readonly actor: NamedNow | null;
	/** Whom or what it was about; null where that says nothing more. */
	readonly subject: string | null;
	/** More of it, in the order in which it is told. */
	readonly details: readonly ToldDetail[];
}

/** One thing more that is known of a deed: a name, a code, a day or a count, by what it is. */
export interface ToldDetail {
	readonly what: DetailKind;
	readonly value: string;
}

/** What is told of a deed; anything else that is noted of it stays in the exported log. */
const DETAILS = ['crew', 'from', 'to', 'person', 'trainer', 'capacity', 'role', 'file', 'form', 'reason', 'why', 'day', 'due', 'copies', 'version', 'people'] as const;
export type DetailKind = (typeof DETAILS)[number];

/** Deeds on a page. */
export const DEEDS = 100;

/** A page of the log. */
export interface LogPageOf {
	readonly deeds: readonly ToldDeed[];
	/** Behind it there is more. */
	readonly next: LogPlace | undefined;
	/** Nobody on the staff has the name that was looked for. */
	readonly nobody: boolean;
}

/**
 * One page of the log of the employer's organisation, the newest first.
 * @param olderThan the place that the page begins behind
 */
export async function readLog(db: Database, employer: Person, filter: LogFilter, olderThan?: LogPlace): Promise<LogPageOf> {
	const { organisation } = employer;
	const { zone } = await settingsOf(db, organisation);
	const actors = filter.who === '' ? undefined : await staffCalled(db, organisation, filter.who);
	if (actors?.length === 0) return { deeds: [], next: undefined, nobody: true };
	const query = {
		span: spanOf(zone, filter.range),
		...(filter.group === undefined ? {} : { kinds: kindsOf(filter.group) }),
		...(actors === undefined ? {} : { actors }),
		olderThan
	};
	// One more than is shown tells whether there is a next page.
	const rows = await logPage(db, organisation, query, DEEDS + 1);
	const shown = rows.slice(0, DEEDS);
	const last = shown.at(-1);
	return { deeds: await told(db, organisation, shown), next: rows.length > DEEDS && last !== undefined ? { at: last.at, id: last.id } : undefined, nobody: false };
}

async function staffCalled(db: Database, organisation: string, who: string): Promise<readonly string[]> {
	const part = folded(who);
	return (await staffNames(db, organisation)).filter(({ name }) => folded(name).includes(part)).map(({ id }) => id);
}

/** What is noted of an event: our own, written by `note` alone. */
function detailOf(row: AuditRow): Readonly<Record<string, string | number | boolean>> {
	return JSON.parse(row.detail) as Readonly<Record<string, string | number | boolean>>;
}

async function told(db: Database, organisation: string, rows: readonly AuditRow[]): Promise<readonly ToldDeed[]> {
	const details = new Map(rows.map((row) => [row.id, detailOf(row)]));
	const ids = rows.flatMap((row) => [row.actor_id, row.subject_id, ...Object.values(details.get(row.id) ?? {})]).filter((id) => typeof id === 'string');
	const people = await namesNow(db, organisation, ids);
	const things = new Map([...(await thingNames(db, 'crew', organisation, ids)), ...(await thingNames(db, 'practice_set', organisation, ids))]);
	const nameOf = (id: string): string | undefined => people.get(id)?.name ?? things.get(id);
	return rows.map((row) => {
		const detail = details.get(row.id) ?? {};
		return {
			id: row.id,
			kind: row.kind,
			at: row.at,
			actor: people.get(row.actor_id ?? '') ?? null,
			subject: row.subject_id === row.actor_id ? null : (nameOf(row.subject_id ?? '') ?? null),
			details: DETAILS.flatMap((what): readonly ToldDetail[] => {
				const value = Object.hasOwn(detail, what) ? detail[what] : undefined;
				if (value === undefined || typeof value === 'boolean') return [];
				return [{ what, value: nameOf(String(value)) ?? String(value) }];
			})
		};
	});
}
