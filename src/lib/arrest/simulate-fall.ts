/** What the simulation of a fall is given: plain lengths, taken from an analysis or made by hand. */
import { evaluate } from '#lib/expression/index.ts';
import { STANDARD_GRAVITY, toSI } from '#lib/quantity/index.ts';
import type { CitedValue } from '#lib/rules/index.ts';
import { givensOf, type Absence, type Finding } from './analyse.ts';
import { formula } from './formula.ts';
import { targetKey, type Target } from './quantities.ts';
import type { FixedGivenId } from './given.ts';
import type { Resolved } from './resolve.ts';
import type { LanyardPlan } from './schema.ts';

/** Something that the falling body can meet. Places from the plumb line of the anchorage, positive to the worker's side, m. */
export interface FallObstacle {
	readonly id: string;
	/** Height of its top above the lower level, m. */
	readonly top: number;
	readonly from: number;
	readonly to: number;
}

/** The planning-case fall of one lanyard plan. Lengths in m; heights are above the walking surface. */
export interface Fall {
	/** Lanyard and hanging connector as one line. */
	readonly lineLength: number;
	/** Height of the anchorage above the D-ring before the fall; negative when it lies below. */
	readonly riseOfAnchorage: number;
	/** Horizontal distance of the D-ring from the plumb line of the anchorage, along the edge; not negative. */
	readonly offset: number;
	/** √(lineLength² − offset²) − riseOfAnchorage. */
	readonly freeFall: number;
	/** Planned elongation of the absorber; more than nought. */
	readonly elongation: number;
	/** How far D-ring slide and harness stretch let the body down below its standing place under the D-ring. */
	readonly stretch: number;
	/** D-ring above the soles, standing. */
	readonly dRingHeight: number;
	/** D-ring above the standing place before the fall. */
	readonly dRingNow: number;
	/** Standing place above the walking surface. */
	readonly standingHeight: number;
	readonly margin: number;
	/** Walking surface down to the lower level. */
	readonly depth: number;
	/** Half the width of a body: every obstacle is widened by it on both sides. */
	readonly halfBody: number;
	/** The obstacles that count, whether they stand there always or only sometimes. */
	readonly obstacles: readonly FallObstacle[];
	/** Everything that falls with the person, kg; undefined when it is not known. */
	readonly mass: number | undefined;
}

/** Why a plan has no planning-case fall that could be shown. */
export type SimulationRefusal =
	/** No energy absorber: nothing in the plan says over what length the fall would be stopped. */
	{ readonly why: 'no-finite-stop' } | Absence;

export type FallOrRefusal =
	| { readonly kind: 'fall'; readonly fall: Fall }
	| { readonly kind: 'refused'; readonly refusal: SimulationRefusal };

/** What a fall is read from: any `Analysis` will do. */
export interface FallSource {
	readonly plan: Pick<LanyardPlan, 'absorber' | 'below'>;
	readonly resolved: Pick<Resolved, 'shape' | 'givens'> & { readonly practice: { readonly halfBodyWidth: CitedValue } };
	readonly quantities: ReadonlyMap<string, Finding>;
}

/** How far a free fall may disagree with line, offset and rise before it is taken for a mistake of the caller, m. */
const AGREEMENT = 1e-6;

/**
 * @returns the fall that the plan's required clearance assumes, or why there is none: no absorber or one that does not
 * run out, a given that is missing, a D-ring out of reach, a label that does not cover this mass or free fall.
 * With the body custom "full height" the D-ring ends level with the head, or the stretch beyond it:
 * the body is let down by the greater of (stature − D-ring height) and the stretch.
 */
