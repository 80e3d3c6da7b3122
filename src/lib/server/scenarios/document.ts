/** Scenarios as texts: what comes from a file, a field or the authoring page is read here before anything else looks at it. */
import type { InputProblem } from '../problems.ts';

/** The longest document, bytes of UTF-8. @reason the longest shipped scenario has a tenth; what reads and keeps them must stay cheap. */
export const LONGEST_DOCUMENT = 64 * 1024;

/** How deep lists and objects may lie in one another. @reason a scenario needs seven. */
const DEEPEST = 16;

/** How much of a name is said back, characters. */
const LONGEST_NAME = 40;

/** A JSON object. */
export type JsonObject = Readonly<Record<string, unknown>>;

/** Why a document was not read; `form`: too deep, a name twice, or a name of the language. */
export type DocumentFault = 'empty' | 'too-long' | 'not-utf-8' | 'not-json' | 'not-one' | 'form';

/** What came of reading a document. */
export type DocumentReading =
	| { readonly kind: 'read'; readonly value: JsonObject }
	| { readonly kind: 'refused'; readonly why: DocumentFault; readonly problems: readonly InputProblem[] };

/** Refuses what is not UTF-8; a mark of the byte order at the beginning is left out. */
const utf8 = new TextDecoder('utf-8', { fatal: true });

/** Name of the whole in problems. */
const WHOLE = 'document';

function refused(why: DocumentFault, problem: string, remedy: string): DocumentReading {
	return { kind: 'refused', why, problems: [{ field: WHOLE, problem, remedy }] };
}

/**
 * Reads a document: one JSON object within LONGEST_DOCUMENT, in UTF-8, not too deep, no name twice in one object, and
 * none that would be taken for a part of the language. What it says of a scenario is not looked at.
 * @param source text, or the bytes of a file
 */
export function readDocument(source: string | Uint8Array): DocumentReading {
	const length = typeof source === 'string' ? Buffer.byteLength(source) : source.length;
	if (length > LONGEST_DOCUMENT) {
		return refused('too-long', `is ${length} bytes long`, `give at most ${LONGEST_DOCUMENT} bytes, which is one scenario`);
	}
	const text = textOf(source);
	if (text === undefined) return refused('not-utf-8', 'is not in UTF-8', 'save the file as UTF-8 and give it again');
	if (text.trim() === '') return refused('empty', 'is empty', 'give the JSON of one scenario');
	let value: unknown;
	try {
		value = JSON.parse(text);
	} catch (error) {
		return refused('not-json', `is not JSON${placeIn(text, error)}`, 'give a scenario as this program exports it');
	}
	if (typeof value !== 'object' || value === null || Array.isArray(value)) {
		return refused('not-one', `is ${Array.isArray(value) ? 'a list' : 'one value'}`, 'give one JSON object, which begins with {');
	}
	const fault = faultIn(text);
	if (fault !== undefined) return { kind: 'refused', why: 'form', problems: [fault] };
	return { kind: 'read', value: value as JsonObject };
}

/** @returns a text without the mark of the byte order before it, which is no JSON: so a document is kept. */
export function withoutMark(text: string): string {
	return text.replace(/^\uFEFF/, '');
}

/** @returns a document that is stored: it was read before it was. */
export function storedDocument(text: string): JsonObject {
	return JSON.parse(text) as JsonObject;
}

/** The text, or undefined for what is not UTF-8. */
function textOf(source: string | Uint8Array): string | undefined {
	if (typeof source === 'string') return source.isWellFormed() ? withoutMark(source) : undefined;
	try {
		return utf8.decode(source);
	} catch {
		return undefined;
	}
}

/** Where the text stops being JSON, as the engine tells it: ` at line 3, column 14`. */
function placeIn(text: string, error: unknown): string {
	const told = error instanceof Error ? /position (\d+)/.exec(error.message)?.[1] : undefined;
	const at = told === undefined ? text.length : Number(told);
	const before = text.slice(0, at).split('\n');
	return ` at line ${before.length}, column ${(before.at(-1) ?? '').length + 1}`;
}

/** Where one is in a document: the names seen in an object, or the place in a list. */
interface Level {
	readonly seen: Set<string> | undefined;
	at: string | number;
}

/** Texts with the colon that makes a name of them, and what opens, parts and closes; all else says nothing of the form. */
const TOKENS = /"(?:[^"\\]|\\.)*"(\s*:)?|[[\]{},]/gs;

/** What is wrong with the form of a text that is JSON: too deep, a name twice, a name of the language. The engine takes all three. */
function faultIn(text: string): InputProblem | undefined {
	const levels: Level[] = [];
	const field = (): string => levels.map(({ at }) => at).join('.');
	for (const [token, colon] of text.matchAll(TOKENS)) {
		const here = levels.at(-1);
		if (token === '{' || token === '[') {
			if (levels.length >= DEEPEST) return { field: field(), problem: `is deeper than ${DEEPEST} lists and objects in one another`, remedy: 'leave it out' };
			levels.push(token === '{' ? { seen: new Set(), at: '' } : { seen: undefined, at: 0 });
		} else if (token === '}' || token === ']') {
			levels.pop();
		} else if (token === ',') {
			if (here !== undefined && typeof here.at === 'number') here.at += 1;
		} else if (colon !== undefined && here?.seen !== undefined) {
			const name = JSON.parse(token.slice(0, token.length - colon.length)) as string;
			here.at = name.slice(0, LONGEST_NAME);
			if (name === '__proto__') return { field: field(), problem: 'is not known here', remedy: 'leave it out' };
			if (here.seen.has(name)) return { field: field(), problem: 'is there twice', remedy: 'leave one of the two out' };
			here.seen.add(name);
		}
	}
	return undefined;
}

/** @returns a document under the id and version that it has here, whatever it said before. */
export function named(document: JsonObject, id: string, version: number): JsonObject {
	return Object.assign({ id, version }, document, { id, version });
}
