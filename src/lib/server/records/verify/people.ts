/** People: who they are by the tables and by the chain, checks that ended without an entry, and how they stand. */
import { personRecord, type PersonRecord } from '#lib/records/index.ts';
import type { Standing } from '#lib/mastery/index.ts';
import type { Database } from '../../db/open.ts';
import { entriesAbout, type IdentityRow } from '../../db/records.ts';
import { eventsByTry, heldPeoplePages, identitiesByCommitment, statesOf, triesOf, type HeldPerson } from '../../db/verifying.ts';
import { madeStates, placedRows } from '../append.ts';
import { breath } from '../breath.ts';
import { compareRow } from './columns.ts';
import { firstOf, type Found } from './result.ts';

/** People looked at at once. @reason each has some ten entries and as many tries; a few ten milliseconds */
const SLICE = 100;

/** @returns the first person, in the order of ids, of whom something differs. @param looked called with how many were looked at */
export async function checkPeople(db: Database, organisation: string, looked: (people: number) => void): Promise<Found> {
	let first: Found;
	for await (const people of heldPeoplePages(db, organisation, SLICE)) {
		const ids = people.map(({ id }) => id);
		const entries = await entriesAbout(db, ids);
		const records = new Map(ids.map((id) => [id, personRecord(placedRows(entries.get(id) ?? []))]));
		const newest = [...records.values()].flatMap(({ named }) => named ?? []);
		const identities = await identitiesByCommitment(db, newest);
		const person = firstOf(people.map((one) => checkPerson(one, records.get(one.id), identities)));
		// How people stand is made with their names: of whom one is no name, none is made.
		first = firstOf([first, person ?? firstOf([await checkTries(db, ids, records), await checkStates(db, ids)])]);
		looked(people.length);
		await breath();
	}
	return first;
}

function checkPerson(person: HeldPerson, record: PersonRecord | undefined, identities: ReadonlyMap<string, IdentityRow>): Found {
	const newest = record?.entries.findLast(({ entry }) => entry.kind === 'named');
	if (record === undefined || newest?.entry.kind !== 'named') return { table: 'person', row: person.id, column: null, seq: null, problem: 'row-without-entry' };
	const { role, commitment } = newest.entry;
	const held = identities.get(commitment);
	const erased = record.erased !== undefined;
	// A name that is missing was found missing where it was entered.
	if (!erased && held === undefined) return undefined;
	const { name, personal_number } = erased || held === undefined ? { name: '', personal_number: null } : held;
	const { id, organisation_id } = person;
	return compareRow({ table: 'person', row: id, seq: newest.seq }, person, { id, organisation_id, role, name, personal_number });
}

async function checkTries(db: Database, people: readonly string[], records: ReadonlyMap<string, PersonRecord>): Promise<Found> {
	const tries = await triesOf(db, people);
	const entered = new Set([...records.values()].flatMap(({ checks }) => checks.map(({ entry }) => entry.check)));
	const others = tries.filter(({ id }) => !entered.has(id)).map(({ id }) => id);
	const events = await eventsByTry(db, others);
	const ended = others.find((id) => hasEnded(events.get(id)?.at(-1)));
	return ended === undefined ? undefined : { table: 'check_try', row: ended, column: null, seq: null, problem: 'row-without-entry' };
}

function hasEnded(last: { readonly kind: string; readonly payload: string } | undefined): boolean {
	if (last?.kind !== 'handed-in') return false;
	// What runs is no record yet: what cannot be read of it has not ended.
	try {
		return (JSON.parse(last.payload) as { readonly standing: Standing }).standing.kind !== 'more';
	} catch {
		return false;
	}
}

/** How people stand is no record, but made from it: what is made again must be the same. */
async function checkStates(db: Database, people: readonly string[]): Promise<Found> {
	const stored = await statesOf(db, people);
	const made = await madeStates(db, people);
	return firstOf(
		made.map((row) => {
			const found = compareRow({ table: 'training_state', row: row.person_id, seq: 0 }, stored.get(row.person_id), { ...row });
			return found && { ...found, seq: null, problem: 'state-differs' };
		})
	);
}
