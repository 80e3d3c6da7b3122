/** What an inspection can find, without words: the catalogue has a text for each code. */

/**
 * What belongs to each finding. Unless said otherwise a number is SI (m, kg, N), a share is from 0 to 1, and
 * `which` tells two findings of one code at one field apart.
 */
export interface FindingDetails {
	/** Not every seed gives a problem. `share` that do; `which`: why most tries are turned down. The path is the field that causes it, where one can be named. */
	'seldom-drawn': { readonly share: number; readonly which: TurnedDownId };
	/** A seed needs many tries. `mean`, `most` tries; `which`: why most are turned down. Path as for `seldom-drawn`. */
	'many-tries': { readonly mean: number; readonly most: number; readonly which: TurnedDownId };
	/** No draw comes out as an aim asks. `which`: the aim. `why`: its check fails in no plan at all; it is the outcome of some plans but never by itself; or such plans are turned down for another reason. */
	'aim-not-met': { readonly which: string; readonly why: 'never' | 'not-alone' | 'turned-down' };
	/** A check fails in every plan that the ranges give, though an aim wants it held. `which`: the topic. The path is the field that decides it. */
	'check-always-fails': { readonly which: string };
	/** An aim wants a check to fail that holds in every plan. `which`: the topic. The path is the field that decides it. */
	'check-never-fails': { readonly which: string };
	/** A check cannot be judged in any plan, though an aim wants one that passes. `which`: the topic. The path is what is not stated. */
	'check-never-known': { readonly which: string };
	/** Plans of this kind are not computed at all. `which`: `line-over-edge` or `away-from-edge`. */
	'plan-refused': { readonly which: string };
	/** Too many or too few draws pass. `passing`: share that pass. The path is the aim, or the field, that tips it. */
	lopsided: { readonly passing: number };
	/** No sampled plan keeps this constraint. `of`: given or quantity; `least`, `greatest`: what the plans have, absent if they have no value. */
	'constraint-never-met': { readonly of: string; readonly least?: number; readonly greatest?: number };
	/** Two constraints that are each kept by some plans and by none together. `of`, `other`: given or quantity of this and of the other; `with`: index of the other constraint. */
	'constraints-clash': { readonly of: string; readonly other: string; readonly with: number };
	/** Every two constraints are kept by some plans, all of them by none. */
	'constraints-never-together': { readonly count: number };
	/** A constraint that every sampled plan keeps: it excludes nothing. `of`. */
	'constraint-never-binds': { readonly of: string };
	/** An ask for a number that plans do not have. `which`: `missing` (not stated), `not-rigged`, `does-not-stop`; `ask`: its id; `given`: what is missing, or ''. The path is the field that decides it. */
	'ask-without-value': { readonly which: string; readonly ask: string; readonly given: string };
	/** In most draws the right answer is that it cannot be stated from the label. `ask`, `share`. */
	'often-not-stated': { readonly ask: string; readonly share: number };
	/** No slip changes the answer. `ask`. */
	'ask-without-slips': { readonly ask: string };
	/** The answers lie close together. `ask`; `steps` of the answer grid between the quartiles. The path is the draw that drives the answer and moves least. */
	'narrow-answers': { readonly ask: string; readonly steps: number };
	/** Right answers that do not lie on the answer grid, so that they cannot be typed as they are. `ask`, `share`. The path is the value or step that is finer than the grid, or the ask's precision. */
	'off-answer-grid': { readonly ask: string; readonly share: number };
	/** Two slips, or a slip and the right answer, give one number. `which`: both ids in order, with a space; `ask`; `share` of the tries. The path is the field that makes them alike. */
	'slips-alike': { readonly which: string; readonly ask: string; readonly share: number };
	/** A pair declared equal that is not. `which`: both ids. */
	'declared-but-not-equal': { readonly which: string };
	/** A slip that has a place and changes nothing. `which`: its id. */
	'slip-without-effect': { readonly which: string };
	/** A site that nobody could build, or a body or label that does not exist. `which`: the kind (see `ImpossibleSite`); `given` at fault. */
	'impossible-site': { readonly which: string; readonly given: string };
	/** A number far from what is used at work. `given`; `value`: the one furthest out; `least`, `greatest`: the usual range. */
	'unusual-value': { readonly given: string; readonly value: number; readonly least: number; readonly greatest: number };
	/** A draw with one value only. `given`: what it sets. */
	'one-value': { readonly given: string };
	/** A given that two draws set; the later one counts. `given`; `with`: index of the earlier draw. */
	'drawn-twice': { readonly given: string; readonly with: number };
	/** A decoy that a formula of the problem reads: it decides nothing it should not. `given`. */
	'decoy-counts': { readonly given: string };
	/** A decoy that often equals a right answer or a given. `which`: id of the ask or given; `share` of the draws. */
	'decoy-alike': { readonly which: string; readonly share: number };
	/** A drawn fact that no sentence tells. `which`: the state. */
	'fact-untold': { readonly which: string };
	/** A state that a fact can be drawn in and that no drawn problem is in: every plan with it is turned down. `which`: the state. */
	'state-never-drawn': { readonly which: string };
	/** A slot that some drawn problem has nothing for. `which`: the slot. */
	'slot-without-value': { readonly which: string };
	/** A slot that one language has and the other does not. `which`: the slot. */
	'slot-in-one-language': { readonly which: string };
	/** No text of a language names the person. */
	'name-untold': Readonly<Record<string, never>>;
	/** A text that is the same in both languages. */
	untranslated: Readonly<Record<string, never>>;
	/** A name that stands twice in the list. `name`. */
	'name-twice': { readonly name: string };
	/** A sentence of too many words. `words`. */
	'long-sentence': { readonly words: number };
	/** Too many words a sentence, over all. `mean`. The path is the text with the longest sentence. */
	'long-sentences': { readonly mean: number };
	/** Words that are hard to read. `measure`: Flesch–Kincaid grade, or Fernández-Huerta index. The path is the text that is hardest. */
	'hard-words': { readonly measure: number };
}

