import { expect, it } from 'vitest';
import { canonicalJson } from '#lib/records/index.ts';

// RFC 8785, section 3.2.2 and 3.2.3: the example of the standard.
it('writes the example of RFC 8785 as the standard does', () => {
	const value: unknown = JSON.parse(String.raw`{
		"numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
		"string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
		"literals": [null, true, false]
	}`);
	expect(canonicalJson(value)).toBe('{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\\u000f\\nA\'B\\"\\\\\\\\\\"/"}');
});

it('refuses what is no JSON value', () => {
	expect(() => canonicalJson(undefined)).toThrow(TypeError);
	expect(() => canonicalJson({ n: NaN })).toThrow();
});
