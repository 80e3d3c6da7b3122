import type { ZodError } from 'zod';

/** What is wrong with one field of what was given. */
export interface InputProblem {
	/** Path of the field, e.g. `answers.free-fall`, or the name of the whole. */
	readonly field: string;
	/** What is wrong, to be read after the field's name. */
	readonly problem: string;
	/** What would be right. */
	readonly remedy: string;
}

export interface ProblemOptions {
	/** Path of the part that the issues are about. */
	readonly base?: readonly PropertyKey[];
	/** What the whole is called where a problem is about all of it. */
	readonly whole?: string;
}

/** How much of a wrong value or name is said back, characters. */
const SAID_BACK = 40;

/** The most problems that are told at once: more help nobody, and a hostile input must stay cheap. */
const MOST_PROBLEMS = 20;

/** The longest sentence that is told, characters: one that lists what is allowed must not repeat what is hostile. */
const LONGEST_SENTENCE = 1000;

type Issue = ZodError['issues'][number];

function cut(text: string, longest = SAID_BACK): string {
	return text.length > longest ? `${text.slice(0, longest)}…` : text;
}

function fieldName(path: readonly PropertyKey[], whole: string): string {
	return path.length === 0 ? whole : path.map((key) => cut(String(key))).join('.');
}

/** The value that stands at a path, or undefined where the path ends early. */
function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
	let at = input;
	for (const key of path) {
		if (typeof at !== 'object' || at === null || !Object.hasOwn(at, key)) return undefined;
		at = Reflect.get(at, key);
	}
	return at;
}

/** A value as it is said back: as JSON, cut short; lists and objects by their kind. */
function shown(value: unknown): string {
	if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : 'a list';
	if (typeof value === 'object' && value !== null) return 'an object';
	if (typeof value === 'number') return String(value);
	// Cut before it is written, so that a megabyte of text is not copied to show forty characters of it.
	return cut(typeof value === 'string' ? JSON.stringify(value.slice(0, SAID_BACK * 2)) : (JSON.stringify(value) ?? String(value)));
}

/** What is asked for where the type is wrong, in words. */
const TYPES: Readonly<Record<string, string>> = {
	string: 'a text',
	number: 'a number',
	int: 'a whole number',
	boolean: 'true or false',
	array: 'a list',
	tuple: 'a list',
	object: 'an object',
	record: 'an object',
	null: 'null'
};

/** What a bound counts, one and several. */
const COUNTED: Readonly<Record<string, readonly [one: string, several: string]>> = {
	string: ['character', 'characters'],
	array: ['entry', 'entries']
};

/** A bound as it is told: a number, and what it counts. */
function bound(size: number | bigint, origin: string): string {
	const counted = COUNTED[origin];
	return counted === undefined ? String(size) : `${size} ${counted[Number(size) === 1 ? 0 : 1]}`;
}

function oneOf(values: readonly unknown[]): string {
	const some = values.map((value) => (typeof value === 'object' ? shown(value) : (JSON.stringify(value) ?? String(value))));
	return `${values.length > 1 ? 'one of ' : ''}${some.join(', ')}`;
}

/** Messages of our own schemas read `what is wrong; what would be right`; the library's begin like this. */
const LIBRARY_WORDS = /^(Invalid|Too (small|big)|Unrecognized)/;

interface Words {
	/** What is wrong beside the value itself, after "and". */
	readonly fault: string | undefined;
	readonly remedy: string;
}

function ownWords(message: string): Words {
	const [fault = '', ...rest] = message.split('; ');
	return rest.length === 0 ? { fault: undefined, remedy: fault } : { fault, remedy: rest.join('; ') };
}

function wordsOf(issue: Issue): Words {
	if (!LIBRARY_WORDS.test(issue.message)) return ownWords(issue.message);
	return { fault: undefined, remedy: remedyOf(issue) };
}

/** What would be right, in words. */
function remedyOf(issue: Issue): string {
	switch (issue.code) {
		case 'invalid_type':
			return `give ${TYPES[issue.expected] ?? issue.expected}`;
		case 'too_small':
			return `give ${issue.inclusive === false ? 'more than' : 'at least'} ${bound(issue.minimum, issue.origin)}`;
		case 'too_big':
			return `give ${issue.inclusive === false ? 'less than' : 'at most'} ${bound(issue.maximum, issue.origin)}`;
		case 'invalid_value':
			return `give ${oneOf(issue.values)}`;
		case 'invalid_format':
			return issue.format === 'uuid' ? 'give a UUID' : `give a text in the form "${issue.format}"`;
		case 'invalid_union':
			return 'options' in issue && Array.isArray(issue.options) ? `give ${oneOf(issue.options)}` : 'give one of the forms that the schema allows';
		case 'invalid_key':
			return `give a name that fits: ${issue.issues.map((inner) => wordsOf(inner).remedy).join(', ')}`;
		default:
			return issue.message;
	}
}

/**
 * How far a value is from one form of a union. A constant that differs tells that another form was meant; a
 * missing or unknown key tells it less.
 */
function distance(issues: readonly Issue[]): number {
	return issues.reduce((sum, issue) => {
		if (issue.code === 'invalid_value' && issue.path.length === 1) return sum + 4;
		return sum + (issue.code === 'unrecognized_keys' ? issue.keys.length : 1);
	}, 0);
}

/** Of the forms that a union allows, the problems with the one that the value comes nearest to. */
function nearestForm(forms: readonly (readonly Issue[])[]): readonly Issue[] {
	return [...forms].sort((a, b) => distance(a) - distance(b))[0] ?? [];
}

function* told(issues: readonly Issue[], input: unknown, base: readonly PropertyKey[], whole: string): Generator<InputProblem> {
	for (const issue of issues) {
		const path = [...base, ...issue.path];
		if (issue.code === 'unrecognized_keys') {
			for (const key of issue.keys) {
				yield { field: fieldName([...path, key], whole), problem: 'is not known here', remedy: 'leave it out' };
			}
			continue;
		}
		const value = valueAt(input, path);
		if (issue.code === 'invalid_union' && value !== undefined && issue.errors.length > 0) {
			yield* told(nearestForm(issue.errors), input, path, whole);
			continue;
		}
		const { fault, remedy } = wordsOf(issue);
		const found = value === undefined ? 'is missing' : `is ${shown(value)}`;
		const problem = value === undefined || fault === undefined ? found : `${found} and ${fault}`;
		yield { field: fieldName(path, whole), problem: cut(problem, LONGEST_SENTENCE), remedy: cut(remedy, LONGEST_SENTENCE) };
	}
}

/**
 * What a failed schema check found, told field by field; at most the first twenty.
 * @param input what was checked
 */
export function problemsOf(issues: readonly Issue[], input: unknown, options: ProblemOptions = {}): InputProblem[] {
	const found: InputProblem[] = [];
	for (const problem of told(issues, input, options.base ?? [], options.whole ?? 'body')) {
		if (found.push(problem) >= MOST_PROBLEMS) break;
	}
	return found;
}
