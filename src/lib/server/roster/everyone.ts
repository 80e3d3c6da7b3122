/** A list of everyone of an organisation: what each line would do, and who is not on it. Nothing is changed here. */
import { canonicalJson } from '#lib/records/index.ts';
import { numberedOf, type Numbered } from '../db/crew-list.ts';
import type { Database } from '../db/open.ts';
import { countLearners, listsOf, presentLearners, type PresentLearner } from '../db/organisation-roster.ts';
import { crewsByName, type NamedCrew } from '../db/training.ts';
import { field, type FieldProblem } from '../people/fields.ts';
import type { Person } from '../people/who.ts';
import { sha256 } from '../records/chain.ts';
import { folded } from '../records/folded.ts';
import { problemIn, readRoster, type LineProblem, type Roster, type RosterLine } from './read.ts';

/** The most people who are marked as left by one list. @reason a reader still looks through their names; more is a wrong list more often than a wave of leavers */
export const MOST_LEAVING = 1000;

/** What is wrong with a line, beside what reading it says. */
export type EveryoneProblem =
	| LineProblem
	/** The crew's name cannot be one. */
	| { readonly kind: 'crew'; readonly problem: FieldProblem }
	/** A member of the staff has the number. */
	| { readonly kind: 'number-of-staff' }
	/** Several crews have this name. */
	| { readonly kind: 'crew-unclear' }
	| { readonly kind: 'crew-put-away' };

/** What a line would do about crews. */
export interface CrewChange {
	/** `moves`: off the one list that the person is on. */
	readonly does: 'joins' | 'moves';
	/** Id; null for a crew that is made. */
	readonly to: string | null;
	readonly name: string;
	readonly from: { readonly id: string; readonly name: string } | undefined;
}

/** What a line would do. */
export interface LineChange {
	/** Id; null for a new person. */
	readonly person: string | null;
	/** The name from before, where it changes; `alike` if any word of it stays. */
	readonly renamed: { readonly from: string; readonly alike: boolean } | undefined;
	/** Whether somebody comes back who had left. */
	readonly returns: boolean;
	readonly crew: CrewChange | undefined;
}

/** A line, and what it would do. */
export type EveryoneLine = Omit<RosterLine, 'problem'> & ({ readonly wrong: EveryoneProblem } | { readonly wrong: undefined; readonly change: LineChange });

/** Who is there and not on the list. */
export type Missing =
	| { readonly kind: 'people'; readonly people: readonly PresentLearner[] }
	/** Too many to be marked as left by this list. */
	| { readonly kind: 'too-many'; readonly count: number };

/** What came of looking at a list. */
export type LookingAtAll =
	| {
			readonly kind: 'looked';
			readonly lines: readonly EveryoneLine[];
			readonly missing: Missing;
			/** Stands for all of this: entering asks whether it is still so. */
			readonly shown: string;
	  }
	| Extract<Roster, { kind: 'refused' }>;

/** @returns whether a line changes nothing. */
export function isUnchanged({ person, renamed, returns, crew }: LineChange): boolean {
	return person !== null && renamed === undefined && !returns && crew === undefined;
}

/** Looks at a list of everyone. */
export async function lookAtEveryone(db: Database, who: Person, text: string): Promise<LookingAtAll> {
	const roster = readRoster(text, { crews: true });
	if (roster.kind === 'refused') return roster;
	const numbers = roster.lines.flatMap(({ problem, number }) => (problem === undefined ? [number] : []));
	const known = await numberedOf(db, who.organisation, numbers);
	const crews = await crewsByName(db, who.organisation);
	const lists = await listsOf(db, who.organisation, [...known.values()].map(({ id }) => id));
	const lines = roster.lines.map((line) => lookedAt(line, known.get(line.number), crews, lists));
	// A number counts as listed even where its line is wrong otherwise: nobody leaves by a slip of the pen.
	const missing = await missingFrom(db, who.organisation, new Set(roster.lines.map(({ number }) => number)));
	return { kind: 'looked', lines, missing, shown: sha256(canonicalJson({ lines: lines.map((line) => ({ ...line })), missing })) };
}

async function missingFrom(db: Database, organisation: string, listed: ReadonlySet<string>): Promise<Missing> {
	const count = (await countLearners(db, organisation)) - listed.size;
	if (count > MOST_LEAVING) return { kind: 'too-many', count };
	const people = (await presentLearners(db, organisation)).filter(({ number }) => !listed.has(number));
	return people.length > MOST_LEAVING ? { kind: 'too-many', count: people.length } : { kind: 'people', people };
}

function lookedAt({ problem, ...line }: RosterLine, known: Numbered | undefined, crews: readonly NamedCrew[], lists: ReadonlyMap<string, readonly string[]>): EveryoneLine {
	if (problem !== undefined) return { ...line, wrong: problem };
	if (known !== undefined && known.role !== 'learner') return { ...line, wrong: { kind: 'number-of-staff' } };
	const on = known === undefined ? [] : (lists.get(known.id) ?? []);
	const crewName = line.crew === '' ? undefined : field.name.safeParse(line.crew);
	if (crewName?.success === false) return { ...line, wrong: { kind: 'crew', problem: problemIn(crewName.error) } };
	const crew = crewName === undefined ? undefined : crewChange(crewName.data, on, crews);
	if (crew !== undefined && 'kind' in crew) return { ...line, wrong: crew };
	const renamed = known !== undefined && isOtherName(known.name, line.name) ? { from: known.name, alike: shareAWord(known.name, line.name) } : undefined;
	return { ...line, wrong: undefined, change: { person: known?.id ?? null, renamed, returns: known?.closed ?? false, crew } };
}

function crewChange(name: string, on: readonly string[], crews: readonly NamedCrew[]): CrewChange | undefined | Extract<EveryoneProblem, { kind: 'crew-unclear' | 'crew-put-away' }> {
	const called = crews.filter((one) => folded(one.name) === folded(name));
	const working = called.filter(({ putAway }) => !putAway);
	const [found] = working;
	if (working.length > 1) return { kind: 'crew-unclear' };
	if (found === undefined && called.length > 0) return { kind: 'crew-put-away' };
	if (found !== undefined && on.includes(found.id)) return undefined;
	const [only] = on;
	// Whoever is on several lists stays on them: which one to leave, the list does not say.
	const from = on.length === 1 ? crews.find(({ id }) => id === only) : undefined;
	return { does: from === undefined ? 'joins' : 'moves', to: found?.id ?? null, name: found?.name ?? name, from: from === undefined ? undefined : { id: from.id, name: from.name } };
}

function words(name: string): readonly string[] {
	return name.toLowerCase().split(/[^\p{L}\p{N}\p{M}]+/u).filter((word) => word !== '');
}

/**
 * @returns whether a list gives a person another name. Lists are often all in capitals, or have the surname first: the
 * same words in any order are the same name, unless only capitals are put right.
 */
function isOtherName(kept: string, listed: string): boolean {
	if (kept === listed) return false;
	if (kept.toLowerCase() === listed.toLowerCase()) return listed !== listed.toUpperCase() && listed !== listed.toLowerCase();
	return words(kept).toSorted().join(' ') !== words(listed).toSorted().join(' ');
}

function shareAWord(one: string, other: string): boolean {
	const here = new Set(words(folded(one)));
	return words(folded(other)).some((word) => here.has(word));
}
