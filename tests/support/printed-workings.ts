/** Workings as pages print them, worked out by mathjs: a general-purpose library that knows nothing of this project. */
import { evaluate } from 'mathjs';
import { explain, rightValue, shownGivens } from '#lib/grading/index.ts';
import { evaluate as valueOf } from '#lib/expression/index.ts';
import { formula } from '#lib/arrest/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { numberAsks, type NumberAsk, type Problem } from '#lib/scenario/index.ts';

/** @reason mass is added up row by row, the force read off the label: their rows are numbers without a sum to work out. */
const WITHOUT_WORKING: readonly NumberAsk['quantity'][] = ['massAttached', 'arrestForce'];

/** The shipped scenarios whose pages print a working. */
export const WITH_WORKINGS = shippedScenarios().filter((one) => numberAsks(one).some(({ quantity }) => !WITHOUT_WORKING.includes(quantity)));

/** Feet and inches as the page prints them, in feet: 5′ 3½″. */
const FEET_INCHES = /(\d+)′(?:[\s\u00a0](\d+)?([½¼¾⅛⅜⅝⅞])?″)?/g;
const PARTS: Readonly<Record<string, number>> = { '½': 0.5, '¼': 0.25, '¾': 0.75, '⅛': 0.125, '⅜': 0.375, '⅝': 0.625, '⅞': 0.875 };

/** Gravity is printed to two places; the engine counts with all of standard gravity's (CGPM 1901). */
const GRAVITY = /\b9\.81\b/g;

/** A printed working as a calculator reads it. */
function calculable(text: string): string {
	return text
		.replace(GRAVITY, '9.80665')
		.replace(FEET_INCHES, (_, feet: string, inches = '0', part = '') => String(Number(feet) + (Number(inches) + (PARTS[part] ?? 0)) / 12))
		.replaceAll('−', '-')
		.replaceAll('×', '*')
		.replaceAll('÷', '/')
		.replaceAll('²', '^2')
		.replaceAll('√(', 'sqrt(')
		.replaceAll(';', ',');
}

/** SI of one printed unit, from the exact definitions (NIST SP 811, from memory). */
function printedUnit(problem: Problem, ask: NumberAsk): number {
	const metric = problem.scenario.units === 'metric';
	switch (ask.quantity) {
		case 'massAttached':
		case 'lowestCapacity':
			return metric ? 1 : 0.45359237;
		case 'arrestForce':
			return metric ? 1000 : 4.4482216152605;
		case 'bodyWeights':
			return 1;
		default:
			return metric ? 1 : 0.3048;
	}
}

/** One row of a page's table of steps. */
export interface PrintedRow {
	/** The first of its classes: what kind of row it is. */
	readonly id: string;
	readonly working: string;
}

/** A working that came out otherwise than the engine has it, or not at all. */
export interface Strayed {
	readonly working: string;
	readonly printed: number;
	readonly expected: number;
}

/** @returns how many workings were worked out, and those that do not come out. */
export function workedOut(problem: Problem, ask: NumberAsk, rows: readonly PrintedRow[]): { readonly worked: number; readonly strayed: readonly Strayed[] } {
	const right = rightValue(problem, ask);
	if (right === undefined) return { worked: 0, strayed: [] };
	const { tape } = explain(problem, ask, []);
	const strayed: Strayed[] = [];
	let terms = 0;
	let worked = 0;
	for (const { id, working } of rows) {
		const expected = id === 'term' ? (tape[terms++]?.value ?? NaN) : id === 'sum' ? right : id === 'there' ? thereIs(problem, ask) : undefined;
		if (expected === undefined || !/[−+×÷√]|max|min/.test(working)) continue;
		const printed = Number(evaluate(calculable(working))) * printedUnit(problem, ask);
		// Written so that no number at all counts as strayed.
		if (!(Math.abs(printed - expected) <= 1e-9 + 1e-6 * Math.abs(expected))) strayed.push({ working, printed, expected });
		worked += 1;
	}
	return { worked, strayed };
}

function thereIs(problem: Problem, ask: NumberAsk): number {
	if (!('datum' in ask)) return NaN;
	return valueOf(formula({ quantity: 'availableClearance', datum: ask.datum }, problem.resolved.shape), shownGivens(problem));
}
