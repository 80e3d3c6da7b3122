/**
 * The catalogue of slips, in the order in which two of them act on one answer: first those that
 * answer another question, then those that put a whole quantity aside, then misread givens, then
 * terms left out or counted twice, then terms added.
 *
 * Tiers are the author's guess. `errs` is the side for a positive term; the marking of an answer
 * looks at the number itself.
 */
import { extreme, minus, plus, quotient, sum, type Node } from '#lib/expression/index.ts';
import {
	addTerm,
	countTwice,
	exchangeTerm,
	inTerms,
	inside,
	leaf,
	leaveOut,
	misread,
	overlook,
	turnSign,
	type Altered
} from './alter.ts';
import { other, type Slip, type SlipContext } from './slip.ts';
import type { Datum, QuantityId } from '#lib/arrest/index.ts';

const FALL: readonly QuantityId[] = ['freeFall'];
const RISE: readonly QuantityId[] = ['rise'];
const CLEARANCE: readonly QuantityId[] = ['requiredClearance'];
const MASS: readonly QuantityId[] = ['massAttached'];

/**
 * The answer to the same question from another datum. Where that is, term for term, another slip of the
 * catalogue (a D-ring height too many or too few, the free fall in the line's place), it is left to that one.
 * Every other datum than the D-ring is such a one: it is the heights, or the D-ring, left out of the free fall.
 */
function fromDatum(datum: Datum): Slip['alter'] {
	return (tree, context) => {
		const { target, shape } = context;
		if (!('datum' in target) || target.datum === datum) return undefined;
		const upright = !shape.lowered && !shape.raised && shape.custom === 'd-ring-and-stretch';
		const between = [target.datum, datum];
		if (target.quantity === 'requiredClearance' && between.includes('d-ring')) {
			if (target.datum === 'd-ring') return undefined;
			if (between.includes('surface') && upright) return undefined;
			if (!between.includes('surface') && !shape.offset) return undefined;
		}
		// What hangs below the anchorage is the connector: it is left out.
		if (target.quantity === 'availableClearance' && target.datum === 'connector' && datum === 'anchorage') return undefined;
		if (tree.kind !== 'named' || tree.id !== target.quantity) return undefined;
		return { tree: other({ quantity: target.quantity, datum }, context), step: target.quantity };
	};
}

/** True where the D-ring's own height is what the body term counts. */
function hangsBelow(context: SlipContext): boolean {
	const { target } = context;
	return target.quantity === 'requiredClearance' && 'datum' in target && target.datum !== 'surface';
}

