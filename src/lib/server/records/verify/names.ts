/** Names: what the commitments hold, what is forgotten, and whose names stand under signatures. */
import { canonicalJson, ofKind, type Placed } from '#lib/records/index.ts';
import type { Database } from '../../db/open.ts';
import { identitiesByCommitment, keptIdentities, payloadsOf, peopleById } from '../../db/verifying.ts';
import { commitmentTo, sha256 } from '../chain.ts';
import { compareRow } from './columns.ts';
import { firstOf, type Found } from './result.ts';

/** Commitments of those who sign, with whose they are. @reason staff are few, so that it stays small */
export type Signers = Map<string, string>;

/** What came of looking at names. */
export interface LookedAtNames {
	/** How many are kept. */
	readonly kept: number;
	/** The first that is not as it was, or is there though forgotten. */
	readonly found: Found;
	/** The first that is not there. The entry that it is forgotten by comes later, and may be what is missing. */
	readonly missing: Found;
}

export async function checkNames(db: Database, organisation: string, entries: readonly Placed[]): Promise<LookedAtNames> {
	const { found, ...named } = await checkNamed(db, organisation, entries);
	return { ...named, found: firstOf([found, await checkForgotten(db, organisation, entries)]) };
}

async function checkNamed(db: Database, organisation: string, entries: readonly Placed[]): Promise<LookedAtNames> {
	const named = ofKind(entries, 'named');
	const people = await peopleById(db, named.map(({ entry }) => entry.person));
	const rows = await identitiesByCommitment(db, named.map(({ entry }) => entry.commitment));
	const without = named.filter(({ entry }) => !rows.has(entry.commitment));
	const forgotten = await forgottenOf(db, organisation, without.map(({ entry }) => entry.person));
	const found = firstOf(
		named.map(({ seq, entry: { person, commitment, at } }): Found => {
			const found = people.get(person);
			const place = { table: 'person', row: person, seq };
			if (found === undefined) return { ...place, column: null, problem: 'row-missing' };
			if (found.organisation_id !== organisation) return { ...place, column: 'organisation_id', problem: 'column-differs' };
			const row = rows.get(commitment);
			const identity = { table: 'identity', row: commitment, seq };
			if (row === undefined) return undefined;
			const { salt, name, personal_number } = row;
			if (commitmentTo(salt, name, personal_number) !== commitment) return { ...identity, column: null, problem: 'name-differs' };
			return compareRow(identity, row, { commitment, organisation_id: organisation, person_id: person, salt, name, personal_number, at });
		})
	);
	const lost = without.find(({ entry }) => !forgotten.has(entry.commitment) && !forgotten.has(entry.person));
	return { kept: rows.size, found, missing: lost && { table: 'identity', row: lost.entry.commitment, column: null, seq: lost.seq, problem: 'row-missing' } };
}

/** @returns ids of those of some people whose name is noted as forgotten, and the commitments that are forgotten by themselves. */
async function forgottenOf(db: Database, organisation: string, people: readonly string[]): Promise<ReadonlySet<string>> {
	const whole = (await payloadsOf(db, organisation, 'identity-erased', people)).map((payload) => JSON.parse(payload) as { readonly person: string });
	const former = (await payloadsOf(db, organisation, 'former-names-erased', people)).map((payload) => JSON.parse(payload) as { readonly commitments: readonly string[] });
	return new Set([...whole.map(({ person }) => person), ...former.flatMap(({ commitments }) => commitments)]);
}

async function checkForgotten(db: Database, organisation: string, entries: readonly Placed[]): Promise<Found> {
	const whole = ofKind(entries, 'identity-erased');
	const former = ofKind(entries, 'former-names-erased');
	const kept = await keptIdentities(db, [...whole, ...former].map(({ entry }) => entry.person));
	const found: Found[] = whole.map(({ seq, entry }) => {
		const still = kept.find((one) => one.person_id === entry.person);
		return still && { table: 'identity', row: still.commitment, column: null, seq, problem: 'name-not-forgotten' };
	});
	const again: Found[] = former.map(({ seq, entry }) => {
		const still = kept.find((one) => entry.commitments.includes(one.commitment));
		return still && { table: 'identity', row: still.commitment, column: null, seq, problem: 'name-not-forgotten' };
	});
	return firstOf([...found, ...again]);
}

/**
 * @param signers of the entries before; those of these entries are added
 * @returns the first signature that is over something else, or under another's name
 */
export function checkSignatures(entries: readonly Placed[], signers: Signers): Found {
	for (const { seq, entry } of entries) {
		const broken = (problem: 'signed-other' | 'signer-unknown'): Found => ({ table: 'record_entry', row: String(seq), column: 'payload', seq, problem });
		if (entry.kind === 'named' && entry.role !== 'learner') signers.set(entry.commitment, entry.person);
		if (entry.kind === 'hands-on' || entry.kind === 'prior-training') {
			const { record, signature } = entry;
			if (sha256(canonicalJson(record)) !== signature.record || record.person !== entry.person) return broken('signed-other');
			if (signers.get(signature.named) !== signature.signer) return broken('signer-unknown');
		}
		if (entry.kind === 'completed' && entry.supervised !== null && signers.get(entry.supervised.named) !== entry.supervised.trainer) return broken('signer-unknown');
	}
	return undefined;
}