export function fallOf(analysis: FallSource): FallOrRefusal {
	const { plan, resolved, quantities } = analysis;
	if (plan.absorber === null) return refused({ why: 'no-finite-stop' });
	const required = quantities.get(targetKey({ quantity: 'requiredClearance', datum: 'surface' }));
	const freeFall = quantities.get(targetKey({ quantity: 'freeFall' }));
	for (const finding of [freeFall, required]) {
		if (finding === undefined) throw new RangeError('the analysis has neither free fall nor required clearance');
		if (!finding.known) return refused(finding.absence);
	}

	const { shape, practice } = resolved;
	const givens = givensOf(resolved);
	const tree = (target: Target): number => evaluate(formula(target, shape), givens);
	const given = (id: FixedGivenId): number => givens(id);
	// An absorber that does not run out stops nobody in a finite distance.
	if (!(given('elongation') > 0)) return refused({ why: 'no-finite-stop' });
	const stretchOut = shape.slide || shape.stretch ? tree({ quantity: 'stretchOut' }) : 0;
	const mass = quantities.get(targetKey({ quantity: 'massAttached' }));
	const counted = new Set(shape.obstacles);
	return {
		kind: 'fall',
		fall: Object.freeze({
			lineLength: tree({ quantity: 'lineLength' }),
			riseOfAnchorage: tree({ quantity: 'rise' }),
			offset: given('offset'),
			freeFall: Math.max(0, valueOf(freeFall) ?? 0),
			elongation: given('elongation'),
			stretch: shape.custom === 'full-height' ? Math.max(stretchOut, tree({ quantity: 'headAboveDRing' })) : stretchOut,
			dRingHeight: given('dRingHeight'),
			dRingNow: given('dRingNow'),
			standingHeight: given('standingHeight'),
			margin: given('margin'),
			depth: given('lowerLevelDepth'),
			halfBody: toSI(practice.halfBodyWidth.value, practice.halfBodyWidth.unit),
			obstacles: Object.freeze(
				plan.below.obstacles
					.filter((one) => counted.has(one.id))
					.map(({ id, top, from, to }) => Object.freeze({ id, top, from, to }))
			),
			mass: valueOf(mass)
		})
	};
}

function valueOf(finding: Finding | undefined): number | undefined {
	return finding?.known === true ? finding.value : undefined;
}

function refused(refusal: SimulationRefusal): FallOrRefusal {
	return { kind: 'refused', refusal };
}

/** @throws RangeError that names what is wrong with a fall made by hand. */
export function checkFall(fall: Fall): void {
	const { obstacles, mass, ...lengths } = fall;
	for (const [name, value] of Object.entries(lengths)) {
		if (!Number.isFinite(value)) throw new RangeError(`${name} of a fall must be a finite number, not ${value}`);
		if (name !== 'riseOfAnchorage' && name !== 'standingHeight' && value < 0) {
			throw new RangeError(`${name} of a fall must not be negative, but is ${value}`);
		}
	}
	if (mass !== undefined && !(mass > 0)) throw new RangeError(`mass of a fall must be more than nought, not ${mass}`);
	if (!(fall.elongation > 0)) throw new RangeError('elongation of a fall must be more than nought');
	if (!(fall.lineLength > 0)) throw new RangeError('lineLength of a fall must be more than nought');
	if (fall.dRingNow > fall.dRingHeight + AGREEMENT) throw new RangeError('dRingNow lies above dRingHeight');
	if (fall.offset > fall.lineLength) throw new RangeError('offset of a fall is longer than its line');
	for (const one of obstacles) {
		if (![one.top, one.from, one.to].every(Number.isFinite) || one.from > one.to) {
			throw new RangeError(`obstacle ${one.id} of a fall must run from a nearer to a farther finite place`);
		}
	}
	const tautDepth = Math.sqrt(fall.lineLength * fall.lineLength - fall.offset * fall.offset);
	if (Math.abs(tautDepth - fall.riseOfAnchorage - fall.freeFall) > AGREEMENT) {
		throw new RangeError('freeFall does not agree with lineLength, offset and riseOfAnchorage');
	}
}

/** Standard gravity, m/s²; the same everywhere in the engine. */
export const GRAVITY = STANDARD_GRAVITY;
