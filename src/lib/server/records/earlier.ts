/**
 * What was stored before there was a chain, entered into it: names, people who left, checks that ended, completions,
 * sign-offs. Done once for a database, in slices, each whole or not at all. Cut short, it goes on at the next start with
 * what is still missing.
 */
import type { Standing } from '#lib/mastery/index.ts';
import type { Entry, EntryOf, HandsOnRecord, PersonRecord } from '#lib/records/index.ts';
import { dayIn } from '../course/day.ts';
import { completionsOf, eventsOf, type CheckEvent } from '../db/checks.ts';
import { isDone, markDone } from '../db/done-once.ts';
import { allTriesOf, peopleAfter } from '../db/earlier.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation, organisationIds, type OrganisationRow, type PersonRow } from '../db/people.ts';
import { signOffsOf, type SignOffRow } from '../db/sign-offs.ts';
import { appendEntries, lockChain } from './append.ts';
import { checkEndEntries } from './check-end.ts';
import { recordSettings, recordsOf, type RecordSettings } from './found.ts';
import { commitNames, commitmentOf } from './names.ts';

type HandsOnSignature = EntryOf<'hands-on'>['signature'];

/** How this work is called among those that are done once. */
const NAME = 'earlier-records';
/** How many people are taken at a time. @reason each has some ten checks of a few kB */
const SLICE = 50;

/**
 * Enters what no chain has yet. Twice is as once, and two servers may do it at the same time.
 * @returns how many entries it made; 0 where it was done before
 */
export async function enterEarlierRecords(db: Database, now: Date): Promise<number> {
	if (await isDone(db, NAME)) return 0;
	let entered = 0;
	for (const id of await organisationIds(db)) {
		const organisation = await findOrganisation(db, id);
		if (organisation === null) continue;
		// Staff first: what is entered of learners holds the commitments to their names.
		for (const who of ['staff', 'learners'] as const) entered += await enterAll(db, organisation, who, now);
	}
	await markDone(db, NAME, now.toISOString());
	return entered;
}

async function enterAll(db: Database, organisation: OrganisationRow, who: 'staff' | 'learners', now: Date): Promise<number> {
	let entered = 0;
	let slice = await peopleAfter(db, organisation.id, who, '', SLICE);
	while (slice.length > 0) {
		const people = slice;
		entered += await db.transaction().execute(async (transaction) => {
			// Kept until the end, so that nobody else enters the same.
			await lockChain(transaction, organisation.id);
			return (await appendEntries(transaction, organisation.id, await missing(transaction, organisation, people, now))).length;
		});
		slice = await peopleAfter(db, organisation.id, who, people.at(-1)?.id ?? '', SLICE);
	}
	return entered;
}

/** @returns what the chain does not say yet of some people of an organisation, in the order in which it happened to each. */
async function missing(db: Database, organisation: OrganisationRow, people: readonly PersonRow[], now: Date): Promise<readonly Entry[]> {
	const records = await recordsOf(db, people.map(({ id }) => id));
	const nameless = people.filter(({ id }) => records.get(id)?.named === undefined);
	const named = nameless.map(({ id, role, name, personal_number }) => ({ id, role, name, number: personal_number }));
	const entries: Entry[] = [...(await commitNames(db, organisation.id, named, null, now))];
	const settings = await recordSettings(db, organisation.id);
	for (const person of people) entries.push(...(await missingOf(db, { organisation, settings, person, record: records.get(person.id), now })));
	return entries;
}

/** A person, and what the chain says of them. */
interface Looked {
	readonly organisation: OrganisationRow;
	readonly settings: RecordSettings;
	readonly person: PersonRow;
	readonly record: PersonRecord | undefined;
	readonly now: Date;
}

async function missingOf(db: Database, of: Looked): Promise<readonly Entry[]> {
	const happened = [...(await endsOf(db, of)), ...(await signOffEntries(db, of))].toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
	const { organisation, person, record, now } = of;
	const entries = happened.flatMap((one) => one.entries);
	if (person.closed_at === null || record?.left !== undefined) return entries;
	return [...entries, { kind: 'left', at: now.toISOString(), by: null, person: person.id, day: dayIn(organisation.zone, new Date(person.closed_at)) }];
}

/** Entries of one thing, and when it happened, ISO 8601. */
interface Happened {
	readonly at: string;
	readonly entries: readonly Entry[];
}

async function endsOf(db: Database, { organisation, settings, person, record, now }: Looked): Promise<readonly Happened[]> {
	const completions = await completionsOf(db, person.id);
	const found: Happened[] = [];
	for (const of of await allTriesOf(db, person.id)) {
		const events = await eventsOf(db, of.id);
		const end = endIn(events);
		if (end === undefined) continue;
		const completion = completions.find((one) => one.check_id === of.id);
		const day = completion?.day ?? dayIn(organisation.zone, new Date(end.at));
		const entries = await checkEndEntries(db, { organisation, settings, of, events, passed: end.passed, day, completion, at: now.toISOString(), by: null });
		found.push({ at: end.at, entries: entries.filter((entry) => !isEntered(record, entry)) });
	}
	return found;
}

/** How a check ended and when; undefined while it runs. Payloads are our own, as the course writes them. */
function endIn(events: readonly CheckEvent[]): { readonly passed: boolean; readonly at: string } | undefined {
	const last = events.at(-1);
	if (last?.kind !== 'handed-in') return undefined;
	const { standing } = JSON.parse(last.payload) as { readonly standing: Standing };
	return standing.kind === 'more' ? undefined : { passed: standing.kind === 'passed', at: last.at };
}

function isEntered(record: PersonRecord | undefined, entry: EntryOf<'check-ended'> | EntryOf<'completed'>): boolean {
	if (record === undefined) return false;
	return entry.kind === 'completed' ? record.trainings.some(({ id }) => id === entry.id) : record.checks.some((one) => one.entry.check === entry.check);
}

async function signOffEntries(db: Database, { person, record, now }: Looked): Promise<readonly Happened[]> {
	const rows = (await signOffsOf(db, [person.id])).filter(({ id }) => record?.signOffs.some((one) => one.id === id) !== true);
	return Promise.all(rows.map(async (row) => ({ at: row.at, entries: [await signOffEntry(db, row, now)] })));
}

async function signOffEntry(db: Database, { person_id: person, signer_id, record, signed }: SignOffRow, now: Date): Promise<EntryOf<'hands-on'>> {
	// Signatures from before held the signer's name itself. Names could not change then: it is the one committed to.
	const { record: hash, signer, named, capacity, meaning, language, at } = JSON.parse(signed) as Omit<HandsOnSignature, 'named'> & { readonly named?: string };
	const signature: HandsOnSignature = { record: hash, signer, named: named ?? (await commitmentOf(db, signer_id)), capacity, meaning, language, at };
	return { kind: 'hands-on', at: now.toISOString(), by: null, person, record: JSON.parse(record) as HandsOnRecord, signature };
}