const catalogue = [
	/* Another question is answered. */
	{ id: 'datum-anchorage', tier: 'occasional', errs: 'either', alter: fromDatum('anchorage') },
	{ id: 'datum-d-ring', tier: 'occasional', errs: 'either', alter: fromDatum('d-ring') },
	{ id: 'datum-surface', tier: 'occasional', errs: 'either', alter: fromDatum('surface') },
	/* Before the slips in the free fall: whoever works the elongation out uses the free fall they found. */
	{
		id: 'expected-elongation',
		tier: 'rare',
		errs: 'unsafe',
		alter: (tree, context) => {
			if (!context.shown('averageForce') || !context.shown('bodyMass')) return undefined;
			return exchangeTerm(tree, CLEARANCE, 'elongation', other({ quantity: 'expectedElongation' }, context));
		}
	},
	{
		id: 'limit-for-value',
		tier: 'occasional',
		errs: 'either',
		alter: (tree, { shown }) => {
			const limit = shown('labelFreeFall') ? 'labelFreeFall' : shown('freeFallLimit') ? 'freeFallLimit' : undefined;
			return limit === undefined ? undefined : inside(tree, FALL, () => leaf(limit));
		}
	},
	/* A whole quantity is put aside. */
	{
		id: 'lanyard-for-free-fall',
		tier: 'common',
		errs: 'either',
		alter: (tree) => inside(tree, FALL, (of) => (of.kind === 'given' ? undefined : leaf('lanyardLength')))
	},
	{
		id: 'free-fall-for-line',
		tier: 'occasional',
		errs: 'unsafe',
		alter: (tree, context) => {
			if (!hangsBelow(context)) return undefined;
			return inTerms(tree, CLEARANCE, (terms) => {
				if (!terms.some((t) => t.role === 'lanyard')) return undefined;
				const fall = plus('freeFall', other({ quantity: 'freeFall' }, context));
				return [fall, ...terms.filter((t) => t.role !== 'lanyard' && t.role !== 'connector')];
			});
		}
	},
	/* A given is misread. */
	{
		id: 'other-class-elongation',
		tier: 'occasional',
		errs: 'either',
		alter: (tree, { shown }) =>
			shown('otherElongation') ? exchangeTerm(tree, CLEARANCE, 'elongation', leaf('otherElongation')) : undefined
	},
	{
		id: 'other-margin',
		tier: 'occasional',
		errs: 'either',
		alter: (tree, { shown }) =>
			shown('otherMargin') ? exchangeTerm(tree, CLEARANCE, 'margin', leaf('otherMargin')) : undefined
	},
	{
		id: 'stature-for-d-ring',
		tier: 'common',
		errs: 'cautious',
		alter: (tree, { shown, shape }) =>
			shown('stature') && shape.custom === 'd-ring-and-stretch'
				? misread(tree, 'dRingHeight', leaf('stature'))
				: undefined
	},
	{
		id: 'posture-ignored',
		tier: 'common',
		errs: 'cautious',
		alter: (tree, { shape }) => (shape.lowered ? misread(tree, 'dRingNow', leaf('dRingHeight'), ['straightening']) : undefined)
	},
	{
		id: 'kneeling-shortens-clearance',
		tier: 'occasional',
		errs: 'unsafe',
		alter: (tree, context) =>
			context.shape.lowered && hangsBelow(context)
				? exchangeTerm(tree, CLEARANCE, 'body', leaf('dRingNow'))
				: undefined
	},
	{
		id: 'wrong-floor',
		tier: 'occasional',
		errs: 'unsafe',
		alter: (tree, { shown }) =>
			shown('otherFloorDrop')
				? exchangeTerm(
						tree,
						RISE,
						'anchorage',
						sum([plus('anchorage', leaf('anchorageHeight')), plus('otherFloor', leaf('otherFloorDrop'))])
					)
				: undefined
	},
	{
		id: 'offset-ignored',
		tier: 'common',
		errs: 'cautious',
		alter: (tree) =>
			inside(tree, ['tautDepth'], (of) => {
				if (of.kind !== 'root' || of.of.kind !== 'sum') return undefined;
				const line = of.of.terms.find((t) => t.role === 'line')?.of;
				return line?.kind === 'square' ? line.of : undefined;
			})
	},
	{
		id: 'offset-subtracted',
		tier: 'occasional',
		errs: 'unsafe',
		alter: (tree, { target }) => {
			// Where the swing drop itself is asked this leaves the offset as answer: that is the slip below.
			if (target.quantity === 'swingDrop') return undefined;
			return inside(tree, ['tautDepth'], (of) => {
				if (of.kind !== 'root' || of.of.kind !== 'sum') return undefined;
				const line = of.of.terms.find((t) => t.role === 'line')?.of;
				return line?.kind === 'square' ? sum([plus('line', line.of), minus('offset', leaf('offset'))]) : undefined;
			});
		}
	},
	{
		id: 'offset-for-swing-drop',
		tier: 'occasional',
		errs: 'cautious',
		alter: (tree) => inside(tree, ['swingDrop'], () => leaf('offset'))
	},
	{
		id: 'average-for-peak',
		tier: 'common',
		errs: 'unsafe',
		alter: (tree, { shown }) =>
			shown('averageForce') ? inside(tree, ['arrestForce'], () => leaf('averageForce')) : undefined
	},
	{
		id: 'dry-for-conditioned',
		tier: 'common',
		errs: 'unsafe',
		alter: (tree, { shape }) =>
			shape.conditioned
				? inside(tree, ['arrestForce'], (of) =>
						of.kind === 'given' && of.id === 'conditionedForce' ? leaf('peakForce') : undefined
					)
				: undefined
	},
	{
		id: 'strongest-capacity',
		tier: 'common',
		errs: 'unsafe',
		alter: (tree) =>
			inside(tree, ['lowestCapacity'], (of) =>
				of.kind === 'extreme' && of.pick === 'least' && of.among.length > 1
					? extreme('greatest', of.among)
					: undefined
			)
	},
	/* Signs and operands. */
	{ id: 'heights-wrong-way', tier: 'common', errs: 'either', alter: (tree) => turnSign(tree, FALL, 'rise') },
	{ id: 'anchorage-height-added', tier: 'occasional', errs: 'cautious', alter: (tree) => turnSign(tree, RISE, 'anchorage') },
	/* Terms left out. */
	{
		id: 'heights-left-out',
		tier: 'occasional',
		errs: 'either',
		alter: (tree, { shape }) =>
			shape.connector || shape.offset ? leaveOut(tree, FALL, ['rise']) : undefined
	},
	{ id: 'd-ring-left-out', tier: 'occasional', errs: 'unsafe', alter: (tree) => leaveOut(tree, RISE, ['dRing', 'standing']) },
	{ id: 'standing-place-ignored', tier: 'common', errs: 'unsafe', alter: (tree) => leaveOut(tree, RISE, ['standing']) },
	{
		id: 'connector-left-out',
		tier: 'common',
		errs: 'unsafe',
		alter: (tree) => leaveOut(tree, ['freeFall', 'lineLength', 'requiredClearance', 'availableClearance'], ['connector'])
	},
	{ id: 'elongation-left-out', tier: 'common', errs: 'unsafe', alter: (tree) => leaveOut(tree, CLEARANCE, ['elongation']) },
	{ id: 'margin-left-out', tier: 'common', errs: 'unsafe', alter: (tree) => leaveOut(tree, CLEARANCE, ['margin']) },
	{ id: 'body-left-out', tier: 'common', errs: 'unsafe', alter: (tree) => leaveOut(tree, CLEARANCE, ['body']) },
	{ id: 'stretch-left-out', tier: 'common', errs: 'unsafe', alter: (tree) => leaveOut(tree, CLEARANCE, ['stretch']) },
	{ id: 'swing-drop-left-out', tier: 'common', errs: 'unsafe', alter: (tree) => leaveOut(tree, CLEARANCE, ['swingDrop']) },
	{ id: 'straightening-left-out', tier: 'occasional', errs: 'unsafe', alter: (tree) => leaveOut(tree, CLEARANCE, ['posture']) },
	{
		id: 'obstacle-overlooked',
		tier: 'common',
		errs: 'unsafe',
		alter: (tree, { shape, absentObstacles }) =>
			overlook(tree, shape.obstacles.filter((id) => !absentObstacles.includes(id)))
	},
	{
		id: 'sometimes-obstacle-ignored',
		tier: 'common',
		errs: 'unsafe',
		alter: (tree, { absentObstacles }) => (absentObstacles.length === 0 ? undefined : overlook(tree, absentObstacles))
	},
	{
		id: 'body-mass-alone',
		tier: 'common',
		errs: 'unsafe',
		alter: (tree) => leaveOut(tree, MASS, ['clothingMass', 'equipmentMass', 'toolsMass'])
	},
	{ id: 'tools-left-out', tier: 'occasional', errs: 'unsafe', alter: (tree) => leaveOutOfSeveral(tree, 'toolsMass') },
	{ id: 'equipment-left-out', tier: 'occasional', errs: 'unsafe', alter: (tree) => leaveOutOfSeveral(tree, 'equipmentMass') },
	{
		id: 'weight-ignored',
		tier: 'occasional',
		errs: 'unsafe',
		alter: (tree) =>
			inside(tree, ['expectedElongation'], (of) =>
				of.kind === 'quotient' && of.under.kind === 'sum'
					? quotient(of.over, leaf('averageForce'))
					: undefined
			)
	},
	/* Terms counted twice, terms added. */
	{
		id: 'connector-twice',
		tier: 'occasional',
		errs: 'cautious',
		alter: (tree) => countTwice(tree, ['freeFall', 'lineLength', 'requiredClearance'], 'connector')
	},
	{ id: 'stretch-twice', tier: 'occasional', errs: 'cautious', alter: (tree) => countTwice(tree, CLEARANCE, 'stretch') },
	{
		id: 'elongation-in-free-fall',
		tier: 'common',
		errs: 'cautious',
		alter: (tree, { shape }) =>
			shape.absorber ? addTerm(asSum(tree), FALL, plus('elongation', leaf('elongation'))) : undefined
	},
	{
		id: 'slack-added',
		tier: 'occasional',
		errs: 'cautious',
		alter: (tree, { shown }) =>
			shown('slackShown') ? addTerm(asSum(tree), FALL, plus('slack', leaf('slackShown'))) : undefined
	},
	{
		id: 'body-from-surface',
		tier: 'common',
		errs: 'cautious',
		alter: (tree, { target, shape }) =>
			'datum' in target && target.datum === 'surface' && isFromSurface(tree)
				? addTerm(
						tree,
						CLEARANCE,
						plus('body', leaf(shape.custom === 'full-height' ? 'stature' : 'dRingHeight'))
					)
				: undefined
	},
	{
		id: 'tethered-counted',
		tier: 'common',
		errs: 'cautious',
		alter: (tree, { shown }) =>
			shown('tetheredMass') ? addTerm(tree, MASS, plus('tetheredMass', leaf('tetheredMass'))) : undefined
	},
	{
		id: 'off-path-counted',
		tier: 'occasional',
		errs: 'cautious',
		alter: (tree, { strayObstacles }) => {
			if (strayObstacles.length === 0) return undefined;
			const tops = strayObstacles.map((id) => ({ role: id, of: leaf(`obstacleTop_${id}`) }));
			const [only] = tops;
			const highest = tops.length === 1 && only !== undefined ? only.of : extreme('greatest', tops);
			return inTerms(tree, ['availableClearance'], (terms) => {
				const kept = terms.filter((t) => t.role !== 'obstacle');
				return [...kept, minus('obstacle', highest)];
			});
		}
	}
] as const satisfies readonly Slip[];

