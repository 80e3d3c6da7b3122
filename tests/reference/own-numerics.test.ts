/**
 * The project's own numerics (shared/examples/own-numerics.json) against the engine's trees, and, where the
 * engine offers no such quantity, against the independent integrator. They check mathematics; they are no
 * outside evidence. Their `unit.*` entries stand in units.test.ts.
 */
import { describe, expect, test } from 'vitest';
import { STANDARD_GRAVITY } from '#lib/quantity/index.ts';
import { engine, fallOf, risen, type Numbers } from '../support/engine.ts';
import { OWN_NUMERICS, input, type OwnNumber } from '../support/examples.ts';
import { stepDrop, stepSeries, stepStop, stepSwing } from '../support/integrator-line.ts';

const g = STANDARD_GRAVITY;
type Way = (of: OwnNumber, read: (name: string) => number) => number;

const level = (read: (name: string) => number): Numbers => ({ lanyardLength: read('L'), ...risen(read('anchor_above_dring')) });
const absorber = (read: (name: string) => number): Numbers => ({ ...fallOf(read('h')), bodyMass: read('m'), averageForce: read('F') });
const elongation = (numbers: Numbers): number => engine({ quantity: 'expectedElongation' }, numbers);

/** A line from H above and a aside, as a lanyard that is taut at once: its length is the distance. */
function hung(height: number, offset: number): Numbers {
	return { lanyardLength: Math.sqrt(height * height + offset * offset), offset, ...risen(height) };
}

function clearance(read: (name: string) => number): Numbers {
	const surface = read('z_surface');
	return {
		connectorLength: read('c'),
		lanyardLength: read('L'),
		elongation: read('x'),
		dRingSlide: read('slide'),
		dRingHeight: read('hD'),
		margin: read('margin'),
		anchorageHeight: read('z_structure') - surface,
		lowerLevelDepth: surface,
		obstacleTop_o: read('z_obstacle')
	};
}

function slope(of: (at: number) => number, at: number, width: number): number {
	return (of(at + width) - of(at - width)) / (2 * width);
}

const req = (read: (name: string) => number): Numbers => ({
	lanyardLength: 6 * 0.3048,
	dRingSlide: 0.3048,
	margin: 2 * 0.3048,
	...risen(0, read('hD')),
	elongation: read('x')
});

