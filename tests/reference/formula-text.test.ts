/**
 * The text that formulas are printed as says what the engine computes: mathjs, which knows nothing of the
 * trees, reads 10,000 printed formulas over random givens and gets the engine's value. Outside library: mathjs.
 */
import { compile, type EvalFunction } from 'mathjs';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { describe, expect, test } from 'vitest';
import {
	DATUMS,
	QUANTITIES,
	formula,
	givenSymbol,
	isGivenId,
	isQuantityId,
	targetKey,
	type QuantityId,
	type Shape,
	type Target
} from '#lib/arrest/index.ts';
import { evaluate, fromRecord, givensIn, namedIn, printText, type Node, type Writing } from '#lib/expression/index.ts';
import { STANDARD_GRAVITY } from '#lib/quantity/index.ts';

const FORMULAS = 10_000;
const SEED = 271828;
/** Relative; the two sides may add in another order. */
const WITHIN = 1e-12;

const random = xoroshiro128plus(SEED);
const unit = (): number => uniformInt(random, 0, 999_999_999) / 1e9;
const between = (low: number, high: number): number => low + (high - low) * unit();
const often = (share = 0.5): boolean => unit() < share;
const some = <T>(of: readonly T[]): T => {
	const one = of[uniformInt(random, 0, of.length - 1)];
	if (one === undefined) throw new RangeError('nothing to choose from');
	return one;
};

function randomShape(): Shape {
	return {
		connector: often(),
		offset: often(),
		lowered: often(0.4),
		raised: often(0.4),
		absorber: often(0.8),
		conditioned: often(0.3),
		slide: often(),
		stretch: often(),
		custom: some(['d-ring-and-stretch', 'full-height'] as const),
		obstacles: ['kerb', 'stack2', 'lorry'].filter(() => often(0.4)),
		masses: (['clothingMass', 'equipmentMass', 'toolsMass'] as const).filter(() => often()),
		capacities: (['labelMassMax', 'harnessCapacity', 'lanyardCapacity', 'connectorCapacity'] as const).filter(() => often())
	};
}

/** Numbers of a plan that can be rigged, so that every root is real. */
function randomNumbers(shape: Shape): Readonly<Record<string, number>> {
	const lanyardLength = between(0.9, 2.2);
	const connectorLength = shape.connector ? between(0.2, 1.2) : 0;
	const line = lanyardLength + connectorLength;
	const offset = shape.offset ? between(0.05, 0.9) * line : 0;
	const dRingHeight = between(1.2, 1.6);
	const dRingNow = between(0.5, dRingHeight);
	const standingHeight = between(0.1, 1.5);
	const start = (shape.lowered ? dRingNow : dRingHeight) + (shape.raised ? standingHeight : 0);
	return {
		lanyardLength,
		connectorLength,
		offset,
		dRingHeight,
		dRingNow,
		standingHeight,
		anchorageHeight: start + between(-1.5, 0.9 * Math.sqrt(line * line - offset * offset)),
		stature: dRingHeight + between(0.2, 0.4),
		elongation: between(0.2, 1.75),
		dRingSlide: between(0.05, 0.5),
		harnessStretch: between(0.05, 0.5),
		margin: between(0.5, 1.2),
		lowerLevelDepth: between(3, 30),
		bodyMass: between(50, 100),
		clothingMass: between(1, 5),
		equipmentMass: between(2, 10),
		toolsMass: between(1, 12),
		labelMassMax: between(90, 180),
		harnessCapacity: between(90, 180),
		lanyardCapacity: between(90, 180),
		connectorCapacity: between(90, 180),
		peakForce: between(3500, 8000),
		conditionedForce: between(4000, 9000),
		averageForce: between(2000, 6000),
		...Object.fromEntries(
			shape.obstacles.flatMap((id) => [
				[`obstacleTop_${id}`, between(0.2, 2.5)],
				[`obstacleAside_${id}`, between(0, offset)]
			])
		)
	};
}

const IDS = Object.keys(QUANTITIES).filter(isQuantityId);

/** Which plans have no such quantity; formula() throws for them. */
function offers(quantity: QuantityId, shape: Shape): boolean {
	switch (quantity) {
		case 'stretchOut':
		case 'extraStretch':
			return shape.slide || shape.stretch;
		case 'highestBelow':
		case 'speedAtObstacle':
			return shape.obstacles.length > 0;
		case 'lowestCapacity':
		case 'capacitySpare':
			return shape.capacities.length > 0;
		default:
			return true;
	}
}

function targetFor(quantity: QuantityId, shape: Shape): Target {
	if (quantity === 'requiredClearance' || quantity === 'availableClearance') return { quantity, datum: some(DATUMS) };
	return quantity === 'speedAtObstacle' ? { quantity, obstacle: some(shape.obstacles) } : { quantity };
}

const symbolOf = (id: string): string => {
	if (!isGivenId(id)) throw new TypeError(`${id} is no given`);
	return givenSymbol(id);
};

/** A constant that is a figure of the formula prints as itself, one with a name (g) as its name. */
const inSymbols: Writing = { given: symbolOf, named: () => undefined, constant: (name) => name, signs: 'plain' };

