/** What verifying finds: that the records hold, or the first thing that does not. */

/** What can be wrong. Words are in the catalogue. */
export const BREAKS = [
	/** A number is missing in the chain, or an entry stands in the place of another. */
	'entry-missing',
	/** An entry does not hang on the one before it. */
	'link-differs',
	/** The hash of an entry is not the one of what stands in it. */
	'hash-differs',
	/** The hash fits, but what stands there is no entry. */
	'no-entry',
	/** The hash fits, but it is not written in the one way. */
	'not-canonical',
	/** The first entry is not the opening of this chain, or a later one is. */
	'opening-wrong',
	/** A column is not what the chain says. */
	'column-differs',
	/** Where the chain ends is not noted. */
	'head-missing',
	/** The chain ends before or behind where it is noted to end. */
	'end-differs',
	/** The chain ends before what a checkpoint covers. */
	'cut-off',
	/** An entry has no row. */
	'row-missing',
	/** A row has no entry. */
	'row-without-entry',
	/** How somebody stands, which is no record, is not what the chain makes of it. */
	'state-differs',
	/** More entries than rows: two of them name the same. */
	'entry-twice',
	/** A check, its events, answers or marks are not what the digest holds. */
	'evidence-differs',
	/** A name, number or salt does not open its commitment. */
	'name-differs',
	/** A name is noted as forgotten, and is there. */
	'name-not-forgotten',
	/** A signature is over another record. */
	'signed-other',
	/** A signature, or presence at a check, names a commitment that is not the signer's. */
	'signer-unknown',
	/** The root of a checkpoint is not that of the chain. */
	'root-differs',
	/** The signature of a checkpoint does not hold. */
	'signature-wrong',
	/** The key that signed is not among the keys of this server. */
	'key-unknown',
	/** A public key is not the one that its name says, or is of no use. */
	'key-differs',
	/** Marking stored answers again gives other marks. */
	'marks-differ',
	/** Drawing again gives other values than those that are stored. */
	'draw-differs',
	/** The verdict is not what the rule makes of the marks. */
	'verdict-differs',
	/** The chain is not the one that a checkpoint handed out before was made of. */
	'handed-out-differs'
] as const;
export type BreakKind = (typeof BREAKS)[number];

/** The first thing that does not hold. */
export interface Break {
	readonly organisation: string | null;
	readonly table: string;
	/** Key of the row; of entries the number, of checkpoints the size. */
	readonly row: string;
	readonly column: string | null;
	/** The entry that it hangs on; null for none. */
	readonly seq: number | null;
	readonly problem: BreakKind;
}

/** What was looked at. */
export interface Counts {
	readonly organisations: number;
	readonly entries: number;
	readonly checkpoints: number;
	readonly people: number;
	readonly completions: number;
	readonly signOffs: number;
	readonly certificates: number;
	readonly checks: number;
	/** Items of checks that were marked again from stored values. */
	readonly regraded: number;
	/** Items whose scenario, picture or engine is kept here in another version only. */
	readonly notRegradable: number;
	/** Items that were drawn again from their seed. */
	readonly redrawn: number;
	/** Entries made at an earlier hour than the one before: a clock went back. No fault. */
	readonly clockBack: number;
}

export type CountName = keyof Counts;

export type VerifyResult =
	| { readonly kind: 'holds'; readonly counts: Counts }
	| { readonly kind: 'broken'; readonly broken: Break; readonly counts: Counts };

/** A break that was found, less the organisation. */
export type Found = Omit<Break, 'organisation'> | undefined;

/** @returns the first of some breaks in the order of the chain; those that hang on no entry come last. */
export function firstOf(found: readonly Found[]): Found {
	return found.reduce((first, one) => (first === undefined || (one !== undefined && placeOf(one) < placeOf(first)) ? one : first), undefined);
}

function placeOf({ seq }: NonNullable<Found>): number {
	return seq ?? Number.MAX_SAFE_INTEGER;
}