/** Whether a required clearance still is the sum from the surface: those from above have a term for the body. */
function isFromSurface(tree: Node): boolean {
	return inTerms(tree, CLEARANCE, (terms) => (terms.some((t) => t.role === 'body') ? undefined : terms)) !== undefined;
}

/** Leaves one part of the mass out, where more than one stands beside the body: else it is body mass alone. */
function leaveOutOfSeveral(tree: Node, role: string): Altered | undefined {
	return inTerms(tree, MASS, (terms) =>
		terms.length > 2 && terms.some((t) => t.role === role) ? terms.filter((t) => t.role !== role) : undefined
	);
}

/** A free fall that another slip made a single given becomes a sum of it, so that terms can be added. */
function asSum(tree: Node): Node {
	const made = inside(tree, FALL, (of) => (of.kind === 'sum' ? undefined : sum([plus('lanyard', of)])));
	return made?.tree ?? tree;
}

export type SlipId = (typeof catalogue)[number]['id'];

/** A slip of the catalogue, its id one of the known ids. */
export type CataloguedSlip = Slip & { readonly id: SlipId };

/** All slips, in the order in which they act. */
export const SLIPS: readonly CataloguedSlip[] = Object.freeze([...catalogue]);

/** Raised whenever a slip is added or changed; stored with every answer. */
export const SLIP_SET_VERSION = 1;

const byId = new Map<string, CataloguedSlip>(SLIPS.map((slip) => [slip.id, slip]));

/** @returns the slip of an id, or undefined. */
export function slipOf(id: string): CataloguedSlip | undefined {
	return byId.get(id);
}
