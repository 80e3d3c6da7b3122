/** Practice sets as trainers make them, look at them and put them away. Each change is noted; what is not theirs is not found. */
import { randomUUID } from 'node:crypto';
import type { SetContent } from '#lib/flow/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import type { Database } from '../db/open.ts';
import { archiveSetRow, findSetRow, insertSet, listSetRows, type ListedSetRow, type SetRow } from '../db/sets.ts';
import { DONE, NOT_FOUND, noteDeed, type Change } from '../people/crews.ts';
import { field } from '../people/fields.ts';
import type { Person } from '../people/who.ts';
import { scenariosToChoose } from '../scenarios/found.ts';
import { contentProblems, readContent } from './content.ts';
import { refusedFor, setProblem, type SetRefused } from './problem.ts';
import { setScenarios } from './scenarios.ts';

/** A practice set as its trainers and the employer see it. */
export interface PracticeSet {
	readonly id: string;
	readonly name: string;
	readonly content: SetContent;
	readonly madeBy: { readonly id: string; readonly name: string };
	/** ISO 8601; null for one in use. */
	readonly archivedAt: string | null;
	readonly createdAt: string;
	/** Whether they may put it away and take it up again: who made it, and employers. */
	readonly mayArchive: boolean;
}

/** A set in the list of sets. */
export interface ListedSet extends PracticeSet {
	/** Assignments of theirs that are open. */
	readonly open: number;
}

/** A set to be made, as a form or a program gives it. */
export interface NewSet {
	readonly name: string;
	/** Read by `setContentSchema`. */
	readonly content: unknown;
}

/** Makes a set. Refused is what does not fit, and whatever names a scenario or an ask that is not there. */
export async function makeSet(db: Database, who: Person, { name, content }: NewSet, now: Date): Promise<{ readonly kind: 'made'; readonly id: string } | SetRefused> {
	if (who.role === 'learner') throw new Error('Learners make no sets');
	const read = readContent(content);
	const named = field.name.safeParse(name);
	const problems = [
		...(named.success ? [] : [setProblem('name', 'name', 'is no name', 'give at most 200 characters, one of them a letter or a digit')]),
		...(read.kind === 'refused' ? read.problems : contentProblems(read.content, await scenariosToTake(db, who, read.content)))
	];
	if (!named.success || read.kind === 'refused' || problems.length > 0) return refusedFor(...problems);
	const id = randomUUID();
	await db.transaction().execute(async (transaction) => {
		await insertSet(transaction, {
			id,
			organisation_id: who.organisation,
			made_by: who.id,
			name: named.data,
			content: JSON.stringify(read.content),
			archived_at: null,
			created_at: now.toISOString()
		});
		await noteDeed(transaction, who, 'set-made', id, now);
	});
	return { kind: 'made', id };
}

/** The documents of a content's scenarios, without those that were retired: no new set takes them. */
async function scenariosToTake(db: Database, who: Person, content: SetContent): Promise<readonly Scenario[]> {
	const offered = new Set((await scenariosToChoose(db, who)).map((one) => one.id));
	return (await setScenarios(db, who.organisation, content)).filter((one) => offered.has(one.id));
}

function setOf(row: SetRow, who: Person): PracticeSet {
	return {
		id: row.id,
		name: row.name,
		// It was read by the schema before it was stored, and never changes.
		content: JSON.parse(row.content) as SetContent,
		madeBy: { id: row.made_by, name: row.maker },
		archivedAt: row.archived_at,
		createdAt: row.created_at,
		mayArchive: row.made_by === who.id || who.role === 'employer'
	};
}

/** @returns the sets that somebody may see, those in use first, the newest first. */
export async function listSets(db: Database, who: Person): Promise<readonly ListedSet[]> {
	const rows = await listSetRows(db, who);
	return rows.map((row: ListedSetRow) => ({ ...setOf(row, who), open: Number(row.open) })).sort((a, b) => Number(a.archivedAt !== null) - Number(b.archivedAt !== null));
}

/** @returns a set; null if there is none of that id, or it is not theirs to see. */
export async function findSet(db: Database, who: Person, id: string): Promise<PracticeSet | null> {
	const row = await findSetRow(db, who, id);
	return row === null ? null : setOf(row, who);
}

/** Puts a set away, so that it is assigned no more, or takes it up again; what is assigned goes on. Twice is as once. */
export async function archiveSet(db: Database, who: Person, set: string, archived: boolean, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if ((await findSet(transaction, who, set))?.mayArchive !== true) return NOT_FOUND;
		if (await archiveSetRow(transaction, set, archived ? now.toISOString() : null)) {
			await noteDeed(transaction, who, 'set-archived', set, now, { archived });
		}
		return DONE;
	});
}