/** By the engine's trees. */
const ENGINE: readonly (readonly [RegExp, Way])[] = [
	[/^ff\.vertical\./, (_, read) => engine({ quantity: 'freeFall' }, level(read))],
	[/^ff\.offset\.(level|above|feet)/, (_, read) => engine({ quantity: 'freeFall' }, { ...level(read), offset: read('offset') })],
	[
		/^ff\.sling\.(overhead|below|level)$/,
		(_, read) =>
			engine(
				{ quantity: 'freeFall' },
				{ lanyardLength: read('L'), connectorLength: read('sling'), ...risen(read('structure_above_dring')) }
			)
	],
	[
		/^ff\.sling\.flip-error$/,
		(_, read) =>
			engine({ quantity: 'freeFall' }, { lanyardLength: 2, connectorLength: read('sling'), ...risen(-1) }) -
			engine({ quantity: 'freeFall' }, { lanyardLength: 2, ...risen(-1 + read('sling')) })
	],
	[/^ff\.speed\./, (_, read) => engine({ quantity: 'fallSpeed' }, fallOf(read('h')))],
	[/^ff\.time\./, (_, read) => engine({ quantity: 'fallTime' }, fallOf(read('h')))],
	[
		/^ff\.offset\.radial-speed$/,
		(_, read) => engine({ quantity: 'tightSpeed' }, { lanyardLength: read('L'), offset: read('offset'), ...risen(0) })
	],
	[
		/^ff\.offset\.tangential-speed$/,
		(_, read) => engine({ quantity: 'sidewaysSpeed' }, { lanyardLength: read('L'), offset: read('offset'), ...risen(0) })
	],
	[/^abs\.const\..*\.x$/, (_, read) => elongation(absorber(read))],
	[/^abs\.const\..*\.tstop$/, (_, read) => engine({ quantity: 'stopTime' }, absorber(read))],
	[
		/^abs\.totalfall\./,
		(_, read) => engine({ quantity: 'totalFall' }, { ...absorber(read), elongation: elongation(absorber(read)) })
	],
	[/^abs\.gload\./, (_, read) => engine({ quantity: 'bodyWeights' }, { bodyMass: read('m'), peakForce: read('F') })],
	[/^abs\.sens\.dxdm$/, (_, read) => slope((m) => elongation({ ...absorber(read), bodyMass: m }), read('m'), 1e-3)],
	[/^abs\.sens\.dxdF$/, (_, read) => slope((F) => elongation({ ...absorber(read), averageForce: F }), read('F'), 0.1)],
	[
		/^abs\.maxmass\./,
		(_, read) =>
			engine({ quantity: 'largestMass' }, { ...fallOf(read('h')), averageForce: read('F'), elongation: read('x_max') })
	],
	[
		/^abs\.maxff\./,
		(_, read) =>
			engine({ quantity: 'largestFreeFall' }, { bodyMass: read('m'), averageForce: read('F'), elongation: read('x_max') })
	],
	[
		/^abs\.g-choice$/,
		() => stepDrop(2, 9.81).speed / engine({ quantity: 'fallSpeed' }, fallOf(2)) - 1
	],
	[
		/^posture\.lanyard\.ff-change$/,
		(_, read) => {
			const standing: Numbers = { lanyardLength: 1.8, ...risen(0.5, 1.5) };
			return (
				engine({ quantity: 'freeFall' }, { ...standing, dRingNow: 1.5 - read('kneel') }) -
				engine({ quantity: 'freeFall' }, standing)
			);
		}
	],
	[/^swing\.drop\./, (_, read) => engine({ quantity: 'swingDrop' }, hung(read('H'), read('offset')))],
	[/^swing\.v\./, (_, read) => engine({ quantity: 'swingSpeed' }, hung(read('H'), read('offset')))],
	[
		/^swing\.obstacle\./,
		(_, read) =>
			engine(
				{ quantity: 'speedAtObstacle', obstacle: 'o' },
				{ ...hung(read('H'), read('offset')), obstacleTop_o: 1, obstacleAside_o: read('xo') }
			)
	],
	[/^swing\.ratio\./, (_, read) => engine({ quantity: 'swingDrop' }, hung(1, Math.tan((read('phi_deg') * Math.PI) / 180)))],
	[
		/^swing\.lanyard2d\..*\.plan$/,
		(_, read) => {
			const straight: Numbers = { ...level(read), bodyMass: read('m'), averageForce: read('F') };
			return read('L') + elongation(straight);
		}
	],
	[/^clear\..*\.C_structure$/, (_, read) => engine({ quantity: 'requiredClearance', datum: 'anchorage' }, clearance(read))],
	[/^clear\..*\.C_connector$/, (_, read) => engine({ quantity: 'requiredClearance', datum: 'connector' }, clearance(read))],
	[/^clear\..*\.C_surface$/, (_, read) => engine({ quantity: 'requiredClearance', datum: 'surface' }, clearance(read))],
	[/^clear\..*\.spare$/, (_, read) => engine({ quantity: 'spare' }, clearance(read))],
	[
		/^clear\.offset-identity$/,
		(_, read) => {
			const numbers = { ...level(read), offset: read('offset') };
			return (
				engine({ quantity: 'freeFall' }, numbers) +
				engine({ quantity: 'swingDrop' }, numbers) +
				engine({ quantity: 'rise' }, numbers)
			);
		}
	],
	[/^time\.t1$/, (_, read) => engine({ quantity: 'fallTime' }, fallOf(read('h')))],
	[/^time\.v1$/, (_, read) => engine({ quantity: 'fallSpeed' }, fallOf(read('h')))],
	[/^time\.x-noharness$/, (_, read) => elongation(absorber(read))],
	[/^unc\.req\./, (_, read) => engine({ quantity: 'requiredClearance', datum: 'anchorage' }, req(read))],
	[
		/^unc\.avail\.halfwidth$/,
		(_, read) => {
			const between = (u: number): number =>
				engine({ quantity: 'availableClearance', datum: 'surface' }, { lowerLevelDepth: 6 + u, obstacleTop_o: 2 - u });
			return (between(read('reading')) - between(-read('reading'))) / 2;
		}
	],
	[/^unc\.x\./, (_, read) => elongation(absorber(read))]
];

function ramp(read: (name: string) => number) {
	const [low, high, over] = [read('Fa'), read('Fp'), read('x1')];
	const force = (y: number): number => (y < over ? low + ((high - low) * y) / over : high);
	return stepStop(read('m'), stepDrop(read('h'), g).speed, g, force, [over]);
}

function rope(read: (name: string) => number) {
	const stiffness = read('EA') / read('L');
	return stepStop(read('m'), stepDrop(read('h'), g).speed, g, (y) => stiffness * y);
}

/** Webbing, pack, and webbing again once the pack is used up. */
function bottoming(read: (name: string) => number) {
	const [force, k, most] = [read('F'), read('k'), read('x_max')];
	const open = force / k;
	const law = (y: number): number => (y < open ? k * y : y < open + most ? force : force + k * (y - open - most));
	return stepStop(read('m'), stepDrop(read('h'), g).speed, g, law, [open, open + most]);
}

function harnessAndPack(read: (name: string) => number) {
	const [force, slide] = [read('F'), read('harness_slide')];
	const stop = stepStop(read('m'), stepDrop(read('h'), g).speed, g, (y) => (y < slide ? (force * y) / slide : force), [slide]);
	const passed = stop.breaks[0];
	if (passed === undefined) throw new Error('stopped within the slide');
	return { taut: stepDrop(read('h'), g).time, passed, stop, slide };
}

