/** Entering a list of everyone: all that was shown, in one go, or nothing. */
import { putOnList, takeOffList } from '../db/crew-list.ts';
import type { Database } from '../db/open.ts';
import { isDeadlock, isUniqueViolation } from '../db/people.ts';
import { makeCrewIn, noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { folded } from '../records/folded.ts';
import { leaveAll, lockFor, returnAll, todayIn } from '../records/leaving.ts';
import { enterPeople, type Named } from '../records/names.ts';
import { renameAll } from '../records/renaming.ts';
import { isUnchanged, lookAtEveryone, type EveryoneLine, type LineChange, type LookingAtAll } from './everyone.ts';

/** What was done. */
export interface Entered {
	readonly kind: 'entered';
	readonly added: number;
	/** People from before of whom something changed. */
	readonly changed: number;
	readonly left: number;
}

/** What came of entering a list. */
export type EnteringAll =
	| Entered
	/** It would do something else now than was shown. */
	| { readonly kind: 'changed'; readonly looked: Extract<LookingAtAll, { kind: 'looked' }> }
	/** People are marked as left only by a list that has no line with a problem, and not by the thousand. */
	| { readonly kind: 'cannot-leave'; readonly looked: Extract<LookingAtAll, { kind: 'looked' }> }
	| Extract<LookingAtAll, { kind: 'refused' }>
	| { readonly kind: 'not-found' };

/** What was shown and is to be done. */
export interface ShownList {
	readonly text: string;
	/** Of `lookAtEveryone`. */
	readonly shown: string;
	/** Whether those who are not on the list have left. */
	readonly othersLeft: boolean;
}

/** Enters a list as it was shown. Lines with problems are left out. The same list twice changes nothing. */
export async function enterEveryone(db: Database, who: Person, list: ShownList, now: Date): Promise<EnteringAll> {
	try {
		return await enterOnce(db, who, list, now);
	} catch (error) {
		// Somebody was entered under one of the numbers in the same moment: now that one is found.
		if (!isUniqueViolation(error) && !isDeadlock(error)) throw error;
		return enterOnce(db, who, list, now);
	}
}

type Change = Omit<EveryoneLine, 'wrong'> & { readonly change: LineChange };

async function enterOnce(db: Database, who: Person, { text, shown, othersLeft }: ShownList, now: Date): Promise<EnteringAll> {
	return db.transaction().execute(async (transaction): Promise<EnteringAll> => {
		if (!(await lockFor(transaction, who))) return { kind: 'not-found' };
		const looked = await lookAtEveryone(transaction, who, text);
		if (looked.kind === 'refused') return looked;
		const changes = looked.lines.flatMap((line): Change[] => (line.wrong === undefined && !isUnchanged(line.change) ? [line] : []));
		const leaving = othersLeft && looked.missing.kind === 'people' ? looked.missing.people : [];
		// Sent twice: what was shown is done already.
		if (changes.length === 0 && leaving.length === 0 && !(othersLeft && looked.missing.kind === 'too-many')) return { kind: 'entered', added: 0, changed: 0, left: 0 };
		if (looked.shown !== shown) return { kind: 'changed', looked };
		if (othersLeft && (looked.missing.kind === 'too-many' || looked.lines.some(({ wrong }) => wrong !== undefined))) return { kind: 'cannot-leave', looked };
		const today = await todayIn(transaction, who.organisation, now);
		const ids = await enterNew(transaction, who, changes, now);
		const old = changes.flatMap((line) => (line.change.person === null ? [] : [{ ...line, id: line.change.person }]));
		await returnAll(transaction, who, old.filter(({ change }) => change.returns).map(({ id }) => id), today, now);
		await renameAll(transaction, who, old.filter(({ change }) => change.renamed !== undefined).map(({ id, name, number }): Named => ({ id, role: 'learner', name, number })), now);
		await changeCrews(transaction, who, changes, ids, now);
		await leaveAll(transaction, who, leaving.map(({ id }) => ({ id, role: 'learner' })), today, 'person-left', now);
		return { kind: 'entered', added: changes.length - old.length, changed: old.length, left: leaving.length };
	});
}

/** @returns the ids of new people, by number. */
async function enterNew(transaction: Database, who: Person, changes: readonly Change[], now: Date): Promise<ReadonlyMap<string, string>> {
	const added = changes.filter(({ change }) => change.person === null);
	const ids = await enterPeople(transaction, who.organisation, added.map(({ name, number }) => ({ role: 'learner', name, personalNumber: number })), who.id, now);
	for (const id of ids) await noteDeed(transaction, who, 'learner-added', id, now, { new: true, list: true });
	return new Map(added.map(({ number }, i) => [number, ids[i] ?? '']));
}

async function changeCrews(transaction: Database, who: Person, changes: readonly Change[], ids: ReadonlyMap<string, string>, now: Date): Promise<void> {
	const made = new Map<string, string>();
	const crewCalled = async (name: string): Promise<string> => {
		const before = made.get(folded(name));
		if (before !== undefined) return before;
		const id = await makeCrewIn(transaction, who, name, now);
		made.set(folded(name), id);
		return id;
	};
	for (const { number, change } of changes) {
		const { crew } = change;
		const person = change.person ?? ids.get(number);
		if (crew === undefined || person === undefined) continue;
		const to = crew.to ?? (await crewCalled(crew.name));
		if (crew.from !== undefined) await takeOffList(transaction, crew.from.id, person);
		await putOnList(transaction, to, person, now.toISOString());
		await noteDeed(transaction, who, crew.from === undefined ? 'learner-added' : 'learner-moved', person, now, crew.from === undefined ? { crew: to, new: false, list: true } : { from: crew.from.id, to });
	}
}
