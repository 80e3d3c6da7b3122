/** How drafts change, and how scenarios are taken out of use. Nothing of a published version changes here. */
import type { Database } from '../db/open.ts';
import { changeDraft, deleteOwnScenario, findOwnScenario, retireOwnScenario, type OwnScenarioRow } from '../db/own-scenarios.ts';
import { DONE, noteDeed, NOT_FOUND, type Change } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import type { InputProblem } from '../problems.ts';
import { readDocument, withoutMark } from './document.ts';
import { mayChange } from './own.ts';

/** Not there, of another organisation, or not this person's to change. */
export interface NotFound {
	readonly kind: 'not-found';
}

/** Somebody else changed it meanwhile: it has this revision now, and what was to be done is not done. */
export interface ChangedMeanwhile {
	readonly kind: 'changed-meanwhile';
	readonly revision: number;
}

/** What came of saving a draft. */
export type Saving =
	| { readonly kind: 'saved'; readonly revision: number }
	| ChangedMeanwhile
	| { readonly kind: 'refused'; readonly problems: readonly InputProblem[] }
	| NotFound;

/** What came of throwing a draft away. */
export type Discarding =
	/** The newest version is what is left. */
	| { readonly kind: 'discarded'; readonly revision: number }
	/** It was never published: nothing is left of it. */
	| { readonly kind: 'gone' }
	| ChangedMeanwhile
	| NotFound;

/** @returns a scenario that this person may change, or null. */
export async function findToChange(db: Database, who: Person, id: string): Promise<OwnScenarioRow | null> {
	const row = await findOwnScenario(db, who, id);
	return row !== null && mayChange(who, row) ? row : null;
}

/** @returns what is told of a change that came too late. */
export async function changedMeanwhile(db: Database, who: Person, id: string): Promise<ChangedMeanwhile | NotFound> {
	const now = await findToChange(db, who, id);
	return now === null ? NOT_FOUND : { kind: 'changed-meanwhile', revision: now.revision };
}

/**
 * Saves a draft, finished or not: any JSON object that `readDocument` takes.
 * @param revision that the draft was made from; saving what is there already succeeds whatever it says
 */
export async function saveDraft(db: Database, who: Person, id: string, revision: number, text: string, now: Date): Promise<Saving> {
	const row = await findToChange(db, who, id);
	if (row === null) return NOT_FOUND;
	const read = readDocument(text);
	if (read.kind === 'refused') return read;
	const draft = withoutMark(text);
	// A draft whose receipt was lost on the way is sent again.
	if (row.draft === draft) return { kind: 'saved', revision: row.revision };
	if (!(await changeDraft(db, id, revision, draft, now.toISOString()))) return changedMeanwhile(db, who, id);
	return { kind: 'saved', revision: revision + 1 };
}

/** Throws a draft away: what is left is the newest version; of a scenario that was never published, nothing. */
export async function discardDraft(db: Database, who: Person, id: string, revision: number, now: Date): Promise<Discarding> {
	const row = await findToChange(db, who, id);
	if (row === null) return NOT_FOUND;
	if (row.published === null) {
		const gone = await db.transaction().execute(async (transaction) => {
			if (!(await deleteOwnScenario(transaction, id, revision))) return false;
			await noteDeed(transaction, who, 'scenario-discarded', id, now);
			return true;
		});
		return gone ? { kind: 'gone' } : changedMeanwhile(db, who, id);
	}
	if (row.draft === null) return { kind: 'discarded', revision: row.revision };
	if (!(await changeDraft(db, id, revision, null, now.toISOString()))) return changedMeanwhile(db, who, id);
	return { kind: 'discarded', revision: revision + 1 };
}

/** Takes a scenario out of use: no new set takes it, and what was assigned keeps its version. Twice is as once. */
export async function retire(db: Database, who: Person, id: string, now: Date): Promise<Change> {
	return setRetired(db, who, id, now.toISOString(), now);
}

/** Takes a retired scenario into use again. Twice is as once. */
export async function restore(db: Database, who: Person, id: string, now: Date): Promise<Change> {
	return setRetired(db, who, id, null, now);
}

/** A draft that somebody works on meanwhile stays as it is, and so does its revision. */
async function setRetired(db: Database, who: Person, id: string, at: string | null, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if ((await findToChange(transaction, who, id)) === null) return NOT_FOUND;
		if (await retireOwnScenario(transaction, id, at)) await noteDeed(transaction, who, at === null ? 'scenario-restored' : 'scenario-retired', id, now);
		return DONE;
	});
}
