/** The form of a new set: what is entered in it, and the content that it stands for. */
import type { SetContent } from '#lib/flow/index.ts';
import type { Cell } from '#lib/scenario/index.ts';
import { MOST_SET_PROBLEMS, MOST_SET_SCENARIOS } from '#lib/server/index.ts';
import { SLIPS, type SlipId } from '#lib/slips/index.ts';
import { askedOf, SKILLS, usualRight, type Narrowing, type Offer } from '../choosing.ts';

/** Problems of a set that nothing is said of. @reason about ten minutes at two minutes each */
const USUAL_PROBLEMS = 6;
/** The most boxes of one name that are looked at. @reason more than any list has; a hostile form stays cheap */
const MOST_BOXES = 300;
/** @reason as long as any field that is typed into; longer is cut, and then refused by its field */
const LONGEST = 800;

const UNITS = ['metric', 'us', 'all'] as const;
const DIFFICULTIES = ['all', 'easy', 'middle', 'hard'] as const;
const SAME = ['apart', 'alike'] as const;
const LANGUAGES = ['own', 'en', 'es'] as const;

/** What the form holds: numbers as they are typed. */
export interface SetEntry extends Narrowing {
	readonly name: string;
	readonly scenarios: readonly string[];
	readonly count: string;
	readonly right: string;
	readonly unsafe: string;
	readonly same: (typeof SAME)[number];
	readonly language: (typeof LANGUAGES)[number];
	readonly aims: readonly SlipId[];
}

/** Keys of the catalogue: what is wrong with an entry. */
export type EntryProblem = 'no-scenario' | 'too-many' | 'asks-nothing' | 'not-whole' | 'count-bounds' | 'right-bounds' | 'unsafe-bounds' | 'gone';

/** What a form that is refused is told. */
export interface EntryProblems {
	readonly fields: Readonly<Record<string, string>>;
	/** Chosen scenarios that ask for nothing that was chosen. */
	readonly unfit: readonly string[];
}

/** @returns the form as it comes at first. @param units of the organisation */
export function emptyEntry(units: 'metric' | 'us'): SetEntry {
	return {
		name: '',
		skills: [],
		units,
		difficulty: 'all',
		scenarios: [],
		count: String(USUAL_PROBLEMS),
		right: String(usualRight(USUAL_PROBLEMS)),
		unsafe: '0',
		same: 'apart',
		language: 'own',
		aims: []
	};
}

/** A form, or the part of an address that stands for one. */
type Sent = Pick<URLSearchParams, 'has'> & { readonly get: (name: string) => unknown; readonly getAll: (name: string) => readonly unknown[] };

function textIn(sent: Sent, name: string, otherwise: string): string {
	const value = sent.get(name);
	return typeof value === 'string' ? value.slice(0, LONGEST) : otherwise;
}

function oneIn<Id extends string>(sent: Sent, name: string, of: readonly Id[], otherwise: Id): Id {
	return of.find((one) => one === sent.get(name)) ?? otherwise;
}

function boxesIn(sent: Sent, name: string): readonly string[] {
	return [...new Set(sent.getAll(name).slice(0, MOST_BOXES).flatMap((one) => (typeof one === 'string' ? [one.slice(0, LONGEST)] : [])))];
}

/** @returns those ids that the catalogue of slips has. */
function slipsIn(ids: readonly string[]): readonly SlipId[] {
	return SLIPS.map((slip) => slip.id).filter((id) => ids.includes(id));
}

/** @returns what a form holds; what it does not say is as in `otherwise`, and boxes that are not ticked are not ticked. */
export function readEntry(sent: Sent, otherwise: SetEntry): SetEntry {
	const skills = boxesIn(sent, 'skill');
	const aims = boxesIn(sent, 'aim');
	return {
		name: textIn(sent, 'name', otherwise.name),
		skills: SKILLS.filter((cell) => skills.includes(cell)),
		units: oneIn(sent, 'units', UNITS, otherwise.units),
		difficulty: oneIn(sent, 'difficulty', DIFFICULTIES, otherwise.difficulty),
		scenarios: boxesIn(sent, 'scenario'),
		count: textIn(sent, 'count', otherwise.count),
		right: textIn(sent, 'right', otherwise.right),
		unsafe: textIn(sent, 'unsafe', otherwise.unsafe),
		same: oneIn(sent, 'same', SAME, otherwise.same),
		language: oneIn(sent, 'language', LANGUAGES, otherwise.language),
		aims: slipsIn(aims)
	};
}

/** @returns the form that would make this content again. */
export function entryOf(name: string, content: SetContent, skills: readonly Cell[]): SetEntry {
	return {
		name,
		skills,
		units: 'all',
		difficulty: 'all',
		scenarios: content.scenarios.map((one) => one.id),
		count: String(content.count),
		right: String(content.rule.right),
		unsafe: String(content.rule.critical),
		same: content.sameForAll ? 'alike' : 'apart',
		language: content.language ?? 'own',
		aims: slipsIn(content.aims)
	};
}

/** What a form came to. */
export type Chosen = { readonly kind: 'chosen'; readonly content: SetContent } | { readonly kind: 'refused'; readonly problems: EntryProblems };

/** A whole number as people type it, or undefined. */
function wholeIn(text: string): number | undefined {
	const tidy = text.trim();
	return /^\d{1,6}$/.test(tidy) ? Number(tidy) : undefined;
}

/** @returns the content of a form, or what is wrong with it, field by field. @param offers what can be chosen */
export function contentOf(entry: SetEntry, offers: readonly Offer[]): Chosen {
	const fields: Record<string, EntryProblem> = {};
	const chosen = offers.filter((offer) => entry.scenarios.includes(offer.id));
	const asked = chosen.map((offer) => ({ offer, asks: askedOf(offer.asks, entry.skills) }));
	const unfit = asked.filter(({ asks }) => asks.length === 0).map(({ offer }) => offer.id);
	if (entry.scenarios.length === 0) fields['scenarios'] = 'no-scenario';
	else if (chosen.length < entry.scenarios.length) fields['scenarios'] = 'gone';
	else if (chosen.length > MOST_SET_SCENARIOS) fields['scenarios'] = 'too-many';
	const count = wholeIn(entry.count);
	const right = wholeIn(entry.right);
	const critical = wholeIn(entry.unsafe);
	if (count === undefined) fields['count'] = 'not-whole';
	else if (count < 1 || count > MOST_SET_PROBLEMS) fields['count'] = 'count-bounds';
	const most = count ?? MOST_SET_PROBLEMS;
	if (right === undefined) fields['right'] = 'not-whole';
	else if (right < 1 || right > most) fields['right'] = 'right-bounds';
	if (critical === undefined) fields['unsafe'] = 'not-whole';
	else if (critical > most) fields['unsafe'] = 'unsafe-bounds';
	if (unfit.length > 0 || Object.keys(fields).length > 0 || count === undefined || right === undefined || critical === undefined) {
		return { kind: 'refused', problems: { fields, unfit } };
	}
	return {
		kind: 'chosen',
		content: {
			scenarios: asked.map(({ offer, asks }) => ({ id: offer.id, version: offer.version, asks: asks.map((ask) => ask.id) })),
			count,
			rule: { right, critical },
			sameForAll: entry.same === 'alike',
			language: entry.language === 'own' ? null : entry.language,
			aims: entry.aims
		}
	};
}
