/** How an organisation comes by a scenario of its own: from the start, from another one, or from a file. */
import { randomInt } from 'node:crypto';
import { shippedDocument } from '#lib/course/shipped.ts';
import type { Database } from '../db/open.ts';
import { countOwnScenarios, insertOwnScenario } from '../db/own-scenarios.ts';
import { noteDeed } from '../people/crews.ts';
import { settingsOf } from '../people/organisation.ts';
import type { Person } from '../people/who.ts';
import { named, readDocument, storedDocument, type JsonObject } from './document.ts';
import { findOwn, type Made } from './own.ts';
import { parseDocument } from './parse.ts';
import { startDocument } from './start.ts';

/** Scenarios of one organisation. @reason far more than a company has sites at a time; a list that can still be read. */
export const MOST_OWN = 300;

/** What an id is made of behind its beginning: 36 to the tenth, so that nobody guesses one. */
const LETTERS = 'abcdefghijklmnopqrstuvwxyz0123456789';
const LENGTH = 10;

function newId(): string {
	return `own-${Array.from({ length: LENGTH }, () => LETTERS[randomInt(LETTERS.length)]).join('')}`;
}

/** Makes a scenario that can be published as it is, by the rules and in the units of the organisation. */
export async function makeOwn(db: Database, who: Person, now: Date): Promise<Made> {
	const { rules, units } = await settingsOf(db, who.organisation);
	return store(db, who, startDocument({ rules, units }), { from: 'start' }, now);
}

/** Copies a shipped scenario, or one of the organisation: its draft, or its newest version where there is none. */
export async function copyScenario(db: Database, who: Person, id: string, now: Date): Promise<Made> {
	const document = shippedDocument(id) ?? (await ownDocument(db, who, id));
	return document === undefined ? { kind: 'not-found' } : store(db, who, document, { from: 'copy', of: id }, now);
}

async function ownDocument(db: Database, who: Person, id: string): Promise<JsonObject | undefined> {
	const own = await findOwn(db, who, id);
	return own === null ? undefined : storedDocument(own.document);
}

/**
 * Makes a scenario from a document as it is exported. Whatever id and version it says, it gets its own.
 * @param source text, or the bytes of a file; what it may be is what `readDocument` and `parseDocument` take
 */
export async function importScenario(db: Database, who: Person, source: string | Uint8Array, now: Date): Promise<Made> {
	const read = readDocument(source);
	if (read.kind === 'refused') return read;
	const parsed = parseDocument(read.value, newId(), 1);
	return parsed.kind === 'refused' ? { ...parsed, why: 'fields' } : store(db, who, read.value, { from: 'import' }, now);
}

/** Stores a draft under a new id, for staff. */
async function store(db: Database, who: Person, document: JsonObject, detail: Readonly<Record<string, string>>, now: Date): Promise<Made> {
	if (who.role === 'learner') return { kind: 'not-found' };
	return db.transaction().execute(async (transaction): Promise<Made> => {
		if ((await countOwnScenarios(transaction, who.organisation)) >= MOST_OWN) return { kind: 'full', most: MOST_OWN };
		for (;;) {
			const id = newId();
			const draft = JSON.stringify(named(document, id, 1));
			// Written again it may be longer than it was: its author could not save it.
			const read = readDocument(draft);
			if (read.kind === 'refused') return read;
			const made = await insertOwnScenario(transaction, { id, organisation: who.organisation, madeBy: who.id, draft, now: now.toISOString() });
			// Ids are as good as never alike; one that is, is made again.
			if (!made) continue;
			await noteDeed(transaction, who, 'scenario-made', id, now, detail);
			return { kind: 'made', id };
		}
	});
}
