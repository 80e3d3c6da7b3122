/**
 * Every quantity as one expression tree over named givens. These trees are evaluated, printed, walked,
 * drawn and altered; there is no second formula for any of it.
 *
 * Sign convention: heights above the walking surface, m; a free fall and a clearance count downwards.
 * Sources: `free fall` 29 CFR 1926.500(b), definition; the sums are geometry (see each function).
 */
import { constant, extreme, minus, named, plus, product, quotient, root, square, sum, type Node, type Term } from '#lib/expression/index.ts';
import { ACCELERATION, LENGTH, STANDARD_GRAVITY } from '#lib/quantity/index.ts';
import { leafOf } from './given.ts';
import { targetKey, type QuantityId, type Target } from './quantities.ts';
import { onceAShape, type Datum, type Shape } from './shape.ts';

const q = (id: QuantityId, of: Node): Node => named(id, of);
const gravity = constant('g', STANDARD_GRAVITY, ACCELERATION);
const two = constant('2', 2);
const nothing = constant('0', 0, LENGTH);

/** Height of the anchorage above the D-ring before the fall; negative when it lies below. */
function rise(shape: Shape): Node {
	const terms: Term[] = [
		plus('anchorage', leafOf('anchorageHeight')),
		minus('dRing', leafOf(shape.lowered ? 'dRingNow' : 'dRingHeight'))
	];
	if (shape.raised) terms.push(minus('standing', leafOf('standingHeight')));
	return q('rise', sum(terms));
}

/** Lanyard and hanging connector as one line. */
function lineLength(shape: Shape): Node {
	if (!shape.connector) return leafOf('lanyardLength');
	return q('lineLength', sum([plus('lanyard', leafOf('lanyardLength')), plus('connector', leafOf('connectorLength'))]));
}

/** Depth below the anchorage at which the line is tight, straight down from an offset D-ring. Geometry: Pythagoras. */
function tautDepth(shape: Shape): Node {
	return q(
		'tautDepth',
		root(sum([plus('line', square(lineLength(shape))), minus('offset', square(leafOf('offset')))]))
	);
}

/**
 * Free fall: D-ring travel from the start of the fall until just before force is applied
 * (29 CFR 1926.500(b)). Vertical: line length less rise; with an offset the line is tight at √(line² − offset²).
 */
function freeFall(shape: Shape): Node {
	const down: Term[] = shape.offset
		? [plus('reachDown', tautDepth(shape))]
		: [plus('lanyard', leafOf('lanyardLength')), ...connectorTerm(shape)];
	return q('freeFall', sum([...down, minus('rise', rise(shape))]));
}

function connectorTerm(shape: Shape): Term[] {
	return shape.connector ? [plus('connector', leafOf('connectorLength'))] : [];
}

/** How much deeper the swing ends than the point where the line pulled tight: line − √(line² − offset²). */
function swingDrop(shape: Shape): Node {
	return q('swingDrop', sum([plus('line', lineLength(shape)), minus('reachDown', tautDepth(shape))]));
}

function stretchOut(shape: Shape): Node | undefined {
	if (shape.slide && shape.stretch) {
		return q('stretchOut', sum([plus('slide', leafOf('dRingSlide')), plus('stretch', leafOf('harnessStretch'))]));
	}
	if (shape.slide) return leafOf('dRingSlide');
	return shape.stretch ? leafOf('harnessStretch') : undefined;
}

/**
 * Terms of the body below the D-ring level at rest, without the margin.
 * Custom one: D-ring height, and the slide and stretch as a term of their own.
 * Custom two: full height, the D-ring being level with the head; only stretch beyond (height − D-ring height) is added.
 */
function bodyTerms(shape: Shape): { readonly stretch: Term[]; readonly body: Term[] } {
	const stretch = stretchOut(shape);
	if (shape.custom === 'd-ring-and-stretch') {
		return {
			stretch: stretch === undefined ? [] : [plus('stretch', stretch)],
			body: [plus('body', leafOf('dRingHeight'))]
		};
	}
	return {
		stretch:
			stretch === undefined
				? []
				: [
						plus('stretch', extraStretch(stretch))
					],
		body: [plus('body', leafOf('stature'))]
	};
}