/** Why a try was turned down; the ids of `TurnedDown`. */
type TurnedDownId = string;

export type FindingCode = keyof FindingDetails;

/** Every code once: who has a text for each is checked against this list. */
export const FINDING_CODES = Object.freeze([
	'seldom-drawn',
	'many-tries',
	'aim-not-met',
	'check-always-fails',
	'check-never-fails',
	'check-never-known',
	'plan-refused',
	'lopsided',
	'constraint-never-met',
	'constraints-clash',
	'constraints-never-together',
	'constraint-never-binds',
	'ask-without-value',
	'often-not-stated',
	'ask-without-slips',
	'narrow-answers',
	'off-answer-grid',
	'slips-alike',
	'declared-but-not-equal',
	'slip-without-effect',
	'impossible-site',
	'unusual-value',
	'one-value',
	'drawn-twice',
	'decoy-counts',
	'decoy-alike',
	'fact-untold',
	'state-never-drawn',
	'slot-without-value',
	'slot-in-one-language',
	'name-untold',
	'untranslated',
	'name-twice',
	'long-sentence',
	'long-sentences',
	'hard-words'
]) satisfies readonly FindingCode[];

/** A fault keeps a scenario from being published; a warning asks to look again; a note is to be known. */
export type Severity = 'fault' | 'warning' | 'note';

/** Where in a scenario document: keys and places in lists. */
export type FieldPath = readonly (string | number)[];

/** One thing found, without words: a code, the field it concerns, and what belongs to it. */
export interface InspectFinding {
	readonly code: FindingCode;
	readonly severity: Severity;
	/** The field that the author must change. */
	readonly path: FieldPath;
	/** Other fields that have a part in it. */
	readonly also?: readonly FieldPath[] | undefined;
	/** A seed that shows it, where one does. */
	readonly seed?: number | undefined;
	/** Numbers and ids that a message about it needs: see `FindingDetails` for each code. */
	readonly detail: Readonly<Record<string, string | number>>;
}

/** Takes a finding down. */
export type Find = <Code extends FindingCode>(
	code: Code,
	severity: Severity,
	path: FieldPath,
	detail: FindingDetails[Code],
	more?: { readonly seed?: number | undefined; readonly also?: readonly FieldPath[] | undefined }
) => void;

/** @returns a list that findings go into, each thing once a field, with the first seed that shows it. */
export function findingList(): { readonly find: Find; readonly findings: readonly InspectFinding[] } {
	const findings: InspectFinding[] = [];
	const seen = new Set<string>();
	const find: Find = (code, severity, path, detail, { seed, also } = {}) => {
		const told: Readonly<Record<string, string | number>> = { ...detail };
		const key = `${code} ${path.join('.')} ${told['which'] ?? told['with'] ?? ''}`;
		if (seen.has(key)) return;
		seen.add(key);
		findings.push({
			code,
			severity,
			path,
			...(also === undefined || also.length === 0 ? {} : { also }),
			...(seed === undefined ? {} : { seed }),
			detail: told
		});
	};
	return { find, findings };
}
