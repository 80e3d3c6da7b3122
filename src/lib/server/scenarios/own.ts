/** What staff see of the scenarios of their organisation. Every trainer and employer sees all; who may change one stands with it. */
import type { Database } from '../db/open.ts';
import { findOwnScenario, ownScenariosOf, type OwnScenarioRow } from '../db/own-scenarios.ts';
import type { Person } from '../people/who.ts';
import type { InputProblem } from '../problems.ts';
import type { DocumentFault } from './document.ts';

/** A scenario of the organisation. */
export interface OwnScenario {
	readonly id: string;
	/** Id of the person. */
	readonly madeBy: string;
	/** Name of the person. */
	readonly maker: string;
	/** JSON; null where nothing was changed since the newest version. */
	readonly draft: string | null;
	/** Counts up with each change: a change made from an older one is refused. */
	readonly revision: number;
	/** ISO 8601, UTC. */
	readonly changedAt: string;
	/** The newest version; null where none was published. */
	readonly published: number | null;
	/** ISO 8601, UTC; null for one that is in use. */
	readonly retiredAt: string | null;
	/** Whether the person who asks may change, publish and retire it: who made it, and employers. */
	readonly mayChange: boolean;
	/** JSON of the draft; where there is none, of the newest version. */
	readonly document: string;
}

/** What came of making a scenario. */
export type Made =
	| { readonly kind: 'made'; readonly id: string }
	/** Nothing is stored. `fields`: it is a document, and some of its fields do not fit. */
	| { readonly kind: 'refused'; readonly why: DocumentFault | 'fields'; readonly problems: readonly InputProblem[] }
	/** The organisation has as many as it may. */
	| { readonly kind: 'full'; readonly most: number }
	/** What was to be copied is not there, or the person may make none. */
	| { readonly kind: 'not-found' };

/** @returns whether a person may change a scenario that they see. */
export function mayChange(who: Person, { madeBy }: { readonly madeBy: string }): boolean {
	return who.role === 'employer' || (who.role === 'trainer' && who.id === madeBy);
}

function told(who: Person, row: OwnScenarioRow): OwnScenario {
	const { newest, ...rest } = row;
	const document = row.draft ?? newest;
	if (document === null) throw new Error(`Scenario ${row.id} has neither a draft nor a version`);
	return { ...rest, mayChange: mayChange(who, row), document };
}

/** @returns the scenarios of the organisation, the one changed last first; none for learners. */
export async function listOwn(db: Database, who: Person): Promise<readonly OwnScenario[]> {
	return (await ownScenariosOf(db, who)).map((row) => told(who, row));
}

/** @returns a scenario of the organisation; null if there is none of that id, or it is not this person's to see. */
export async function findOwn(db: Database, who: Person, id: string): Promise<OwnScenario | null> {
	const row = await findOwnScenario(db, who, id);
	return row === null ? null : told(who, row);
}