/** Stretch that lets the D-ring rise beyond the level of the head; 0 as long as it does not. */
function extraStretch(stretch: Node): Node {
	const beyond = sum([plus('stretch', stretch), minus('head', headAboveDRing())]);
	return q('extraStretch', extreme('greatest', [{ role: 'none', of: nothing }, { role: 'beyond', of: beyond }]));
}

function headAboveDRing(): Node {
	return q('headAboveDRing', sum([plus('stature', leafOf('stature')), minus('dRing', leafOf('dRingHeight'))]));
}

/**
 * Required clearance, by datum. Below the anchorage the body hangs at full length whatever the posture
 * was; from the surface and the D-ring the free fall takes the place of the line, and an offset adds the
 * swing drop. All four describe one plan: they differ by heights alone (physics.md section 8, proof).
 */
function requiredClearance(shape: Shape, datum: Datum): Node {
	const { stretch, body } = bodyTerms(shape);
	const elongation = shape.absorber ? [plus('elongation', leafOf('elongation'))] : [];
	const margin = plus('margin', leafOf('margin'));
	const line = [plus('lanyard', leafOf('lanyardLength'))];
	const fall = [
		plus('freeFall', freeFall(shape)),
		...(shape.offset ? [plus('swingDrop', swingDrop(shape))] : [])
	];
	const terms = {
		anchorage: () => [...connectorTerm(shape), ...line, ...elongation, ...stretch, ...body, margin],
		connector: () => [...line, ...elongation, ...stretch, ...body, margin],
		'd-ring': () => [...fall, ...elongation, ...stretch, ...body, margin],
		surface: () => [...fall, ...elongation, ...stretch, ...belowSurface(shape), margin]
	} satisfies Record<Datum, () => Term[]>;
	return q('requiredClearance', sum(terms[datum]()));
}

/** What the surface datum adds to the D-ring's travel: head above D-ring, straightening from a posture, less the standing place. */
function belowSurface(shape: Shape): Term[] {
	const terms: Term[] = [];
	if (shape.custom === 'full-height') terms.push(plus('head', headAboveDRing()));
	if (shape.lowered) {
		terms.push(
			plus(
				'posture',
				q('straightening', sum([plus('upright', leafOf('dRingHeight')), minus('lowered', leafOf('dRingNow'))]))
			)
		);
	}
	if (shape.raised) terms.push(minus('standing', leafOf('standingHeight')));
	return terms;
}

/** The highest thing that the body's path can meet, above the lower level. */
function highestBelow(shape: Shape): Node | undefined {
	const tops = shape.obstacles.map((id) => ({ role: id, of: leafOf(`obstacleTop_${id}`) }));
	const only = tops[0];
	if (only === undefined) return undefined;
	return tops.length === 1 ? only.of : q('highestBelow', extreme('greatest', tops));
}

/** Available clearance: from the datum down to the lower level or the highest thing the path meets. */
function availableClearance(shape: Shape, datum: Datum): Node {
	const highest = highestBelow(shape);
	const below = [
		plus('depth', leafOf('lowerLevelDepth')),
		...(highest === undefined ? [] : [minus('obstacle', highest)])
	];
	const above = {
		anchorage: () => [plus('anchorage', leafOf('anchorageHeight'))],
		connector: () => [
			plus('anchorage', leafOf('anchorageHeight')),
			...(shape.connector ? [minus('connector', leafOf('connectorLength'))] : [])
		],
		'd-ring': () => [
			plus('dRing', leafOf(shape.lowered ? 'dRingNow' : 'dRingHeight')),
			...(shape.raised ? [plus('standing', leafOf('standingHeight'))] : [])
		],
		surface: () => []
	} satisfies Record<Datum, () => Term[]>;
	return q('availableClearance', sum([...above[datum](), ...below]));
}

