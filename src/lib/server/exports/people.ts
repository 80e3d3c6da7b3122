/** Everyone of an organisation with what the chain says of them, page by page. */
import { commitmentsIn, nameAt, personRecord, type PersonRecord } from '#lib/records/index.ts';
import { begunOf, crewsOfPeople, entriesBesideChecks, personPages, type CrewOf, type ExportedPerson } from '../db/exports.ts';
import { namesNow } from '../db/names.ts';
import type { Database } from '../db/open.ts';
import { identitiesOf } from '../db/records.ts';
import { placedRows } from '../records/append.ts';

/** What stands in place of a name that is forgotten. */
export const ERASED = 'identity erased';

/** A name, and the number that goes with it. */
export interface ShownName {
	readonly name: string;
	readonly number: string | null;
}

const NOBODY: ShownName = Object.freeze({ name: ERASED, number: null });

/** A person, and the names that their entries speak of. */
export interface WalkedPerson {
	readonly person: ExportedPerson;
	/** Without the checks. */
	readonly record: PersonRecord;
	/** How the person is called now. */
	readonly now: ShownName;
	/** How the person was called when an entry was made. @param seq of the entry */
	readonly nameAt: (seq: number) => ShownName;
	/** The name behind a commitment of a signer or trainer. */
	readonly nameOf: (commitment: string) => string;
	/** The name that somebody who entered something has now; of nobody, empty. */
	readonly staffName: (id: string | null) => string;
	readonly begun: boolean;
	readonly crews: readonly CrewOf[];
}

/** People in a page. @reason their entries are at hand together, read and parsed: what is few is gone before it grows old in memory */
const PEOPLE = 5;

/** Everyone of an organisation, in no order that means anything. */
export async function* walkPeople(db: Database, organisation: string): AsyncGenerator<readonly WalkedPerson[], void, undefined> {
	for await (const people of personPages(db, organisation, PEOPLE)) yield await walked(db, organisation, people);
}

/** @returns people with what the chain says of them. @param people of this organisation */
export async function walked(db: Database, organisation: string, people: readonly ExportedPerson[]): Promise<readonly WalkedPerson[]> {
	const ids = people.map(({ id }) => id);
	const rows = await entriesBesideChecks(db, ids);
	const records = new Map([...rows].map(([id, entries]) => [id, personRecord(placedRows(entries))]));
	const entries = [...records.values()].flatMap((record) => record.entries.map(({ entry }) => entry));
	const identities = await identitiesOf(db, organisation, [...new Set(entries.flatMap(commitmentsIn))]);
	const staff = await namesNow(db, organisation, entries.flatMap(({ by }) => by ?? []));
	const begun = await begunOf(db, ids);
	const crews = await crewsOfPeople(db, ids);
	const shown = (commitment: string | undefined, otherwise: ShownName): ShownName => {
		if (commitment === undefined) return otherwise;
		const identity = identities.get(commitment);
		return identity === undefined ? NOBODY : { name: identity.name, number: identity.personal_number };
	};
	return people.map((person): WalkedPerson => {
		const record = records.get(person.id) ?? personRecord([]);
		const now: ShownName = record.erased === undefined ? { name: person.name, number: person.personal_number } : NOBODY;
		return {
			person,
			record,
			now,
			nameAt: (seq) => shown(nameAt(record, seq), now),
			nameOf: (commitment) => shown(commitment, NOBODY).name,
			staffName: (id) => (id === null ? '' : staff.get(id)?.name || ERASED),
			begun: begun.has(person.id),
			crews: crews.get(person.id) ?? []
		};
	});
}
