/**
 * Runs of training: an order of retraining ends one and begins the next. What belongs to a run is told by the order of
 * the chain and not by clocks: a check belongs to the run in which it ended, and one that runs to the run at hand.
 */
import type { EntryOf } from '#lib/records/index.ts';
import { completedChecksOf } from '../db/checks.ts';
import type { Database } from '../db/open.ts';
import { triesOf, type Tries } from '../db/permits.ts';
import { entriesOfKinds } from '../db/retraining.ts';

/** A person's run of training, if there was one before it. */
export interface Run {
	/** The order that began it. */
	readonly order: EntryOf<'retraining-ordered'>;
	/** Ids of the checks that ended before it, of lessons and the final one. */
	readonly endedBefore: ReadonlySet<string>;
	/** How many of them were final checks. */
	readonly finalsBefore: number;
}

/** @returns the run at hand of each of some people; who is in the first run is left out. Whose people they are, the caller has asked. */
export async function runsOf(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, Run>> {
	const orders = await entriesOfKinds(db, people, ['retraining-ordered', 'retraining-withdrawn']);
	const withdrawn = new Set(orders.flatMap(({ entry }) => (entry.kind === 'retraining-withdrawn' ? [entry.of] : [])));
	const last = new Map<string, { readonly seq: number; readonly order: EntryOf<'retraining-ordered'> }>();
	for (const { person, seq, entry } of orders) if (entry.kind === 'retraining-ordered' && !withdrawn.has(entry.id)) last.set(person, { seq, order: entry });
	if (last.size === 0) return new Map();
	const ended = Map.groupBy(await entriesOfKinds(db, [...last.keys()], ['check-ended']), ({ person }) => person);
	return new Map(
		[...last].map(([person, { seq, order }]): [string, Run] => {
			const before = (ended.get(person) ?? []).filter((one) => one.seq < seq).map(({ entry }) => entry);
			return [person, { order, endedBefore: new Set(before.map(({ check }) => check)), finalsBefore: before.filter(({ lesson }) => lesson === 'final').length }];
		})
	);
}

/** @returns the tries at a check of each of some people, those of earlier runs as unlocked; who made none is left out. */
export async function finalTriesOf(db: Database, people: readonly string[]): Promise<ReadonlyMap<string, Tries>> {
	const runs = await runsOf(db, people);
	const tries = await triesOf(db, people, 'final');
	return new Map([...tries].map(([person, { made, unlockedAfter }]) => [person, { made, unlockedAfter: Math.max(unlockedAfter, runs.get(person)?.finalsBefore ?? 0) }]));
}

/** @returns those of some people who have passed the final check in the run at hand. */
export async function passedInRun(db: Database, people: readonly string[]): Promise<ReadonlySet<string>> {
	const runs = await runsOf(db, people);
	const passed = await completedChecksOf(db, people);
	return new Set(passed.filter(({ person, check }) => runs.get(person)?.endedBefore.has(check) !== true).map(({ person }) => person));
}
