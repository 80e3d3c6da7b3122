/** People by list: what each line would do, and doing it. */
import { isUniqueViolation } from '../db/people.ts';
import { numberedOf, onListOf, putOnList, type Numbered } from '../db/crew-list.ts';
import { findCrew } from '../db/crews.ts';
import type { Database } from '../db/open.ts';
import { noteDeed } from '../people/crews.ts';
import { sameName } from '../people/fields.ts';
import type { Person } from '../people/who.ts';
import { enterPeople } from '../records/names.ts';
import { readRoster, type LineProblem, type Roster, type RosterLine } from './read.ts';

/** What a line comes to. */
export type LineState =
	/** A new person. */
	| 'new'
	/** Somebody whom the organisation knows: stays on other lists too. */
	| 'known'
	/** On this list already: nothing to do. */
	| 'on-list';

/** A line, and what it would do. */
export interface LookedAt extends RosterLine {
	readonly state: LineState | undefined;
	/** Beside those of reading: somebody else has the number. */
	readonly wrong: LineProblem | { readonly kind: 'number-taken' } | undefined;
}

/** What came of looking at a list, or of entering it. */
export type Looking =
	| { readonly kind: 'looked'; readonly lines: readonly LookedAt[] }
	| Extract<Roster, { kind: 'refused' }>
	| { readonly kind: 'archived' }
	| { readonly kind: 'not-found' };

export type Entering = { readonly kind: 'entered'; readonly added: number; readonly before: number; readonly leftOut: number } | Exclude<Looking, { kind: 'looked' }>;

/** Looks at a list for a crew: nothing is changed. */
export async function lookAtRoster(db: Database, who: Person, crewId: string, text: string): Promise<Looking> {
	const crew = await findCrew(db, who, crewId);
	if (crew === null) return { kind: 'not-found' };
	if (crew.archivedAt !== null) return { kind: 'archived' };
	const roster = readRoster(text);
	if (roster.kind === 'refused') return roster;
	const numbers = roster.lines.flatMap(({ problem, number }) => (problem === undefined ? [number] : []));
	const known = await numberedOf(db, who.organisation, numbers);
	const listed = await onListOf(db, crewId);
	return { kind: 'looked', lines: roster.lines.map((line) => lookedAt(line, known.get(line.number), listed)) };
}

function lookedAt(line: RosterLine, known: Numbered | undefined, listed: ReadonlySet<string>): LookedAt {
	if (line.problem !== undefined) return { ...line, state: undefined, wrong: line.problem };
	if (known === undefined) return { ...line, state: 'new', wrong: undefined };
	if (known.closed || known.role !== 'learner' || !sameName(known.name, line.name)) return { ...line, state: undefined, wrong: { kind: 'number-taken' } };
	return { ...line, state: listed.has(known.id) ? 'on-list' : 'known', wrong: undefined };
}

/**
 * Puts the people of a list on a crew's: all those whose line can be taken, in one go, or none. Lines with problems
 * are left out, and counted. The same list twice adds nobody twice.
 */
export async function enterRoster(db: Database, who: Person, crewId: string, text: string, now: Date): Promise<Entering> {
	try {
		return await enterOnce(db, who, crewId, text, now);
	} catch (error) {
		// Somebody was entered under one of the numbers in the same moment: now that one is found.
		if (!isUniqueViolation(error)) throw error;
		return enterOnce(db, who, crewId, text, now);
	}
}

async function enterOnce(db: Database, who: Person, crewId: string, text: string, now: Date): Promise<Entering> {
	return db.transaction().execute(async (transaction): Promise<Entering> => {
		const looking = await lookAtRoster(transaction, who, crewId, text);
		if (looking.kind !== 'looked') return looking;
		const known = await numberedOf(transaction, who.organisation, looking.lines.map(({ number }) => number));
		const newcomers = looking.lines.filter(({ state }) => state === 'new').map(({ name, number }) => ({ role: 'learner' as const, name, personalNumber: number }));
		const entered = await enterPeople(transaction, who.organisation, newcomers, who.id, now);
		const ids = new Map(newcomers.map(({ personalNumber }, i) => [personalNumber, entered[i]]));
		let added = 0;
		for (const { number, state } of looking.lines) {
			if (state === undefined || state === 'on-list') continue;
			const id = known.get(number)?.id ?? ids.get(number);
			if (id === undefined) throw new Error('Somebody of a list was not entered');
			await putOnList(transaction, crewId, id, now.toISOString());
			await noteDeed(transaction, who, 'learner-added', id, now, { crew: crewId, new: state === 'new', list: true });
			added += 1;
		}
		return {
			kind: 'entered',
			added,
			before: looking.lines.filter(({ state }) => state === 'on-list').length,
			leftOut: looking.lines.filter(({ wrong }) => wrong !== undefined).length
		};
	});
}
