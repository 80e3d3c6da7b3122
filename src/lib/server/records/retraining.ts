/** Ordering retraining: for a person, a crew, or those whose training ends. The course is done again; what is known of a person's skill stays. */
import { randomUUID } from 'node:crypto';
import { addMonths, type EntryOf, type RetrainingReason } from '#lib/records/index.ts';
import { payloadText } from '../course/state.ts';
import { findCrew } from '../db/crews.ts';
import type { Database } from '../db/open.ts';
import { appendFree, begunLessons, countOrdered, knownLearners, lastPlaces, learnersToOrder, type BegunLesson, type OrderFilter } from '../db/retraining.ts';
import { isLesson } from '../course/book.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { appendEntries } from './append.ts';
import { findPersonRecord } from './found.ts';
import { lockFor, todayIn } from './leaving.ts';

/** For how many people an order is at most. @reason one transaction, a second or two; a larger workforce is ordered crew by crew */
export const MOST_ORDERED = 5000;

/** How far ahead a due day may be, months. @reason no validity is longer than some years; further away it is a slip of the pen */
export const MOST_AHEAD = 60;

/** Whom an order is for. */
export type Whom = { readonly people: readonly string[] } | { readonly crew: string };

/** Why, and until when it is to be done. */
export interface Order {
	readonly reason: RetrainingReason;
	/** Local day, the last on which it is in time. */
	readonly due: string;
	/** How many of them were shown to have an open order: with more or fewer, nothing is ordered. Not asked without it. */
	readonly withOpen?: number;
}

export type Ordering =
	/** How many people it was ordered for: those who left, and who are no learners, are left out. */
	| { readonly kind: 'ordered'; readonly people: number }
	| { readonly kind: 'due-past' | 'due-far' }
	/** Others of them have an open order than was shown. */
	| { readonly kind: 'changed' }
	| { readonly kind: 'not-found' };

/**
 * Orders retraining and opens the course again: of each lesson that was begun, practice and its check come again, and
 * the final check can be passed again. What was passed stays on record, and holds until the due day, or ends at once
 * where the reason says that somebody does not know enough (`endsAtOnce`).
 *
 * Every order stands by itself, but for the same one given to one person twice on a day, as by a double press. Whoever
 * has an open one has two then; the training starts again with the later one, and both are done by the training that
 * follows. A check that runs goes on: it counts for the new run, in which it ends. One that ended before the order, be it
 * by a moment, counts for the run before.
 * @throws RangeError for more than MOST_ORDERED people
 */
export async function orderRetraining(db: Database, who: Person, whom: Whom, order: Order, now: Date): Promise<Ordering> {
	if (who.role !== 'employer') return { kind: 'not-found' };
	const today = await todayIn(db, who.organisation, now);
	if (order.due < today) return { kind: 'due-past' };
	if (order.due > addMonths(today, MOST_AHEAD)) return { kind: 'due-far' };
	return db.transaction().execute(async (transaction): Promise<Ordering> => {
		// First the chain and then the course, as whoever hands a check in does: none waits for the other in a ring.
		if (!(await lockFor(transaction, who))) return { kind: 'not-found' };
		const people = await peopleOf(transaction, who, whom);
		if (people === null) return { kind: 'not-found' };
		if (people.length > MOST_ORDERED) throw new RangeError(`Retraining is ordered for ${MOST_ORDERED} people at most at once`);
		if (order.withOpen !== undefined && (await countOrdered(transaction, people)) !== order.withOpen) return { kind: 'changed' };
		const [one, ...more] = people;
		if (one !== undefined && more.length === 0 && (await isOrdered(transaction, who, one, order, today))) return { kind: 'ordered', people: 1 };
		await reopenLessons(transaction, people, today, now);
		const at = now.toISOString();
		await appendEntries(
			transaction,
			who.organisation,
			people.map((person): EntryOf<'retraining-ordered'> => ({ kind: 'retraining-ordered', at, by: who.id, person, id: randomUUID(), reason: order.reason, day: today, due: order.due }))
		);
		const { reason, due } = order;
		const subject = 'crew' in whom ? whom.crew : people.length === 1 ? (people[0] ?? who.organisation) : who.organisation;
		if (people.length > 0) await noteDeed(transaction, who, 'retraining-ordered', subject, now, { reason, due, people: people.length });
		return { kind: 'ordered', people: people.length };
	});
}

