/** What the chain says of one person: a fold over that person's entries, in order. */
import { NO_END, addDays } from './days.ts';
import { endsAtOnce } from './reasons.ts';
import type { Entry, EntryOf } from './schema.ts';

/** An entry with its place in the chain. */
export interface Placed<One extends Entry = Entry> {
	/** From 1. */
	readonly seq: number;
	readonly hash: string;
	readonly entry: One;
}

/** A record that counts, counted once, or counts no more. */
interface Common {
	readonly id: string;
	readonly seq: number;
	readonly hash: string;
	/** The entry that took it back, if it counts no more. */
	readonly revoked: Placed<EntryOf<'revoked'>> | undefined;
}

/** A sign-off of the hands-on part. */
export interface SignOffRecord extends Common {
	readonly entry: EntryOf<'hands-on'>;
	/** Before how many orders of retraining it stands: sign-off and theory go together where these are alike. */
	readonly run: number;
}

/** Proof of training: own training, or training from elsewhere that was judged adequate. */
export interface TrainingRecord extends Common {
	readonly entry: EntryOf<'completed'> | EntryOf<'prior-training'>;
	readonly run: number;
	/** The hands-on part that goes with it. Until there is one, own training is a record of theory only; prior training needs none. */
	readonly signOff: SignOffRecord | undefined;
	/** The order of retraining that it answers; undefined for a first training. */
	readonly ordered: Placed<EntryOf<'retraining-ordered'>> | undefined;
	readonly acknowledged: Placed<EntryOf<'acknowledged'>> | undefined;
	readonly employerAcknowledged: Placed<EntryOf<'employer-acknowledged'>> | undefined;
	readonly certificate: Placed<EntryOf<'certificate-made'>> | undefined;
	/** Last local day on which it is valid by itself; null for no fixed end. */
	readonly validUntil: string | null;
}

/** An order of retraining. */
export interface RetrainingOrder {
	readonly entry: EntryOf<'retraining-ordered'>;
	readonly seq: number;
	readonly withdrawn: boolean;
	/** Whether a whole training came after it. */
	readonly done: boolean;
}

/** Everything that the chain says of a person. */
export interface PersonRecord {
	/** The newest commitment to the name; undefined before there is one. */
	readonly named: string | undefined;
	/** Every commitment there was. */
	readonly names: readonly string[];
	/** The day from which the name is forgotten. */
	readonly erased: string | undefined;
	/** Since when the person has left; undefined for who is there. */
	readonly left: string | undefined;
	/** In order. */
	readonly trainings: readonly TrainingRecord[];
	readonly signOffs: readonly SignOffRecord[];
	readonly orders: readonly RetrainingOrder[];
	readonly checks: readonly Placed<EntryOf<'check-ended'>>[];
	/** All entries, in order. */
	readonly entries: readonly Placed[];
}

/** @returns the entries of one kind, in their order. */
export function ofKind<Kind extends Entry['kind']>(entries: readonly Placed[], kind: Kind): readonly Placed<EntryOf<Kind>>[] {
	return entries.filter((one): one is Placed<EntryOf<Kind>> => one.entry.kind === kind);
}

/** @returns what takes a record back, unless it was reinstated after it. */
function revocationOf(entries: readonly Placed[], id: string): Placed<EntryOf<'revoked'>> | undefined {
	const last = entries.findLast(({ entry }) => (entry.kind === 'revoked' || entry.kind === 'reinstated') && entry.of === id);
	return last?.entry.kind === 'revoked' ? { ...last, entry: last.entry } : undefined;
}

/** @returns what the chain says of a person. @param entries of that person alone, in order */
export function personRecord(entries: readonly Placed[]): PersonRecord {
	const withdrawn = new Set(ofKind(entries, 'retraining-withdrawn').map(({ entry }) => entry.of));
	const ordered = ofKind(entries, 'retraining-ordered');
	const standing = ordered.filter(({ entry }) => !withdrawn.has(entry.id));
	const runAt = (seq: number): number => standing.filter((one) => one.seq < seq).length;
	const signOffs = ofKind(entries, 'hands-on').map(
		({ seq, hash, entry }): SignOffRecord => ({ id: entry.record.id, seq, hash, entry, run: runAt(seq), revoked: revocationOf(entries, entry.record.id) })
	);
	const trainings = entries.flatMap(({ seq, hash, entry }): TrainingRecord[] => {
		if (entry.kind !== 'completed' && entry.kind !== 'prior-training') return [];
		const id = entry.kind === 'completed' ? entry.id : entry.record.id;
		const run = runAt(seq);
		const signOff = entry.kind === 'completed' ? signOffs.find((one) => one.run === run && one.revoked === undefined) : undefined;
		return [
			{
				id,
				seq,
				hash,
				entry,
				run,
				revoked: revocationOf(entries, id),
				signOff,
				ordered: standing[run - 1],
				acknowledged: ofKind(entries, 'acknowledged').find((one) => one.entry.of === id),
				employerAcknowledged: ofKind(entries, 'employer-acknowledged').find((one) => one.entry.of === id),
				certificate: ofKind(entries, 'certificate-made').findLast((one) => one.entry.of === id),
				validUntil: entry.kind === 'completed' ? entry.validity.until : entry.record.validUntil
			}
		];
	});
	const whole = trainings.filter(isWhole);
	const orders = ordered.map(
		({ seq, entry }): RetrainingOrder => ({ entry, seq, withdrawn: withdrawn.has(entry.id), done: whole.some((one) => one.run >= runAt(seq + 1)) })
	);
	const named = ofKind(entries, 'named').map(({ entry }) => entry.commitment);
	const moves = entries.findLast(({ entry }) => entry.kind === 'left' || entry.kind === 'returned')?.entry;
	return {
		named: named.at(-1),
		names: named,
		erased: ofKind(entries, 'identity-erased').at(-1)?.entry.day,
		left: moves?.kind === 'left' ? moves.day : undefined,
		trainings,
		signOffs,
		orders,
		checks: ofKind(entries, 'check-ended'),
		entries
	};
}

