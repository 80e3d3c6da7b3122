import type { ZodError, ZodType } from 'zod';

/** What is wrong with one field of what was sent. */
export interface InputProblem {
	/** Path of the field, e.g. `answers.free-fall`, or `body` for the whole. */
	readonly field: string;
	/** What is wrong, to be read after the field's name. */
	readonly problem: string;
	/** What would be right. */
	readonly remedy: string;
}

/** What came of reading: the value, or an HTTP status and every problem found. */
export type InputResult<Value> =
	| { readonly kind: 'read'; readonly value: Value }
	| { readonly kind: 'refused'; readonly status: number; readonly problems: readonly InputProblem[] };

/** The longest body that is read, bytes. Answers are far shorter; a longer one is no answer. */
export const LONGEST_BODY = 64 * 1024;

/** How much of a wrong value is said back, characters. */
const SAID_BACK = 40;

type Issue = ZodError['issues'][number];

function refused(status: number, problem: string, remedy: string): InputResult<never> {
	return { kind: 'refused', status, problems: [{ field: 'body', problem, remedy }] };
}

function fieldName(path: readonly PropertyKey[]): string {
	return path.length === 0 ? 'body' : path.map(String).join('.');
}

/** The value that stands at a path, or undefined where the path ends early. */
function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
	let at = input;
	for (const key of path) {
		if (typeof at !== 'object' || at === null) return undefined;
		at = Object.entries(at).find(([name]) => name === String(key))?.[1];
	}
	return at;
}

/** A value as it is said back: as JSON, cut short. */
function shown(value: unknown): string {
	const text = JSON.stringify(value) ?? String(value);
	return text.length > SAID_BACK ? `${text.slice(0, SAID_BACK)}…` : text;
}

/** What is asked for where the type is wrong, in words. */
const TYPES: Readonly<Record<string, string>> = {
	string: 'a text',
	number: 'a number',
	int: 'a whole number',
	boolean: 'true or false',
	array: 'a list',
	object: 'an object',
	record: 'an object'
};

/** What a bound counts, after the number. */
const COUNTED: Readonly<Record<string, string>> = {
	string: ' characters',
	array: ' entries'
};

/** What would be right, in words. */
function remedyOf(issue: Issue): string {
	switch (issue.code) {
		case 'invalid_type':
			return `give ${TYPES[issue.expected] ?? issue.expected}`;
		case 'too_small':
			return `give ${issue.inclusive === false ? 'more than' : 'at least'} ${issue.minimum}${COUNTED[issue.origin] ?? ''}`;
		case 'too_big':
			return `give ${issue.inclusive === false ? 'less than' : 'at most'} ${issue.maximum}${COUNTED[issue.origin] ?? ''}`;
		case 'invalid_value':
			return `give ${issue.values.length > 1 ? 'one of ' : ''}${issue.values.map(shown).join(', ')}`;
		default:
			return issue.message;
	}
}

/** Of the forms that a union allows, the problems with the one that the value comes nearest to. */
function nearestForm(forms: readonly (readonly Issue[])[]): readonly Issue[] {
	return [...forms].sort((a, b) => a.length - b.length)[0] ?? [];
}

/**
 * What a failed schema check found, told field by field.
 * @param input what was checked
 * @param base path of the part that the issues are about
 */
export function problemsOf(
	issues: readonly Issue[],
	input: unknown,
	base: readonly PropertyKey[] = []
): InputProblem[] {
	return issues.flatMap((issue) => {
		const path = [...base, ...issue.path];
		if (issue.code === 'unrecognized_keys') {
			return issue.keys.map((key) => ({
				field: fieldName([...path, key.slice(0, SAID_BACK)]),
				problem: 'is not known here',
				remedy: 'leave it out'
			}));
		}
		const value = valueAt(input, path);
		if (issue.code === 'invalid_union' && value !== undefined && issue.errors.length > 0) {
			return problemsOf(nearestForm(issue.errors), input, path);
		}
		return [
			{
				field: fieldName(path),
				problem: value === undefined ? 'is missing' : `is ${shown(value)}`,
				remedy: remedyOf(issue)
			}
		];
	});
}

/** The bytes of a body, or null when there are more than allowed: the rest is not read. */
async function limitedBytes(request: Request, most: number): Promise<Uint8Array | null> {
	if (Number(request.headers.get('content-length') ?? '0') > most) return null;
	const parts: Uint8Array[] = [];
	let length = 0;
	for await (const part of request.body ?? []) {
		length += part.length;
		if (length > most) return null;
		parts.push(part);
	}
	return Buffer.concat(parts);
}

/**
 * Reads a request's JSON and checks it against a schema.
 * Refused are: another content type (415), more than LONGEST_BODY (413), what is not JSON (400), what does not
 * fit the schema (400).
 */
export async function readJson<Value>(
	request: Request,
	schema: ZodType<Value>
): Promise<InputResult<Value>> {
	const type = request.headers.get('content-type') ?? '';
	if (!/^application\/json\s*(;|$)/i.test(type)) {
		return refused(415, 'is not declared as JSON', 'send it with content-type: application/json');
	}
	const bytes = await limitedBytes(request, LONGEST_BODY);
	if (bytes === null) {
		return refused(413, `is longer than ${LONGEST_BODY} bytes`, 'send one answer at a time');
	}
	let input: unknown;
	try {
		input = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes));
	} catch {
		return refused(400, 'is not JSON', 'send one JSON object in UTF-8');
	}
	const parsed = schema.safeParse(input);
	if (parsed.success) return { kind: 'read', value: parsed.data };
	return { kind: 'refused', status: 400, problems: problemsOf(parsed.error.issues, input) };
}
