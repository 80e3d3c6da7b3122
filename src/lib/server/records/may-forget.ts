/** When a name may be forgotten: the latest certification is kept while somebody works here, and for a time after. */
import { addDays, addMonths, trainingDay, type PersonRecord } from '#lib/records/index.ts';
import { signsForOthers } from '../db/forgetting.ts';
import type { Database } from '../db/open.ts';
import type { PersonRow } from '../db/people.ts';
import type { Person } from '../people/who.ts';
import { findPersonRecord, KEEP_MONTHS, recordSettings } from './found.ts';
import { todayIn } from './leaving.ts';

/** Whether a name may be forgotten. */
export type MayForget =
	| { readonly kind: 'allowed' }
	/** Nothing goes: the person is still there. @property months how long the name is kept after leaving; 0 for somebody without records */
	| { readonly kind: 'refused'; readonly why: 'still-there'; readonly months: number }
	/** All goes but the name. @property from the first local day on which the name may be forgotten; null where that is open */
	| { readonly kind: 'reduced'; readonly why: 'latest-certification'; readonly from: string }
	| { readonly kind: 'reduced'; readonly why: 'signed'; readonly from: null }
	/** Forgotten before. */
	| { readonly kind: 'before'; readonly day: string };

/** What decides it. */
export interface ForgettingFacts {
	readonly record: PersonRecord;
	/** Whether the person has no account any more. */
	readonly closed: boolean;
	/** Whether their signature stands on a kept record of somebody else. */
	readonly signs: boolean;
	/** Months that the latest certification is kept after leaving. */
	readonly months: number;
	/** Local day. */
	readonly today: string;
}

/** @returns the local day of the newest record of training that counts; undefined without one. */
function latestDay({ trainings, signOffs }: PersonRecord): string | undefined {
	const days = [
		...trainings.filter(({ revoked }) => revoked === undefined).map(trainingDay),
		...signOffs.filter(({ revoked }) => revoked === undefined).map(({ entry }) => entry.record.day)
	];
	return days.toSorted().at(-1);
}

/**
 * @returns the first local day on which the time that a name is kept after leaving is over: that many months, counted
 * from the last day, and from no day before the latest certification. Where the month at the end has no such day, its last counts
 * @param left the last day there
 */
export function keptLongEnoughFrom(record: PersonRecord, left: string, months: number): string {
	const latest = latestDay(record);
	const from = latest !== undefined && latest > left ? latest : left;
	return addDays(addMonths(from, months), 1);
}

/**
 * Asks whether a name may be forgotten.
 * @source 29 CFR 1926.503(b)(2): the latest training certification is maintained; the time after leaving is the organisation's setting; from memory
 */
export function forgettingOf({ record, closed, signs, months, today }: ForgettingFacts): MayForget {
	if (record.erased !== undefined) return { kind: 'before', day: record.erased };
	const certified = latestDay(record) !== undefined;
	if (!closed || record.left === undefined) return { kind: 'refused', why: 'still-there', months: certified ? months : 0 };
	if (signs) return { kind: 'reduced', why: 'signed', from: null };
	if (!certified) return { kind: 'allowed' };
	const from = keptLongEnoughFrom(record, record.left, months);
	return from > today ? { kind: 'reduced', why: 'latest-certification', from } : { kind: 'allowed' };
}

/** @returns what decides whether the name of a person of an organisation may be forgotten. */
export async function forgettingFacts(db: Database, organisation: string, { person, record }: { readonly person: PersonRow; readonly record: PersonRecord }, now: Date): Promise<ForgettingFacts> {
	return {
		record,
		closed: person.closed_at !== null,
		signs: person.role !== 'learner' && (await signsForOthers(db, organisation, person.id)),
		months: (await recordSettings(db, organisation)).keepMonths ?? KEEP_MONTHS,
		today: await todayIn(db, organisation, now)
	};
}

/** Asks whether the name of a person may be forgotten. @returns null for nobody of the employer's organisation */
export async function mayForget(db: Database, who: Person, person: string, now: Date): Promise<MayForget | null> {
	if (who.role !== 'employer') return null;
	const found = await findPersonRecord(db, who.organisation, person);
	return found === null ? null : forgettingOf(await forgettingFacts(db, who.organisation, found, now));
}
