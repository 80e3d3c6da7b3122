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