const series = (read: (name: string) => number) =>
	stepSeries({
		mass: read('m'),
		reach: read('L'),
		rise: read('anchor_above_dring'),
		offset: read('offset'),
		force: read('F'),
		stiffness: 400e3,
		gravity: g
	});

/** By the independent integrator: the engine has no such quantity. */
const STEPPED: readonly (readonly [RegExp, Way])[] = [
	[/^ff\.drag\./, (_, read) => stepDrop(read('h'), g, read('m'), 0.5 * read('rho') * read('CdA')).speed],
	[/^abs\.ramp\..*\.x$/, (_, read) => ramp(read).travel],
	[/^abs\.ramp\..*\.Fpeak$/, (_, read) => ramp(read).peak],
	[/^abs\.bottom\..*\.E$/, (_, read) => 0.5 * read('m') * (bottoming(read).breaks[1]?.speed ?? NaN) ** 2],
	[/^abs\.bottom\..*\.Fpeak$/, (_, read) => bottoming(read).peak],
	[
		/^abs\.activate\.h$/,
		(_, read) => {
			const stiffness = read('EA') / read('L');
			let [low, high] = [0, 1];
			while (high - low > 1e-7) {
				const h = (low + high) / 2;
				const peak = stepStop(read('m'), stepDrop(h, g).speed, g, (y) => stiffness * y).peak;
				if (peak > read('Fa')) high = h;
				else low = h;
			}
			return high;
		}
	],
	[/^rope\..*\.F$/, (_, read) => rope(read).peak],
	[/^rope\..*\.stretch$/, (_, read) => rope(read).travel],
	[/^swing\.t\./, (_, read) => stepSwing(read('H'), read('offset'), g).time],
	[/^swing\.T\./, (_, read) => stepSwing(read('H'), read('offset'), g).tension],
	[/^swing\.lanyard2d\..*\.xp$/, (_, read) => series(read).deployment],
	[/^swing\.lanyard2d\..*\.lowest$/, (_, read) => series(read).depth],
	[
		/^clear\.swingpath\./,
		(_, read) => {
			const height = read('H');
			return height + stepSwing(height, read('offset'), g, read('x')).drop + read('hD') + read('slide') + read('margin');
		}
	],
	[/^time\.t2$/, (_, read) => harnessAndPack(read).taut + harnessAndPack(read).passed.time],
	[/^time\.v2$/, (_, read) => harnessAndPack(read).passed.speed],
	[/^time\.t3$/, (_, read) => harnessAndPack(read).taut + harnessAndPack(read).stop.duration],
	[/^time\.x3$/, (_, read) => harnessAndPack(read).stop.travel - harnessAndPack(read).slide]
];

/** Systems of later issues. */
const LATER = /^(srd|hll|vll|restr|swing\.edge)\./;
const UNITS = /^unit\./;
/** Root of squares: explained in words only, no quantity of the engine and nothing to step. */
const EXPLAINED_ONLY = /^unc\.avail\.rss$/;

const wayOf = (ways: readonly (readonly [RegExp, Way])[], id: string): readonly Way[] =>
	ways.filter(([match]) => match.test(id)).map(([, way]) => way);

function cases(ways: readonly (readonly [RegExp, Way])[]): [string, OwnNumber, Way][] {
	return OWN_NUMERICS.flatMap((of) => wayOf(ways, of.id).map((way): [string, OwnNumber, Way] => [of.id, of, way]));
}

function holds(of: OwnNumber, way: Way): void {
	const value = way(of, (name) => input(of, name));
	expect(Math.abs(value - of.expected), `${value} ${of.unit} for ${of.expected}`).toBeLessThanOrEqual(of.tolerance);
}

describe("the engine against the project's own numerics", () => {
	test.each(cases(ENGINE))('%s', (_, of, way) => holds(of, way));
});

describe("the independent integrator against the project's own numerics that the engine does not offer", () => {
	test.each(cases(STEPPED))('%s', (_, of, way) => holds(of, way));
});

test('every own number belongs to exactly one of: engine, integrator, units, later systems, explained only', () => {
	const belongs = (id: string): number =>
		wayOf(ENGINE, id).length +
		wayOf(STEPPED, id).length +
		[UNITS, LATER, EXPLAINED_ONLY].filter((match) => match.test(id)).length;
	expect(OWN_NUMERICS.filter(({ id }) => belongs(id) !== 1).map(({ id }) => id)).toEqual([]);
	const count = (match: (id: string) => boolean): number => OWN_NUMERICS.filter(({ id }) => match(id)).length;
	const counts = {
		all: OWN_NUMERICS.length,
		engine: count((id) => wayOf(ENGINE, id).length === 1),
		integrator: count((id) => wayOf(STEPPED, id).length === 1),
		units: count((id) => UNITS.test(id)),
		later: count((id) => LATER.test(id)),
		explainedOnly: count((id) => EXPLAINED_ONLY.test(id))
	};
	expect(counts).toEqual({ all: 303, engine: 102, integrator: 45, units: 13, later: 142, explainedOnly: 1 });
});
