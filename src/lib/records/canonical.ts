import canonicalize from 'canonicalize';

/**
 * @returns the one way in which a JSON value is written: RFC 8785 (JSON Canonicalization Scheme). Two that hold the
 * same are the same text, so that a hash or a signature of it can be checked by anybody.
 * @throws TypeError for what is no JSON value: undefined, a function, a number that is none
 */
export function canonicalJson(value: unknown): string {
	const text = canonicalize(value);
	if (text === undefined) throw new TypeError('This is no JSON value');
	return text;
}

/**
 * Whether a text is written in that one way. Quicker than writing its value anew: it is, where nothing but the order of
 * the names could differ, and that is looked at.
 * @param value what `JSON.parse` makes of the text
 */
export function isCanonical(text: string, value: unknown): boolean {
	return JSON.stringify(value) === text && isSorted(value);
}

function isSorted(value: unknown): boolean {
	if (typeof value !== 'object' || value === null) return true;
	if (Array.isArray(value)) return value.every(isSorted);
	let before: string | undefined;
	for (const [name, held] of Object.entries(value)) {
		// By UTF-16 code units, as RFC 8785 (section 3.2.3) sorts, and as texts are compared here.
		if ((before !== undefined && name < before) || !isSorted(held)) return false;
		before = name;
	}
	return true;
}
