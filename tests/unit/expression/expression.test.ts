import { describe, expect, test } from 'vitest';
import {
	compile,
	constant,
	evaluate,
	extreme,
	fromRecord,
	given,
	givensIn,
	minus,
	named,
	plus,
	printText,
	product,
	quotient,
	rewrite,
	root,
	sameTree,
	square,
	stepsOf,
	sum,
	valuesOf,
	type Writing
} from '#lib/expression/index.ts';
import { AREA, LENGTH, MASS, RATIO } from '#lib/quantity/index.ts';

const a = given('a', LENGTH);
const b = given('b', LENGTH);
const c = given('c', LENGTH);
const m = given('m', MASS);
const plain: Writing = { given: (id) => id, named: () => undefined, constant: (name) => name, signs: 'plain' };
const typeset: Writing = { ...plain, signs: 'typeset' };

describe('dimensions are checked when a node is built', () => {
	test('a length and a mass cannot be added, and the message names both terms', () => {
		expect(() => sum([plus('reach', a), plus('load', m)])).toThrow(/load is a mass.*reach a length/s);
	});
	test('nor compared', () => {
		expect(() => extreme('least', [{ role: 'reach', of: a }, { role: 'load', of: m }])).toThrow(/load is a mass/);
	});
	test('a length has no square root, an area has', () => {
		expect(() => root(a)).toThrow();
		expect(root(square(a)).dimension).toEqual(LENGTH);
		expect(square(a).dimension).toEqual(AREA);
		expect(quotient(a, b).dimension).toEqual(RATIO);
	});
	test('empty sums, products and extremes are refused', () => {
		expect(() => sum([])).toThrow(RangeError);
		expect(() => product([])).toThrow(RangeError);
		expect(() => extreme('greatest', [])).toThrow(RangeError);
		expect(() => constant('x', NaN)).toThrow(RangeError);
	});
	test('a rewrite that breaks a dimension is refused', () => {
		expect(() => rewrite(sum([plus('x', a), plus('y', b)]), (n) => (n === b ? m : undefined))).toThrow(TypeError);
	});
});

const tree = named(
	'whole',
	sum([
		plus('hypotenuse', named('h', root(sum([plus('a', square(a)), minus('b', square(b))])))),
		minus('less', quotient(product([a, b]), sum([plus('b', b), plus('c', c)]))),
		plus('most', extreme('greatest', [{ role: 'b', of: b }, { role: 'c', of: c }]))
	])
);
const values = fromRecord({ a: 5, b: 3, c: 2 });

test('evaluates: √(25 − 9) − 15 ÷ 5 + 3', () => {
	expect(evaluate(tree, values)).toBe(4 - 3 + 3);
});

test('a given without a value is named', () => {
	expect(() => evaluate(tree, fromRecord({ a: 5, b: 3 }))).toThrow(/given c/);
});

test('a compiled program gives the same bits as the tree, variants and all', () => {
	const other = rewrite(tree, (n) => (n === c ? a : undefined));
	const program = compile([tree, other], ['a', 'b', 'c']);
	for (const [x, y, z] of [
		[5, 3, 2],
		[0.1 + 0.2, 0.1, 0.7],
		[1.83, 1.2, 0.05]
	] as const) {
		const read = fromRecord({ a: x, b: y, c: z });
		expect([...valuesOf(program, [x, y, z])]).toEqual([evaluate(tree, read), evaluate(other, read)]);
	}
});

test('equal parts are computed once', () => {
	const one = compile([tree], ['a', 'b', 'c']);
	const twice = compile([tree, tree, named('again', tree.of)], ['a', 'b', 'c']);
	expect(twice.registers.length).toBe(one.registers.length);
});

test('sums that share a beginning keep it, and long ones are added in the order they are written', () => {
	const shared = sum([plus('a', a), minus('b', b)]);
	const long = sum([plus('shared', shared), plus('c', c), minus('a', a), plus('b', b), plus('c', c), plus('a', a), minus('c', c), plus('b', b)]);
	const trees = [long, shared, sum([minus('shared', shared), plus('long', long)])];
	const program = compile(trees, ['a', 'b', 'c']);
	const values = [0.1 + 0.2, 1e16, 0.7] as const;
	const read = fromRecord({ a: values[0], b: values[1], c: values[2] });
	expect([...valuesOf(program, values)]).toEqual(trees.map((one) => evaluate(one, read)));
});

test('a program names an input it lacks', () => {
	expect(() => compile([tree], ['a', 'b'])).toThrow(/given c/);
});

test('prints for a calculator and typeset, with brackets only where they are needed', () => {
	expect(printText(tree, plain)).toBe('sqrt(a^2 - b^2) - a * b / (b + c) + max(b, c)');
	expect(printText(tree, typeset)).toBe('√(a² − b²) − a × b ÷ (b + c) + max(b; c)');
	expect(printText(tree, { ...typeset, named: (id) => (id === 'h' ? 'h' : undefined) })).toBe('h − a × b ÷ (b + c) + max(b; c)');
	expect(printText(sum([minus('x', sum([plus('a', a), plus('b', b)])), plus('c', c)]), plain)).toBe('-(a + b) + c');
});

test('negative numbers in the place of symbols take brackets', () => {
	const numbers: Writing = { ...typeset, given: (id) => (id === 'b' ? '−0.30' : '2.00') };
	expect(printText(sum([plus('a', a), minus('b', b)]), numbers)).toBe('2.00 − (−0.30)');
});

test('an untouched tree stays the same object, a touched one shares its untouched parts', () => {
	expect(rewrite(tree, () => undefined)).toBe(tree);
	const touched = rewrite(tree, (n) => (n === c ? a : undefined));
	expect(touched).not.toBe(tree);
	expect(sameTree(touched, tree)).toBe(false);
	expect(touched.kind === 'named' && touched.of.kind === 'sum' && tree.of.kind === 'sum' && touched.of.terms[0] === tree.of.terms[0]).toBe(true);
});

test('lists givens and steps in the order of the working', () => {
	expect(givensIn(tree)).toEqual(['a', 'b', 'c']);
	expect(stepsOf(tree, values).map((step) => [step.id, step.value])).toEqual([
		['h', 4],
		['whole', 4]
	]);
});

test('nodes are frozen', () => {
	expect(Object.isFrozen(tree)).toBe(true);
	expect(tree.of.kind === 'sum' && Object.isFrozen(tree.of.terms)).toBe(true);
});
