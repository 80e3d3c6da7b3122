/** Outside checks of what makes records provable: the one way of writing JSON, the chain, the tree over it. */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { canonicalJson, isCanonical } from '#lib/records/index.ts';
import { BEFORE_FIRST, GrowingTree, entryHash, sha256 } from '#lib/server/records/chain.ts';
import { evidenceDigest } from '#lib/server/records/evidence.ts';

/** @source the test data published with RFC 8785 (its appendix F names them): files values, structures, weird, french, arrays */
const PUBLISHED: readonly (readonly [string, string, string])[] = [
	[
		'values',
		String.raw`{ "numbers": [1E30, 4.50, 333333333.33333329, 2e-3, 0.000000000000000000000000001], "escaping": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/", "literals": [null, true, false] }`,
		String.raw`{"escaping":"€$\u000f\nA'B\"\\\\\"/","literals":[null,true,false],"numbers":[1e+30,4.5,333333333.3333333,0.002,1e-27]}`
	],
	['structures', String.raw`{ "1": {"f": {"f": "hi","F": 5} ,"\n": 56.0}, "10": { }, "": "empty", "a": { }, "111": [ { } ], "A": { } }`, String.raw`{"":"empty","1":{"\n":56,"f":{"F":5,"f":"hi"}},"10":{},"111":[{}],"A":{},"a":{}}`],
	[
		'weird',
		String.raw`{ "\u20ac": "Euro Sign", "1": "One", "\u0080": "Control\u007f", "\ud83d\ude02": "Smiley", "\u00f6": "Latin Small Letter O With Diaeresis", "\ufb33": "Hebrew Letter Dalet With Dagesh", "</script>": "Browser Challenge" }`,
		'{"1":"One","</script>":"Browser Challenge","\u0080":"Control\u007f","\u00f6":"Latin Small Letter O With Diaeresis","\u20ac":"Euro Sign","\u{1f602}":"Smiley","\ufb33":"Hebrew Letter Dalet With Dagesh"}'
	],
	[
		'french',
		'{ "peach": "This sorting order", "péché": "is wrong according to French", "pêche": "but canonicalization MUST", "sin": "ingnore locale" }',
		'{"peach":"This sorting order","péché":"is wrong according to French","pêche":"but canonicalization MUST","sin":"ingnore locale"}'
	],
	['arrays', '[ 56, { "d": true, "10": null, "1": [ ] } ]', '[56,{"1":[],"10":null,"d":true}]']
];

/** @source RFC 8785, appendix B: numbers by their bits (IEEE 754), and how they are written; from memory */
const NUMBERS: readonly (readonly [string, string])[] = [
	['0000000000000000', '0'],
	['8000000000000000', '0'],
	['0000000000000001', '5e-324'],
	['8000000000000001', '-5e-324'],
	['7fefffffffffffff', '1.7976931348623157e+308'],
	['ffefffffffffffff', '-1.7976931348623157e+308'],
	['4340000000000000', '9007199254740992'],
	['c340000000000000', '-9007199254740992'],
	['4430000000000000', '295147905179352830000'],
	['44b52d02c7e14af5', '9.999999999999997e+22'],
	['44b52d02c7e14af6', '1e+23'],
	['44b52d02c7e14af7', '1.0000000000000001e+23'],
	['444b1ae4d6e2ef4e', '999999999999999700000'],
	['444b1ae4d6e2ef4f', '999999999999999900000'],
	['444b1ae4d6e2ef50', '1e+21'],
	['3eb0c6f7a0b5ed8c', '9.999999999999997e-7'],
	['3eb0c6f7a0b5ed8d', '0.000001'],
	['41b3de4355555553', '333333333.3333332'],
	['41b3de4355555554', '333333333.33333325'],
	['41b3de4355555555', '333333333.3333333'],
	['41b3de4355555556', '333333333.3333334'],
	['41b3de4355555557', '333333333.33333343'],
	['becbf647612f3696', '-0.0000033333333333333333'],
	['43143ff3c1cb0959', '1424953923781206.2']
];

