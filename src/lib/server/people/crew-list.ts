/** What trainers and employers do with the people of a crew. Each change is noted; what is not theirs is not found. */
import { randomUUID } from 'node:crypto';
import { clearPin, findLearner, learnersOf, putOnList, takeOffList, whoHasNumber, type ListedLearner } from '../db/crew-list.ts';
import { findCrew } from '../db/crews.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation, isUniqueViolation } from '../db/people.ts';
import { addOpening, addUnlock, openingsOf, type Opening, type Tries } from '../db/permits.ts';
import { enterPeople } from '../records/names.ts';
import { finalTriesOf, passedInRun } from '../records/run.ts';
import { DONE, NOT_FOUND, noteDeed, type Change } from './crews.ts';
import { sameName } from './fields.ts';
import { finalRule } from './pass-rules.ts';
import { endAllSessions } from './session.ts';
import { lockedAccounts, unlock } from './throttle.ts';
import type { Person } from './who.ts';

/** How long an opened final check waits to be begun, s. @reason a morning's round of a crew; then somebody has to be there again. */
export const OPEN_FOR = 2 * 60 * 60;

/** Id of the final check among lessons. */
export const FINAL = 'final';

/** A person of a crew as its trainers see them. */
export interface CrewPerson extends ListedLearner {
	/** Whether the account is locked after too many wrong PINs. */
	readonly locked: boolean;
	/** Whether the final check is not passed and its tries are used up. */
	readonly usedUp: boolean;
	/** Openings of a supervised final check that wait to be used. */
	readonly openings: readonly Opening[];
}

/** @returns the people of a crew, by name and number; none if the crew is not theirs to see. */
export async function crewPeople(db: Database, who: Person, crew: string, now: Date): Promise<readonly CrewPerson[]> {
	const people = await learnersOf(db, who, crew);
	const ids = people.map((one) => one.id);
	const locked = await lockedAccounts(db, who.organisation);
	const tries = await finalTriesOf(db, ids);
	const passed = await passedInRun(db, ids);
	const most = await triesBeforeUnlock(db, who.organisation);
	const openings = await openingsOf(db, ids, now.toISOString());
	return people.map((one) => ({
		...one,
		locked: locked.has(one.id),
		usedUp: !passed.has(one.id) && areUsedUp(tries.get(one.id), most),
		openings: openings.filter((opening) => opening.person === one.id)
	}));
}

/** What came of adding somebody. */
export type Adding =
	| { readonly kind: 'added'; readonly person: string }
	/** On this list before. */
	| { readonly kind: 'on-list' }
	/** Somebody else of the organisation has this number, or had it. */
	| { readonly kind: 'number-taken' }
	| { readonly kind: 'archived' }
	| { readonly kind: 'not-found' };

/** A learner to be put on a list, tidied as `field.name` and `field.number` do. */
export interface NewOnList {
	readonly name: string;
	readonly number: string;
}

/**
 * Puts a learner on a crew's list. A learner of that name and number whom the organisation knows is put on this list
 * too, and stays on the others.
 */
export async function addToCrew(db: Database, who: Person, crewId: string, entry: NewOnList, now: Date): Promise<Adding> {
	try {
		return await addOnce(db, who, crewId, entry, now);
	} catch (error) {
		// Somebody was entered under this number in the same moment: now that one is found.
		if (!isUniqueViolation(error)) throw error;
		return addOnce(db, who, crewId, entry, now);
	}
}

async function addOnce(db: Database, who: Person, crewId: string, { name, number }: NewOnList, now: Date): Promise<Adding> {
	return db.transaction().execute(async (transaction): Promise<Adding> => {
		const crew = await findCrew(transaction, who, crewId);
		if (crew === null) return NOT_FOUND;
		if (crew.archivedAt !== null) return { kind: 'archived' };
		const known = await whoHasNumber(transaction, who.organisation, number);
		if (known !== null && (known.closed || known.role !== 'learner' || !sameName(known.name, name))) return { kind: 'number-taken' };
		const newcomers = known === null ? [{ role: 'learner', name, personalNumber: number } as const] : [];
		const person = known?.id ?? (await enterPeople(transaction, who.organisation, newcomers, who.id, now))[0];
		if (person === undefined) throw new Error('Nobody was entered');
		if (!(await putOnList(transaction, crewId, person, now.toISOString()))) return { kind: 'on-list' };
		await noteDeed(transaction, who, 'learner-added', person, now, { crew: crewId, new: known === null });
		return { kind: 'added', person };
	});
}

