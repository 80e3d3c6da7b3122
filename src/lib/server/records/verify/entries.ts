/** The chain by itself: numbers, links, hashes, one way of writing, and columns that say what the entry says. */
import { isCanonical, type Entry, type Placed } from '#lib/records/index.ts';
import { entrySchema } from '#lib/records/schema.ts';
import type { RecordEntryRow } from '../../db/records.ts';
import { personOf } from '../append.ts';
import { BEFORE_FIRST, entryHash } from '../chain.ts';
import type { BreakKind, Found } from './result.ts';

/** Where a walk along a chain is. */
export interface Walked {
	readonly seq: number;
	readonly hash: string;
	/** When the last entry was made, ISO 8601; empty before the first. */
	readonly at: string;
}

export const NOT_WALKED: Walked = { seq: 0, hash: BEFORE_FIRST, at: '' };

/** An entry that holds, or what does not. */
export type Step = { readonly kind: 'entry'; readonly placed: Placed } | { readonly kind: 'broken'; readonly found: NonNullable<Found> };

/**
 * Follows a chain by one entry.
 * @param walked over all before it
 * @param whole whether the entry itself is looked at too: that it fits its schema, and is written in the one way. Its
 * hash says already that it is what was entered.
 */
export function follow(organisation: string, walked: Walked, row: RecordEntryRow, whole: boolean): Step {
	const seq = walked.seq + 1;
	const broken = (problem: BreakKind, column: string | null): Step => ({ kind: 'broken', found: { table: 'record_entry', row: String(seq), column, seq, problem } });
	if (row.seq !== seq) return broken('entry-missing', 'seq');
	if (row.prev !== walked.hash) return broken('link-differs', 'prev');
	if (entryHash(seq, walked.hash, row.payload) !== row.hash) return broken('hash-differs', 'payload');
	const entry = read(row.payload, whole);
	if (typeof entry === 'string') return broken(entry, 'payload');
	if (row.kind !== entry.kind) return broken('column-differs', 'kind');
	if (row.person_id !== personOf(entry)) return broken('column-differs', 'person_id');
	if (row.at !== entry.at) return broken('column-differs', 'at');
	if ((entry.kind === 'opened') !== (seq === 1)) return broken('opening-wrong', 'kind');
	if (entry.kind === 'opened' && entry.organisation !== organisation) return broken('opening-wrong', 'organisation_id');
	return { kind: 'entry', placed: { seq, hash: row.hash, entry } };
}

/** @returns the entry that a payload is, or why it is none. */
function read(payload: string, whole: boolean): Entry | 'no-entry' | 'not-canonical' {
	let value: unknown;
	try {
		value = JSON.parse(payload);
	} catch {
		return 'no-entry';
	}
	// Entries are our own, written by appendEntries alone.
	if (!whole) return typeof value === 'object' && value !== null && 'kind' in value ? (value as Entry) : 'no-entry';
	const parsed = entrySchema.safeParse(value);
	if (!parsed.success) return 'no-entry';
	return isCanonical(payload, value) ? parsed.data : 'not-canonical';
}