describe('The one way of writing JSON (RFC 8785)', () => {
	it.each(PUBLISHED)('gives the published output of %s', (_, input, output) => {
		expect(canonicalJson(JSON.parse(input))).toBe(output);
	});

	it.each(NUMBERS)('writes the number of bits %s as %s', (bits, written) => {
		expect(canonicalJson(Buffer.from(bits, 'hex').readDoubleBE())).toBe(written);
	});

	// RFC 8785, section 3.2.2.3: numbers that JSON has no form for are errors.
	it.each([NaN, Infinity, -Infinity])('has no form for %s', (number) => {
		expect(() => canonicalJson(number)).toThrow();
	});

	it('is told apart from every other way of writing the same', () => {
		// From memory: JSON.parse keeps names that look like whole numbers in another order, which no entry has.
		const name = fc.string({ unit: 'binary' }).filter((text) => !/^\d+$/.test(text) && text !== '__proto__');
		const { value } = fc.letrec<{ value: unknown }>((tie) => ({
			value: fc.oneof({ maxDepth: 3 }, fc.string({ unit: 'binary' }), fc.double({ noNaN: true, noDefaultInfinity: true }), fc.boolean(), fc.constant(null), fc.array(tie('value'), { maxLength: 4 }), fc.dictionary(name, tie('value'), { maxKeys: 4 }))
		}));
		fc.assert(
			fc.property(value, (one) => {
				const text = canonicalJson(one);
				expect(isCanonical(text, JSON.parse(text))).toBe(true);
				const other = JSON.stringify(one);
				expect(isCanonical(other, JSON.parse(other))).toBe(other === text);
			})
		);
		expect(isCanonical('{"a":1, "b":2}', { a: 1, b: 2 })).toBe(false);
		expect(isCanonical('{"b":1,"a":2}', { b: 1, a: 2 })).toBe(false);
		expect(isCanonical('{"a":1,"a":1}', JSON.parse('{"a":1,"a":1}'))).toBe(false);
	});
});

describe('The chain', () => {
	// The project's own vectors, computed beforehand with another implementation of RFC 8785 and SHA-256.
	it('gives the two hashes that were computed beforehand', () => {
		const first = entryHash(1, BEFORE_FIRST, canonicalJson({ learner: 'a', t: 'enrolled' }));
		expect(first).toBe('8b7a84f37f7b01c5c75c2088085af2e600cd0939c0370a1d3119dd3c4b9dadf2');
		const second = entryHash(2, first, canonicalJson({ learner: 'a', score: { max: 12, raw: 10 }, t: 'passed' }));
		expect(second).toBe('d65e6444c607ab4ba7c682f8e97116bb614159a152fe25a57311d100c1c41704');
	});

	// RFC 8785: the hash is over the canonical JSON of { payload, prev, seq }, however that is put together.
	it('hashes the canonical JSON of number, link and payload', () => {
		const payload = { who: 'é', numbers: [1e21, 0.1] };
		expect(entryHash(7, 'ab'.repeat(32), canonicalJson(payload))).toBe(sha256(canonicalJson({ seq: 7, prev: 'ab'.repeat(32), payload })));
	});

	// FIPS 180-4, the example "abc".
	it('hashes by SHA-256', () => {
		expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
	});
});

describe('The digest of a check', () => {
	// RFC 8785: what it is said to be, put together by the general way.
	it('is over the canonical JSON of the try and its events', () => {
		const text = fc.string({ unit: 'binary' });
		const tried = fc.record({ id: text, person_id: text, lesson: text, nth: fc.nat(), rule: text, seed: text, language: text, supervision: fc.option(text), day: text, at: text });
		const event = fc.record({ id: text, check_id: text, seq: fc.nat(), kind: text, sent: text, payload: text, at: text });
		fc.assert(
			fc.property(tried, fc.array(event, { maxLength: 3 }), (of, events) => {
				expect(evidenceDigest(of, events)).toBe(sha256(canonicalJson({ try: of, events })));
			})
		);
	});
});

