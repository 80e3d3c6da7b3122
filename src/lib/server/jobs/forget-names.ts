/** The daily job that forgets the names of people who left long ago. */
import { setImmediate } from 'node:timers/promises';
import { closedWithNames, type LastClosed } from '../db/forgetting.ts';
import type { Database } from '../db/open.ts';
import type { PersonRow } from '../db/people.ts';
import { forgettingFacts, forgettingOf, keptLongEnoughFrom } from '../records/may-forget.ts';
import { forgetKeptLongEnough } from '../records/forgetting.ts';
import { recordsOf, recordSettings, type FoundPerson } from '../records/found.ts';
import type { Did, Job } from './job.ts';

/** @reason a request never waits for more than so many people */
const AT_ONCE = 50;

type Kept = 'forgotten' | 'keptNotLongEnough' | 'keptSigned';

/**
 * Forgets the names of people who left longer ago than the organisation keeps them.
 * @param slice how many people are read at once
 * @returns counts of what it looked at and did
 */
export async function forgetNames(db: Database, organisation: string, now: Date, slice: number = AT_ONCE): Promise<Did> {
	const { keepMonths } = await recordSettings(db, organisation);
	if (keepMonths === null) return { kept: 'always' };
	const counts = { lookedAt: 0, forgotten: 0, keptNotLongEnough: 0, keptSigned: 0 };
	for await (const people of closedPeople(db, organisation, slice)) {
		const records = await recordsOf(db, people.map(({ id }) => id));
		for (const person of people) {
			const record = records.get(person.id);
			counts.lookedAt += 1;
			counts[record === undefined ? 'keptNotLongEnough' : await forgetOne(db, organisation, { person, record }, keepMonths, now)] += 1;
		}
		await setImmediate();
	}
	return counts;
}

/** Everybody who is closed and has a name, in slices. Learners come first: whose records are forgotten, their signers may be too. */
async function* closedPeople(db: Database, organisation: string, slice: number): AsyncGenerator<readonly PersonRow[], void, undefined> {
	for (const role of ['learner', 'trainer', 'employer'] as const) {
		let after: LastClosed = { closedAt: '', id: '' };
		for (;;) {
			const people = await closedWithNames(db, organisation, role, after, slice);
			if (people.length > 0) yield people;
			const last = people.at(-1);
			if (last === undefined || people.length < slice) break;
			after = { closedAt: last.closed_at ?? '', id: last.id };
		}
	}
}

async function forgetOne(db: Database, organisation: string, found: FoundPerson, keepMonths: number, now: Date): Promise<Kept> {
	const facts = await forgettingFacts(db, organisation, found, now);
	const { left } = found.record;
	if (left === undefined || keptLongEnoughFrom(found.record, left, keepMonths) > facts.today) return 'keptNotLongEnough';
	const may = forgettingOf(facts);
	if (may.kind === 'reduced' && may.why === 'signed') return 'keptSigned';
	return may.kind === 'allowed' && (await forgetKeptLongEnough(db, organisation, found.person.id, now)) ? 'forgotten' : 'keptNotLongEnough';
}

export const forgetNamesJob: Job = { name: 'forget-names', scope: 'organisation', run: (db, organisation, now) => forgetNames(db, organisation, now) };
