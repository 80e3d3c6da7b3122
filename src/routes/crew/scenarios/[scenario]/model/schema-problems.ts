/** What of a document does not fit the schema of scenarios: field by field, each of a kind that the catalogue has words for. */
import { at, isObject, type Json, type Path } from './document.ts';

/** Kinds of things that the schema itself says in words: how its message begins, or what stands in it. */
const SAID = {
	'no-unit': /^has no unit;/,
	'other-unit': /^has no unit of|^measures no/,
	'two-ways': /in two ways/,
	unreadable: /^cannot be read/,
	implausible: /^is not within what it can be|more or less than it can be/,
	'no-such-unit': /^is no unit/,
	'd-ring-above-head': /^lies above the (head|body height)/,
	'needs-kneeling-height': /^is needed when not standing/,
	'kneeling-above-standing': /^is above worker\.dRingHeight/,
	'label-range-turned': /^is above absorber\.massMax/,
	'from-beyond-to': /^lies beyond "to"/,
	'used-twice': /^is used twice/,
	'always-there': /^contradicts "present"/,
	'to-below-from': /^is below "from"/,
	'too-many-values': /^gives more than/,
	'no-bound': /^bounds nothing/,
	'no-short-name': /^is no short name/,
	'no-given': /^is no id of a given/,
	'no-ask-before': /which is no ask before it/,
	'not-drawn-before': /^is set by no draw before/,
	'obstacle-unnamed': /give the obstacle a name/,
	'no-fact': /^is no fact/,
	'no-state': /^is no state/,
	'no-slot': /^has the slot/,
	'no-place': /^has no place in the base plan/,
	'no-obstacle': /^is no obstacle/,
	'stray-name': /^names an obstacle that the base plan does not have/,
	'needs-absorber': /^needs an absorber/,
	'no-quantity': /^is neither a given nor a quantity/,
	'no-such': /^is no .* that there is/,
	'no-object': /^is no (object|text)/
} as const satisfies Readonly<Record<string, RegExp>>;

/** Kinds that follow from how a value fails. */
type Failed = 'missing' | 'wrong-kind' | 'too-small' | 'too-great' | 'too-short' | 'too-long' | 'too-few' | 'too-many' | 'no-choice' | 'unknown-field';

/** `other`: the schema says something that the catalogue has no words for; its own message stands in. */
export type ProblemKind = keyof typeof SAID | Failed | 'other';

export interface SchemaProblem {
	readonly kind: ProblemKind;
	readonly path: Path;
	/** The schema's own words, in English: what is wrong; what would be right. */
	readonly message: string;
	/** The bound that is broken, where there is one. */
	readonly bound?: number;
}

/** As much of an issue of the schema library as is needed here. */
export interface Issue {
	readonly code: string;
	readonly path: readonly PropertyKey[];
	readonly message: string;
	readonly errors?: readonly (readonly Issue[])[];
	readonly keys?: readonly string[];
	readonly minimum?: unknown;
	readonly maximum?: unknown;
	readonly origin?: unknown;
}

/** @reason as many as anybody reads at once. */
const MOST = 40;

/** @returns the problems of a document, in the order of the schema, each path once. */
export function schemaProblems(issues: readonly Issue[], document: Json): readonly SchemaProblem[] {
	const found = new Map<string, SchemaProblem>();
	for (const problem of told(issues, document, [])) {
		const key = problem.path.join('.');
		if (!found.has(key)) found.set(key, problem);
		if (found.size >= MOST) break;
	}
	return [...found.values()];
}

function* told(issues: readonly Issue[], document: Json, base: Path): Generator<SchemaProblem> {
	for (const issue of issues) {
		const path: Path = [...base, ...issue.path.map((step) => (typeof step === 'number' ? step : String(step)))];
		if (issue.keys !== undefined && issue.code === 'unrecognized_keys') {
			for (const key of issue.keys) yield { kind: 'unknown-field', path: [...path, key], message: issue.message };
			continue;
		}
		const value = at(document, path);
		if (issue.code === 'invalid_union' && value !== undefined && issue.errors !== undefined && issue.errors.length > 0) {
			yield* told(nearest(issue.errors), document, path);
			continue;
		}
		const bound = issue.code === 'too_small' ? issue.minimum : issue.maximum;
		const kind = kindOf(issue, value);
		yield { kind: kind === 'wrong-kind' && isTypedAmount(path, value) ? 'unreadable' : kind, path, message: issue.message, ...(typeof bound === 'number' ? { bound } : {}) };
	}
}

/** Whether it is the amount of a rule as it was typed: one that can be read has become a number with its unit. */
function isTypedAmount([part, , side]: Path, value: Json | undefined): boolean {
	return part === 'constraints' && (side === 'atLeast' || side === 'atMost') && typeof value === 'string';
}

/** Of the forms that a part may have, the one that comes nearest to what stands there. */
function nearest(forms: readonly (readonly Issue[])[]): readonly Issue[] {
	const distance = (issues: readonly Issue[]): number =>
		issues.reduce((sum, { code, path, keys }) => sum + (code === 'invalid_value' && path.length === 1 ? 4 : code === 'unrecognized_keys' ? (keys?.length ?? 1) : 1), 0);
	return [...forms].sort((a, b) => distance(a) - distance(b))[0] ?? [];
}

function kindOf({ code, message, origin }: Issue, value: Json | undefined): ProblemKind {
	const said = (Object.entries(SAID) as [keyof typeof SAID, RegExp][]).find(([, words]) => words.test(message));
	if (value === undefined && said?.[0] !== 'obstacle-unnamed' && said?.[0] !== 'needs-kneeling-height') return 'missing';
	if (said !== undefined) return said[0];
	switch (code) {
		case 'invalid_key':
			return 'unknown-field';
		case 'invalid_type':
			return 'wrong-kind';
		case 'too_small':
			return origin === 'string' ? 'too-short' : origin === 'array' ? 'too-few' : 'too-small';
		case 'too_big':
			return origin === 'string' ? 'too-long' : origin === 'array' ? 'too-many' : 'too-great';
		case 'invalid_value':
		case 'invalid_union':
			return isObject(value) ? 'wrong-kind' : 'no-choice';
		default:
			return 'other';
	}
}
