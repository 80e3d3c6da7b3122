/** All slip variants of one ask evaluated in three ways: by the engine, by mathjs, and written out straight. */
import { compile as compileMathjs, type EvalFunction } from 'mathjs';
import { run, valuesOf, type Node } from '#lib/expression/index.ts';
import { variantsOf } from '#lib/slips/index.ts';
import { engineContext, engineInputs } from '../../support/by-hand/to-engine.ts';
import type { HandValues } from '../../support/by-hand/index.ts';
import { clearances, STRAIGHT_ORDER, type StraightValues } from './clearance-straight.ts';
import { inTurn } from './timing.ts';

/** An invented worker who kneels on a box to the side of the anchorage, with every decoy in sight. */
const VALUES: HandValues & StraightValues = {
	anchorageHeight: 2.31,
	dRingHeight: 1.47,
	dRingNow: 0.92,
	kneeling: true,
	standingHeight: 0.42,
	lanyardLength: 1.85,
	connectorLength: 0.6,
	offset: 1.1,
	elongation: 1.25,
	dRingSlide: 0.31,
	harnessStretch: 0.14,
	margin: 1,
	stature: 1.79,
	custom: 'd-ring-and-stretch',
	lowerLevelDepth: 7.3,
	obstacles: [],
	bodyMass: 83,
	clothingMass: 4,
	equipmentMass: 7,
	toolsMass: 9,
	tetheredMass: 5,
	capacities: [140, 136],
	peakForce: 6000,
	conditionedForce: 7000,
	averageForce: 4000,
	conditioned: false,
	labelFreeFall: 1.9,
	freeFallLimit: 1.83,
	otherMargin: 0.6,
	otherElongation: 1.75,
	otherFloorDrop: 0.35,
	slackShown: 0.48
};

const TARGET = { quantity: 'requiredClearance', datum: 'surface' } as const;
const ROUNDS = 41;
const CALLS = 2000;
/** mathjs is slower by so much that fewer calls measure it as well. */
const MATHJS_CALLS = 40;

/** A tree as text that mathjs reads. */
function text(node: Node): string {
	switch (node.kind) {
		case 'given':
			return node.id;
		case 'constant':
			return String(node.value);
		case 'named':
			return text(node.of);
		case 'sum':
			return `(${node.terms.map((term) => `${term.sign === 1 ? '+' : '-'} ${text(term.of)}`).join(' ')})`;
		case 'product':
			return `(${node.factors.map(text).join(' * ')})`;
		case 'quotient':
			return `(${text(node.over)} / ${text(node.under)})`;
		case 'square':
			return `(${text(node.of)})^2`;
		case 'root':
			return `sqrt(${text(node.of)})`;
		case 'extreme':
			return `${node.pick === 'greatest' ? 'max' : 'min'}(${node.among.map((one) => text(one.of)).join(', ')})`;
	}
}

/** How often each way is gone through in the time of the engine's one. */
export interface VariantSpeeds {
	/** Time of mathjs in times of the engine, right answer, singles and pairs. */
	readonly mathjsWhole: number;
	/** The same for the right answer and the singles. */
	readonly mathjsSingles: number;
	/** Time of the engine in times of straight arithmetic, right answer and singles. */
	readonly engineInStraight: number;
	readonly variants: number;
}

/** @throws if the three ways do not give the same numbers: then there is nothing to compare. */
function agree(a: ArrayLike<number>, b: ArrayLike<number>, who: string): void {
	for (let i = 0; i < a.length; i += 1) {
		if (!(Math.abs((a[i] ?? NaN) - (b[i] ?? NaN)) <= 1e-9)) {
			throw new Error(`${who}: variant ${i} is ${String(b[i])}, by the engine ${String(a[i])}`);
		}
	}
}

/** @returns how fast the variants of the ask are evaluated, each way run in turn with the others. */
export function variantSpeeds(): VariantSpeeds {
	const set = variantsOf(engineContext(VALUES, TARGET));
	const inputs = engineInputs(VALUES, set.inputs);
	const singles = [set.right, ...set.singles.map((one) => one.tree)];
	const whole = [...singles, ...set.pairs.map((one) => one.tree)];

	const order = ['right', ...set.singles.map((one) => one.slips.join())];
	if (order.join() !== STRAIGHT_ORDER.join()) throw new Error(`the straight lines are not those of ${order.join(', ')}`);
	const out = new Float64Array(STRAIGHT_ORDER.length);
	clearances(VALUES, out);
	agree(valuesOf(set.singleProgram, inputs), out, 'straight arithmetic');

	const scope = Object.fromEntries(set.inputs.map((id, i) => [id, inputs[i] ?? NaN]));
	const compiled: readonly EvalFunction[] = whole.map((tree) => compileMathjs(text(tree)));
	const compiledSingles = compiled.slice(0, singles.length);
	agree(valuesOf(set.wholeProgram, inputs), compiled.map((one) => Number(one.evaluate(scope))), 'mathjs');

	let kept = 0;
	const engine = (program: typeof set.wholeProgram) => (): void => {
		for (let i = 0; i < CALLS; i += 1) {
			const registers = run(program, inputs);
			for (const register of program.outputs) kept += registers[register] ?? 0;
		}
	};
	const byMathjs = (list: readonly EvalFunction[]) => (): void => {
		for (let i = 0; i < MATHJS_CALLS; i += 1) for (const one of list) kept += Number(one.evaluate(scope));
	};
	const straight = (): void => {
		for (let i = 0; i < CALLS; i += 1) {
			clearances(VALUES, out);
			for (const value of out) kept += value;
		}
	};
	const [engineWhole = NaN, mathjsWhole = NaN, engineSingles = NaN, mathjsSingles = NaN, straightSingles = NaN] = inTurn(
		[engine(set.wholeProgram), byMathjs(compiled), engine(set.singleProgram), byMathjs(compiledSingles), straight],
		ROUNDS
	);
	if (!Number.isFinite(kept)) throw new Error('a variant of the measured ask has no value');
	const perCall = CALLS / MATHJS_CALLS;
	return {
		mathjsWhole: (mathjsWhole * perCall) / engineWhole,
		mathjsSingles: (mathjsSingles * perCall) / engineSingles,
		engineInStraight: engineSingles / straightSingles,
		variants: whole.length
	};
}