/** @source the leaves that implementations of RFC 6962 are tested with, and the roots of the first so many of them; those of 4 to 7 from memory */
const LEAVES = ['', '00', '10', '2021', '3031', '40414243', '5051525354555657', '606162636465666768696a6b6c6d6e6f'];
const ROOTS = [
	'e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855',
	'6e340b9cffb37a989ca544e6bb780a2c78901d3fb33738768511a30617afa01d',
	'fac54203e7cc696cf0dfcb42c92a1d9dbaf70ad9e621f4bd8d98662f00e3c125',
	'aeb6bcfe274b70a14fb067a5e5578264db0fa9b51af5e0ba159158f329e06e77',
	'd37ee418976dd95753c1c73862b9398fa2a2cf9b4ff0fdfe8b30cd95209614b7',
	'4e3bbb1f7b478dcfe71fb631631519a3bca12c9aefca1612bfce4c13a86264d4',
	'76e67dadbcdf1e10e1b74ddc608abd2f98dfb16fbce75277b5232a127f2087ef',
	'ddb89be403809e325750d3d263cd78929c2942b7942a34b77e122c9594a74c8c',
	'5dc9da79a70659a9ad559cb701ded9a2ab9d823aad2f4960cfe370eff4604328'
];

/** The tree as RFC 6962, section 2.1, defines it: split at the largest power of two below its size. */
function defined(leaves: readonly Buffer[]): Buffer {
	const [first] = leaves;
	const hash = (prefix: number, ...parts: readonly Buffer[]): Buffer => createHash('sha256').update(Buffer.concat([Buffer.of(prefix), ...parts])).digest();
	if (first === undefined) return createHash('sha256').digest();
	if (leaves.length === 1) return hash(0, first);
	let split = 1;
	while (2 * split < leaves.length) split *= 2;
	return hash(1, defined(leaves.slice(0, split)), defined(leaves.slice(split)));
}

function grown(leaves: readonly Buffer[], tree = new GrowingTree()): GrowingTree {
	for (const leaf of leaves) tree.add(leaf);
	return tree;
}

describe('The tree over a chain (RFC 6962)', () => {
	it.each(ROOTS.map((root, size) => [size, root] as const))('of the first %i published leaves has the published root', (size, root) => {
		expect(grown(LEAVES.slice(0, size).map((hex) => Buffer.from(hex, 'hex'))).root()).toBe(root);
	});

	// RFC 6962, section 2.1, by its recursive definition.
	it('has the root of the definition at every size up to 200', () => {
		const leaves: Buffer[] = [];
		const tree = new GrowingTree();
		for (let size = 1; size <= 200; size += 1) {
			const leaf = Buffer.from(sha256(String(size)), 'hex');
			leaves.push(leaf);
			tree.add(leaf);
			expect(tree.root()).toBe(defined(leaves).toString('hex'));
			expect(tree.edge().length).toBe([...size.toString(2)].filter((digit) => digit === '1').length);
		}
	});

	// RFC 6962, section 2.1: a tree that goes on from its edge is the same tree.
	it('goes on from its edge as if it had never been put away', () => {
		const leaves = Array.from({ length: 77 }, (_, i) => Buffer.from(sha256(String(i)), 'hex'));
		for (let cut = 0; cut <= leaves.length; cut += 1) {
			const before = grown(leaves.slice(0, cut));
			const after = grown(leaves.slice(cut), GrowingTree.from(cut, before.edge()));
			expect([after.size, after.root()]).toEqual([leaves.length, defined(leaves).toString('hex')]);
		}
		expect(() => GrowingTree.from(3, ['00'])).toThrow(RangeError);
	});
});