/** @returns the local day of a record: of the final check, or on which training from elsewhere was judged adequate. */
export function trainingDay({ entry }: Pick<TrainingRecord, 'entry'>): string {
	return entry.kind === 'completed' ? entry.day : entry.record.judgedDay;
}

/** Whether a record proves the whole training: it counts, and the hands-on part is signed where it needs one. */
export function isWhole(one: TrainingRecord): boolean {
	return one.revoked === undefined && (one.entry.kind === 'prior-training' || one.signOff !== undefined);
}

/** Why somebody is not current, or soon is not: a code. */
export type TrainingDetail = 'sign-off-missing' | 'retraining-ordered' | 'revoked';

/** What decides how a person stands on any day. */
export interface Validity {
	/** The record that counts; undefined where none does. */
	readonly record: TrainingRecord | undefined;
	/** Last local day on which it is valid, open orders taken into account; `NO_END` for no end; null where no record counts. */
	readonly until: string | null;
	/** Due day of the open order that is due first. */
	readonly due: string | undefined;
	readonly detail: TrainingDetail | undefined;
}

/**
 * The record that counts: of those since the last retraining that was carried through, the one that is valid longest,
 * so that entering training from before takes nothing away.
 */
function counting(trainings: readonly TrainingRecord[]): TrainingRecord | undefined {
	const whole = trainings.filter(isWhole);
	const run = Math.max(...whole.map((one) => one.run));
	const endOf = (one: TrainingRecord): string => one.validUntil ?? NO_END;
	return whole.filter((one) => one.run === run).reduce<TrainingRecord | undefined>((best, one) => (best === undefined || endOf(one) >= endOf(best) ? one : best), undefined);
}

/** @returns what decides how a person stands. */
export function validityOf(of: PersonRecord): Validity {
	const record = counting(of.trainings);
	const open = of.orders.filter((one) => !one.withdrawn && !one.done);
	const due = open.map(({ entry }) => entry.due).toSorted()[0];
	const ends = open.map(({ entry }) => (endsAtOnce(entry.reason) ? addDays(entry.day, -1) : entry.due));
	const until = record === undefined ? null : [record.validUntil ?? NO_END, ...ends].reduce((a, b) => (a < b ? a : b));
	return { record, until, due, detail: detailOf(of, record, open.length > 0) };
}

function detailOf({ trainings, orders }: PersonRecord, record: TrainingRecord | undefined, ordered: boolean): TrainingDetail | undefined {
	const last = trainings.at(-1);
	// A signature goes with the theory of the run at hand alone.
	const run = orders.filter(({ withdrawn }) => !withdrawn).length;
	if (last?.run === run && last.revoked === undefined && !isWhole(last)) return 'sign-off-missing';
	if (ordered) return 'retraining-ordered';
	return record === undefined && last?.revoked !== undefined ? 'revoked' : undefined;
}

/** How a person stands on a day. */
export const TRAINING_STATES = ['current', 'expires-soon', 'expired', 'in-training', 'never'] as const;
export type TrainingState = (typeof TRAINING_STATES)[number];

/**
 * @param of last valid day and whether the course was begun
 * @param today local day at the site: what is valid until a day is valid through the whole of it
 * @param soonDays how many days ahead an end is soon
 */
export function stateOn(of: { readonly until: string | null; readonly begun: boolean }, today: string, soonDays: number): TrainingState {
	if (of.until === null) return of.begun ? 'in-training' : 'never';
	if (of.until < today) return 'expired';
	return of.until <= addDays(today, soonDays) ? 'expires-soon' : 'current';
}