/** Takes a learner off a crew's list. The person stays in the organisation, with all that was done. */
export async function takeOffCrew(db: Database, who: Person, crew: string, person: string, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if ((await findLearner(transaction, who, crew, person)) === null) return NOT_FOUND;
		await takeOffList(transaction, crew, person);
		await noteDeed(transaction, who, 'learner-moved', person, now, { from: crew });
		return DONE;
	});
}

/** Moves a learner from one crew to another; both must be theirs, and the other one must not be put away. */
export async function moveToCrew(db: Database, who: Person, from: string, person: string, to: string, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		const target = await findCrew(transaction, who, to);
		if (target === null || target.archivedAt !== null) return NOT_FOUND;
		if ((await findLearner(transaction, who, from, person)) === null) return NOT_FOUND;
		if (from === to) return DONE;
		await takeOffList(transaction, from, person);
		await putOnList(transaction, to, person, now.toISOString());
		await noteDeed(transaction, who, 'learner-moved', person, now, { from, to });
		return DONE;
	});
}

/** Takes a learner's PIN away, ends every session, and lets a locked account try again: the learner joins anew. */
export async function resetPin(db: Database, who: Person, crew: string, person: string, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if ((await findLearner(transaction, who, crew, person)) === null) return NOT_FOUND;
		await clearPin(transaction, person);
		await endAllSessions(transaction, person);
		await unlock(transaction, person);
		await noteDeed(transaction, who, 'pin-reset', person, now);
		return DONE;
	});
}

/** @returns after how many tries at the final check a trainer has to unlock, by the organisation's pass rule. */
export async function triesBeforeUnlock(db: Database, organisation: string): Promise<number> {
	const chosen = (await findOrganisation(db, organisation))?.pass_rule ?? '';
	return (await finalRule(db, organisation, chosen)).tries.beforeUnlock;
}

/** @returns whether the tries since the last unlocking are used up. */
export function areUsedUp(tries: Tries | undefined, beforeUnlock: number): boolean {
	return tries !== undefined && tries.made - tries.unlockedAfter >= beforeUnlock;
}

/** Lets a learner whose tries are used up try the final check again. */
export async function unlockCheck(
	db: Database,
	who: Person,
	crew: string,
	person: string,
	now: Date
): Promise<Change | { readonly kind: 'not-used-up' }> {
	return db.transaction().execute(async (transaction) => {
		if ((await findLearner(transaction, who, crew, person)) === null) return NOT_FOUND;
		const tries = (await finalTriesOf(transaction, [person])).get(person);
		if (tries === undefined || !areUsedUp(tries, await triesBeforeUnlock(transaction, who.organisation))) return { kind: 'not-used-up' } as const;
		await addUnlock(transaction, { id: randomUUID(), person, trainer: who.id, after: tries.made, now: now.toISOString() });
		await noteDeed(transaction, who, 'check-unlocked', person, now, { after: tries.made });
		return DONE;
	});
}

/** How a supervised check is opened. */
export interface CheckOpening {
	readonly place: string;
	/** How the learner was identified. */
	readonly identified: string;
}

/**
 * Opens a supervised final check for a learner, for OPEN_FOR: whoever opens it is the one who is present. Opened
 * twice with the same entries, it is open once.
 */
export async function openCheck(db: Database, who: Person, crew: string, person: string, opening: CheckOpening, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if ((await findLearner(transaction, who, crew, person)) === null) return NOT_FOUND;
		const open = await openingsOf(transaction, [person], now.toISOString());
		if (open.some((one) => one.trainer === who.id && one.place === opening.place && one.identified === opening.identified)) return DONE;
		const id = randomUUID();
		const expiresAt = new Date(now.getTime() + OPEN_FOR * 1000).toISOString();
		await addOpening(transaction, { id, person, trainer: who.id, ...opening, now: now.toISOString(), expiresAt });
		await noteDeed(transaction, who, 'check-opened', person, now, { opening: id });
		return DONE;
	});
}