/** Whether somebody has this very order, given today and still open. */
async function isOrdered(db: Database, who: Person, person: string, { reason, due }: Order, today: string): Promise<boolean> {
	const found = await findPersonRecord(db, who.organisation, person);
	return found?.record.orders.some((one) => !one.withdrawn && !one.done && one.entry.reason === reason && one.entry.due === due && one.entry.day === today) === true;
}

/** @returns whom an order is for who is there; null for a crew or for people of another organisation. */
async function peopleOf(db: Database, who: Person, whom: Whom): Promise<readonly string[] | null> {
	if ('crew' in whom) return (await findCrew(db, who, whom.crew)) === null ? null : learnersToOrder(db, who.organisation, { kind: 'crew', crew: whom.crew }, MOST_ORDERED + 1);
	const { known, there } = await knownLearners(db, who.organisation, [...new Set(whom.people)]);
	return known === 0 ? null : there;
}

/**
 * @returns ids of the people for whom an order of a kind would be, one more than MOST_ORDERED at most; null for a crew
 * that is not theirs
 */
export async function peopleToOrder(db: Database, who: Person, filter: OrderFilter): Promise<readonly string[] | null> {
	if (filter.kind === 'crew' && (await findCrew(db, who, filter.crew)) === null) return null;
	return learnersToOrder(db, who.organisation, filter, MOST_ORDERED + 1);
}

/** Opens begun lessons again. Where others append in the same moment, what found its place taken goes behind it. */
async function reopenLessons(db: Database, people: readonly string[], day: string, now: Date): Promise<void> {
	let left = (await begunLessons(db, people)).filter(({ lesson }) => isLesson(lesson));
	while (left.length > 0) {
		const places = new Map(await lastPlaces(db, [...new Set(left.map(({ person }) => person))]));
		const rows = left.map((one) => {
			const seq = (places.get(one.person) ?? 0) + 1;
			places.set(one.person, seq);
			return { ...reopened(one, day, now), seq };
		});
		const done = await appendFree(db, rows);
		left = left.filter((_, i) => !done.has(rows[i]?.id ?? ''));
	}
}

function reopened({ person, lesson }: BegunLesson, day: string, now: Date) {
	if (!isLesson(lesson)) throw new RangeError(`no lesson ${lesson}`);
	return { id: randomUUID(), person_id: person, lesson, kind: 'reopened', sent: 'null', payload: payloadText({ record: { kind: 'reopened', lesson } }), day, at: now.toISOString() };
}

export type Withdrawing = { readonly kind: 'withdrawn' } | { readonly kind: 'not-found' };

/**
 * Withdraws an order that is still open: the record from before counts again as it did, and the final check counts as
 * passed where it was. In the lessons nothing is set back: what the order opened stays open to practise. Twice is as once.
 * @param order id of the order
 */
export async function withdrawRetraining(db: Database, who: Person, person: string, order: string, now: Date): Promise<Withdrawing> {
	return db.transaction().execute(async (transaction): Promise<Withdrawing> => {
		if (!(await lockFor(transaction, who))) return { kind: 'not-found' };
		const found = await findPersonRecord(transaction, who.organisation, person);
		const one = found?.record.orders.find(({ entry }) => entry.id === order);
		if (one?.withdrawn === true) return { kind: 'withdrawn' };
		if (one === undefined || one.done) return { kind: 'not-found' };
		await appendEntries(transaction, who.organisation, [{ kind: 'retraining-withdrawn', at: now.toISOString(), by: who.id, person, of: order }]);
		await noteDeed(transaction, who, 'retraining-withdrawn', person, now, { order });
		return { kind: 'withdrawn' };
	});
}
