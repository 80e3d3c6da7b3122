/**
 * A scenario as its author writes it: plain JSON that may be unfinished or wrong anywhere. Every change makes a new
 * document, and what a form does not know stays as it is.
 */

export type Json = string | number | boolean | null | readonly Json[] | JsonObject;

export interface JsonObject {
	readonly [key: string]: Json;
}

/** Where something stands: names of fields and places in lists. */
export type Path = readonly (string | number)[];

/** @returns true for an object that is neither null nor a list. */
export function isObject(value: Json | undefined): value is JsonObject {
	return typeof value === 'object' && value !== null && !isList(value);
}

/** @returns true for a list. */
export function isList(value: Json | undefined): value is readonly Json[] {
	return Array.isArray(value);
}

/** @returns what stands at a path, or undefined where nothing does. */
export function at(document: Json, path: Path): Json | undefined {
	let value: Json | undefined = document;
	for (const step of path) {
		if (isList(value)) value = typeof step === 'number' ? value[step] : undefined;
		else if (isObject(value)) value = Object.hasOwn(value, step) ? value[step] : undefined;
		else return undefined;
	}
	return value;
}

/** @returns the text at a path; empty where there is none. A number is written as JSON writes it. */
export function textAt(document: Json, path: Path): string {
	const value = at(document, path);
	return typeof value === 'string' ? value : typeof value === 'number' ? String(value) : '';
}

/** @returns the list at a path; empty where there is none. */
export function listAt(document: Json, path: Path): readonly Json[] {
	const value = at(document, path);
	return isList(value) ? value : [];
}

/** @returns the fields at a path; none where there is no object. */
export function fieldsAt(document: Json, path: Path): JsonObject {
	const value = at(document, path);
	return isObject(value) ? value : {};
}

/**
 * @param value what shall stand there; undefined takes the field out, or the entry of a list.
 * @returns the document with one thing changed. Objects that the path needs are made; what is no object or list on
 * the way is replaced. A document that has that value already comes back itself.
 */
export function put(document: Json, path: Path, value: Json | undefined): Json {
	const [step, ...rest] = path;
	if (step === undefined) return value === undefined ? {} : value;
	if (at(document, path) === value) return document;
	if (typeof step === 'number') {
		const list = isList(document) ? document : [];
		if (rest.length === 0 && value === undefined) return list.filter((_, i) => i !== step);
		const changed = [...list];
		changed[Math.min(step, list.length)] = put(list[step] ?? emptyFor(rest), rest, value);
		return changed;
	}
	const fields = isObject(document) ? document : {};
	if (rest.length === 0 && value === undefined) return Object.fromEntries(Object.entries(fields).filter(([key]) => key !== step));
	const inner = Object.hasOwn(fields, step) ? (fields[step] ?? emptyFor(rest)) : emptyFor(rest);
	return { ...fields, [step]: put(inner, rest, value) };
}

function emptyFor(rest: Path): Json {
	return typeof rest[0] === 'number' ? [] : {};
}

/** @returns the document with one more entry at the end of a list; the list is made where there is none. */
export function append(document: Json, path: Path, entry: Json): Json {
	return put(document, path, [...listAt(document, path), entry]);
}

/** @returns a path as one text, for attributes and keys. */
export function pathKey(path: Path): string {
	return path.join('.');
}

/** @returns true if a path is another one or leads below it. */
export function isBelow(path: Path, above: Path): boolean {
	return above.length <= path.length && above.every((step, i) => String(step) === String(path[i]));
}

/** @returns the text that a document is saved and shown as. */
export function documentText(document: Json): string {
	return `${JSON.stringify(document, null, 2)}\n`;
}

/** @returns the document of a text; undefined where it is no JSON object. */
export function readDocument(text: string): JsonObject | undefined {
	try {
		const value = JSON.parse(text) as Json;
		return isObject(value) ? value : undefined;
	} catch {
		return undefined;
	}
}