function massAttached(shape: Shape): Node {
	return q('massAttached', sum([plus('body', leafOf('bodyMass')), ...shape.masses.map((id) => plus(id, leafOf(id)))]));
}

function lowestCapacity(shape: Shape): Node {
	return q('lowestCapacity', extreme('least', shape.capacities.map((id) => ({ role: id, of: leafOf(id) }))));
}

/** Work balance m g (h + x) = F x of a constant average force: x = m g h ÷ (F − m g). Mechanics; CSA Z259.16 and ANSI Z359.6 use it (from memory). */
function expectedElongation(shape: Shape): Node {
	const weight = product([massAttached(shape), gravity]);
	return q(
		'expectedElongation',
		quotient(
			product([weight, freeFall(shape)]),
			sum([plus('force', leafOf('averageForce')), minus('weight', weight)])
		)
	);
}

/** Arrest force to plan with: the label's greatest, the conditioned value when wet or frozen; never the average. */
function arrestForce(shape: Shape): Node {
	return q('arrestForce', leafOf(shape.conditioned ? 'conditionedForce' : 'peakForce'));
}

/** Line and opened absorber: the length on which the body swings, planning case. */
function swingLength(shape: Shape): Node {
	return shape.absorber ? sum([plus('line', lineLength(shape)), plus('elongation', leafOf('elongation'))]) : lineLength(shape);
}

/**
 * Sideways part of the greatest speed with which the swinging body can meet an obstacle: speed of the whole
 * drop to that point, √(2 g drop), times the cosine of the line's angle there. Mechanics; an upper bound, for
 * the stop takes speed away.
 */
function speedAtObstacle(shape: Shape, obstacle: string): Node {
	const length = swingLength(shape);
	const depth = root(sum([plus('line', square(length)), minus('aside', square(leafOf(`obstacleAside_${obstacle}`)))]));
	const drop = sum([plus('depth', depth), minus('rise', rise(shape))]);
	return q('speedAtObstacle', quotient(product([speedAfter(drop), depth]), length));
}

/** Time from the first force to rest under a constant average force: v ÷ (F ÷ m − g). Mechanics. */
function stopTime(shape: Shape): Node {
	const slowing = sum([plus('force', quotient(leafOf('averageForce'), massAttached(shape))), minus('gravity', gravity)]);
	return q('stopTime', quotient(q('fallSpeed', speedAfter(freeFall(shape))), slowing));
}

/** Speed when the line pulls tight: its part along the line is stopped, its part across starts the swing. */
function speedParts(shape: Shape, part: 'along' | 'across'): Node {
	const speed = q('fallSpeed', speedAfter(freeFall(shape)));
	return part === 'along'
		? q('tightSpeed', quotient(product([speed, tautDepth(shape)]), lineLength(shape)))
		: q('sidewaysSpeed', quotient(product([speed, leafOf('offset')]), lineLength(shape)));
}

/** Depth of the soles below the anchorage once the body hangs: required clearance there, less the margin. */
function hangingDepth(shape: Shape): Node {
	const { stretch, body } = bodyTerms(shape);
	const elongation = shape.absorber ? [plus('elongation', leafOf('elongation'))] : [];
	return q('hangingDepth', sum([...connectorTerm(shape), plus('lanyard', leafOf('lanyardLength')), ...elongation, ...stretch, ...body]));
}

/** Speed after falling a height: √(2 g h). Mechanics, drag neglected. */
function speedAfter(height: Node): Node {
	return root(product([two, gravity, height]));
}

const treesOf = onceAShape(() => new Map<string, Node>());

/**
 * @returns the tree of a quantity for plans of a shape; equal shapes get the same frozen tree.
 * @throws if the shape lacks what the quantity needs (swing drop without an offset, capacity with none stated).
 */
export function formula(target: Target, shape: Shape): Node {
	const trees = treesOf(shape);
	const key = targetKey(target);
	const before = trees.get(key);
	if (before !== undefined) return before;
	const tree = build(target, shape);
	trees.set(key, tree);
	return tree;
}