function inNumbers(numbers: Readonly<Record<string, number>>): Writing {
	return {
		given: (id) => String(fromRecord(numbers)(id)),
		named: () => undefined,
		constant: (_, value) => String(value),
		signs: 'plain'
	};
}

/** What a person does who types a typeset formula into a calculator. */
function retyped(text: string): string {
	const keys: Readonly<Record<string, string>> = { '−': '-', '×': '*', '÷': '/', '²': '^2', '√': 'sqrt', ';': ',' };
	return text.replace(/[−×÷²√;]/g, (sign) => keys[sign] ?? sign);
}

const compiled = new Map<string, EvalFunction>();
function mathjs(text: string, scope: Readonly<Record<string, number>>): number {
	const code = compiled.get(text) ?? compile(text);
	compiled.set(text, code);
	const value: unknown = code.evaluate({ ...scope });
	if (typeof value !== 'number') throw new TypeError(`${text} is no number but ${String(value)}`);
	return value;
}

function symbols(node: Node, numbers: Readonly<Record<string, number>>): Record<string, number> {
	const scope: Record<string, number> = { g: STANDARD_GRAVITY };
	for (const id of givensIn(node)) scope[symbolOf(id)] = fromRecord(numbers)(id);
	return scope;
}

/** Follows the printed working: each named part from its own line, with the parts before it under names of ours. */
function stepByStep(node: Node, numbers: Readonly<Record<string, number>>, signs: Writing['signs']): number {
	const scope = symbols(node, numbers);
	const parts = namedIn(node);
	const nameOf = (id: string): string => `part_${parts.findIndex((part) => part.id === id)}`;
	const writing: Writing = { given: symbolOf, named: nameOf, constant: (name) => name, signs };
	let last = NaN;
	for (const part of parts) {
		const text = printText(part, writing);
		last = mathjs(signs === 'typeset' ? retyped(text) : text, scope);
		scope[nameOf(part.id)] = last;
	}
	return last;
}

describe(`${FORMULAS} printed formulas, seed ${SEED}, read by mathjs`, () => {
	const hits = new Map<string, number>();
	const ways: Readonly<Record<string, (node: Node, numbers: Readonly<Record<string, number>>) => number>> = {
		'in symbols, written out': (node, numbers) => mathjs(printText(node, inSymbols), symbols(node, numbers)),
		'in numbers': (node, numbers) => mathjs(printText(node, inNumbers(numbers)), {}),
		'as a working, step by step': (node, numbers) => stepByStep(node, numbers, 'plain'),
		'as a working, typeset and typed into a calculator': (node, numbers) => stepByStep(node, numbers, 'typeset')
	};
	const names = Object.keys(ways);

	test('every one gives the value of the engine', () => {
		for (let i = 0; i < FORMULAS; i += 1) {
			const quantity = IDS[i % IDS.length];
			const name = names[Math.floor(i / IDS.length) % names.length];
			if (quantity === undefined || name === undefined) throw new RangeError('no quantity or no way');
			let shape = randomShape();
			while (!offers(quantity, shape)) shape = randomShape();
			const numbers = randomNumbers(shape);
			const target = targetFor(quantity, shape);
			const tree = formula(target, shape);
			const value = evaluate(tree, fromRecord(numbers));
			const read = ways[name]?.(tree, numbers) ?? NaN;
			const key = `${targetKey(target)} ${name}`;
			hits.set(key, (hits.get(key) ?? 0) + 1);
			expect(Number.isFinite(value), `${targetKey(target)} of plan ${i}`).toBe(true);
			const off = Math.abs(read - value) / Math.max(1, Math.abs(value));
			if (!(off <= WITHIN)) expect.fail(`plan ${i}, ${targetKey(target)} ${name}: ${read} for ${value}, from ${printText(tree, inSymbols)}`);
		}
	});

	test('every taught quantity was among them, from every datum and in every way', () => {
		for (const quantity of IDS) {
			for (const name of names) {
				const found = [...hits.keys()].filter((key) => key.endsWith(` ${name}`) && new RegExp(`^${quantity}\\b`).test(key));
				expect(found.length, `${quantity} ${name}`).toBeGreaterThan(0);
			}
		}
		for (const datum of DATUMS) {
			expect([...hits.keys()].some((key) => key.startsWith(`requiredClearance@${datum}`)), datum).toBe(true);
			expect([...hits.keys()].some((key) => key.startsWith(`availableClearance@${datum}`)), datum).toBe(true);
		}
		expect([...hits.values()].reduce((a, b) => a + b, 0)).toBe(FORMULAS);
	});

	test('the test can fail: a text with one sign changed gives another value', () => {
		const shape: Shape = { ...randomShape(), offset: true, connector: true };
		const numbers = randomNumbers(shape);
		const tree = formula({ quantity: 'freeFall' }, shape);
		const text = printText(tree, inSymbols);
		expect(text).toContain(' - ');
		const value = evaluate(tree, fromRecord(numbers));
		expect(Math.abs(mathjs(text, symbols(tree, numbers)) - value)).toBeLessThan(WITHIN);
		expect(Math.abs(mathjs(text.replace(' - ', ' + '), symbols(tree, numbers)) - value)).toBeGreaterThan(1e-3);
	});
});
