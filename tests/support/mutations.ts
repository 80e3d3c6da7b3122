/** Every field of a document, made wrong in every way that its kind allows. */

/** Keys and places in lists, from the whole down. */
export type Path = readonly (string | number)[];

export interface Mutation {
	/** Where the document was changed; for an unknown key, the key itself. */
	readonly path: Path;
	/** What was done there. */
	readonly how: string;
	readonly document: unknown;
}

/** @returns every path of a document, the whole first, objects and lists before what they hold. */
export function pathsOf(document: unknown, at: Path = []): Path[] {
	if (typeof document !== 'object' || document === null) return [at];
	const entries: [string | number, unknown][] = Array.isArray(document) ? [...document.entries()] : Object.entries(document);
	return [at, ...entries.flatMap(([key, value]) => pathsOf(value, [...at, key]))];
}

/** @returns the value at a path. */
export function valueAt(document: unknown, path: Path): unknown {
	return path.reduce<unknown>((at, key) => (typeof at === 'object' && at !== null ? Reflect.get(at, key) : undefined), document);
}

/** @returns a copy of a document with one value replaced, or left out where `value` is undefined. */
export function withValue(document: unknown, path: Path, value: unknown): unknown {
	const [key, ...rest] = path;
	if (key === undefined) return value;
	if (Array.isArray(document)) {
		return rest.length === 0 && value === undefined
			? document.filter((_, i) => i !== key)
			: document.map((one: unknown, i) => (i === key ? withValue(one, rest, value) : one));
	}
	if (typeof document !== 'object' || document === null) throw new TypeError(`nothing to change at ${path.join('.')}`);
	const changed = Object.entries(document).flatMap(([name, one]: [string, unknown]): [string, unknown][] => {
		if (name !== key) return [[name, one]];
		const next = withValue(one, rest, value);
		return next === undefined ? [] : [[name, next]];
	});
	if (!Object.hasOwn(document, key) && value !== undefined) changed.push([String(key), value]);
	return Object.fromEntries(changed);
}

/** A megabyte of text. */
export const MEGABYTE = 'x'.repeat(1024 * 1024);

/** A quantity as documents write it. */
const QUANTITY = /^-?[\d.]+ (m|kg|kN)$/;

const OF_ANOTHER_KIND: Readonly<Record<string, string>> = { m: '2 kg', kg: '2 m', kN: '2 kg' };

/** Texts that a field for a quantity cannot take. */
function wrongQuantities(text: string): [string, unknown][] {
	const [, unit = ''] = QUANTITY.exec(text) ?? [];
	return [
		['no number', 'much'],
		['NaN', `NaN ${unit}`],
		['infinity', `∞ ${unit}`],
		['a number beyond all', `1e999 ${unit}`],
		['no unit', '1.2'],
		['a number instead of text', 1.2],
		['a unit of another kind', OF_ANOTHER_KIND[unit]],
		['an unknown unit', '2 cubits'],
		['two readings', `1,234 ${unit}`],
		['a sum', `1 ${unit} + 1 ${unit}`],
		['absurdly much', `3000000 ${unit}`],
		['absurdly little', `-3000000 ${unit}`]
	];
}

/** Wrong values in place of a good one, each with a name. */
function wrongValues(value: unknown): [string, unknown][] {
	if (typeof value === 'string') {
		const common: [string, unknown][] = [
			['null', null],
			['true', true],
			['an object', {}],
			['a list', [value]],
			['a megabyte of text', MEGABYTE]
		];
		return QUANTITY.test(value) ? [...common, ...wrongQuantities(value)] : [...common, ['a number', 7]];
	}
	if (typeof value === 'number') {
		return [
			['null', null],
			['a text', String(value)],
			['the text NaN', 'NaN'],
			['NaN', NaN],
			['infinity', Infinity],
			['a list', [value]],
			['a megabyte of text', MEGABYTE]
		];
	}
	if (typeof value === 'boolean') return [['null', null], ['a text', 'yes'], ['a number', 1]];
	if (Array.isArray(value)) return [['null', null], ['a text', 'x'], ['a number', 7], ['an object', { length: 1 }]];
	return [['a text', 'x'], ['a number', 7], ['a list', []], ['a megabyte of text', MEGABYTE]];
}

/** @returns every mutation of a document: each value left out, each value wrong, each object with an unknown key. */
export function* mutationsOf(document: unknown): Generator<Mutation> {
	for (const path of pathsOf(document)) {
		const value = valueAt(document, path);
		if (path.length > 0) yield { path, how: 'left out', document: withValue(document, path, undefined) };
		for (const [how, wrong] of wrongValues(value)) yield { path, how, document: withValue(document, path, wrong) };
		if (typeof value === 'object' && value !== null && !Array.isArray(value)) {
			for (const key of ['surprise', 'k'.repeat(5000)]) {
				yield { path: [...path, key], how: 'unknown key', document: withValue(document, [...path, key], 1) };
			}
		}
	}
}

/** @returns a path as problems name it: keys cut short, joined by dots. */
export function fieldOf(path: Path): string {
	return path.map((key) => String(key)).map((key) => (key.length > 40 ? `${key.slice(0, 40)}…` : key)).join('.');
}