function build(target: Target, shape: Shape): Node {
	switch (target.quantity) {
		case 'rise':
			return rise(shape);
		case 'lineLength':
			return q('lineLength', lineLength(shape));
		case 'tautDepth':
			return tautDepth(shape);
		case 'freeFall':
			return freeFall(shape);
		case 'swingDrop':
			return swingDrop(shape);
		case 'stretchOut': {
			const stretch = stretchOut(shape);
			if (stretch === undefined) throw new RangeError('this shape has neither slide nor stretch');
			return q('stretchOut', stretch);
		}
		case 'extraStretch':
			return extraStretch(formula({ quantity: 'stretchOut' }, shape));
		case 'headAboveDRing':
			return headAboveDRing();
		case 'straightening':
			return q('straightening', sum([plus('upright', leafOf('dRingHeight')), minus('lowered', leafOf('dRingNow'))]));
		case 'requiredClearance':
			return requiredClearance(shape, target.datum);
		case 'highestBelow': {
			const highest = highestBelow(shape);
			if (highest === undefined) throw new RangeError('this shape has no obstacle on the path');
			return q('highestBelow', highest);
		}
		case 'availableClearance':
			return availableClearance(shape, target.datum);
		case 'spare':
			return q(
				'spare',
				sum([
					plus('available', availableClearance(shape, 'surface')),
					minus('required', requiredClearance(shape, 'surface'))
				])
			);
		case 'reachDistance':
			return q(
				'reachDistance',
				root(sum([plus('offset', square(leafOf('offset'))), plus('rise', square(rise(shape)))]))
			);
		case 'reachSpare':
			return q(
				'reachSpare',
				sum([plus('line', lineLength(shape)), minus('distance', formula({ quantity: 'reachDistance' }, shape))])
			);
		case 'massAttached':
			return massAttached(shape);
		case 'lowestCapacity':
			return lowestCapacity(shape);
		case 'capacitySpare':
			return q('capacitySpare', sum([plus('capacity', lowestCapacity(shape)), minus('mass', massAttached(shape))]));
		case 'totalFall': {
			const { stretch } = bodyTerms({ ...shape, custom: 'd-ring-and-stretch' });
			const elongation = shape.absorber ? [plus('elongation', leafOf('elongation'))] : [];
			return q('totalFall', sum([plus('freeFall', freeFall(shape)), ...elongation, ...stretch]));
		}
		case 'expectedElongation':
			return expectedElongation(shape);
		case 'arrestForce':
			return arrestForce(shape);
		case 'bodyWeights':
			return q('bodyWeights', quotient(arrestForce(shape), product([massAttached(shape), gravity])));
		case 'fallSpeed':
			return q('fallSpeed', speedAfter(freeFall(shape)));
		case 'fallTime':
			return q('fallTime', root(quotient(product([two, freeFall(shape)]), gravity)));
		case 'swingSpeed':
			return q('swingSpeed', speedAfter(swingDrop(shape)));
		case 'tightSpeed':
			return speedParts(shape, 'along');
		case 'sidewaysSpeed':
			return speedParts(shape, 'across');
		case 'speedAtObstacle':
			return speedAtObstacle(shape, target.obstacle);
		case 'stopTime':
			return stopTime(shape);
		case 'hangingDepth':
			return hangingDepth(shape);
		case 'fallFactor':
			return q('fallFactor', quotient(freeFall(shape), lineLength(shape)));
		case 'largestMass':
			return q(
				'largestMass',
				quotient(
					product([leafOf('averageForce'), leafOf('elongation')]),
					product([gravity, sum([plus('freeFall', freeFall(shape)), plus('elongation', leafOf('elongation'))])])
				)
			);
		case 'largestFreeFall': {
			const weight = product([massAttached(shape), gravity]);
			return q(
				'largestFreeFall',
				product([
					leafOf('elongation'),
					quotient(sum([plus('force', leafOf('averageForce')), minus('weight', weight)]), weight)
				])
			);
		}
	}
}
