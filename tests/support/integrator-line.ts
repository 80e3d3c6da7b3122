/** One-dimensional motions and the plain pendulum, stepped. Independent of the engine (see `integrator.ts`). SI. */
import { until, type Leg, type Motion } from './integrator.ts';

export interface Stop {
	/** Travel after taut at rest, m. */
	readonly travel: number;
	/** From taut to rest, s. */
	readonly duration: number;
	/** Greatest force on the way, N. */
	readonly peak: number;
	/** When, after taut, and how fast the travel passed each of the breaks. */
	readonly breaks: readonly { readonly time: number; readonly speed: number }[];
}

/**
 * Straight down: a body that has `speed` when the line comes taut is stopped by a force that depends on the travel.
 * @param breaks travels at which the force law has a kink, ascending; a step ends at each.
 */
export function stepStop(
	mass: number,
	speed: number,
	gravity: number,
	force: (travel: number) => number,
	breaks: readonly number[] = []
): Stop {
	const motion: Motion = ([y = NaN, v = NaN]) => [v, gravity - force(y) / mass];
	const passed: { time: number; speed: number }[] = [];
	let leg: Leg = { time: 0, state: [0, speed], guard: 0 };
	let peak = force(0);
	for (const at of [...breaks, Infinity]) {
		leg = until(motion, leg.state, leg.time, [([, v = NaN]) => -v, ([y = NaN]) => y - at], 2e-4);
		const [y = NaN, v = NaN] = leg.state;
		peak = Math.max(peak, force(y - 1e-12));
		if (leg.guard === 0) break;
		passed.push({ time: leg.time, speed: v });
	}
	return { travel: leg.state[0] ?? NaN, duration: leg.time, peak, breaks: passed };
}

/** A plain drop of a height, m. With drag: `perSpeedSquared` is ½ ρ Cd A, kg/m. */
export function stepDrop(height: number, gravity: number, mass = 1, perSpeedSquared = 0): { readonly time: number; readonly speed: number } {
	if (height === 0) return { time: 0, speed: 0 };
	const motion: Motion = ([, v = NaN]) => [v, gravity - (perSpeedSquared / mass) * v * v];
	const end = until(motion, [0, 0], 0, [([y = NaN]) => y - height]);
	return { time: end.time, speed: end.state[1] ?? NaN };
}

export interface Swing {
	/** s */
	readonly time: number;
	readonly speed: number;
	/** Horizontal part of the speed. */
	readonly horizontal: number;
	/** How far the body has come down, m. */
	readonly drop: number;
	/** Line tension over weight. */
	readonly tension: number;
}

/** A taut line from an anchorage `height` above and `offset` aside, let go from rest, until the body is `at` from the plumb line. */
export function stepSwing(height: number, offset: number, gravity: number, at = 0): Swing {
	const length = Math.hypot(height, offset);
	const motion: Motion = ([angle = NaN, rate = NaN]) => [rate, (-gravity / length) * Math.sin(angle)];
	const end = until(motion, [Math.atan2(offset, height), 0], 0, [([angle = NaN]) => at - length * Math.sin(angle)]);
	const [angle = NaN, rate = NaN] = end.state;
	const speed = length * Math.abs(rate);
	return {
		time: end.time,
		speed,
		horizontal: speed * Math.cos(angle),
		drop: length * Math.cos(angle) - height,
		tension: Math.cos(angle) + (length * rate * rate) / gravity
	};
}

/**
 * A lanyard of stiffness k in front of a pack of constant force, in a plane, from an anchorage level with or
 * above the D-ring: what the pack lets out, and the greatest depth of the D-ring below the anchorage on the
 * way down and through. Webbing springs back; the pack does not.
 */
export function stepSeries(fall: {
	readonly mass: number;
	readonly reach: number;
	readonly rise: number;
	readonly offset: number;
	readonly force: number;
	readonly stiffness: number;
	readonly gravity: number;
}): { readonly deployment: number; readonly depth: number } {
	const { mass, reach, gravity, force, stiffness } = fall;
	const distance = ([x = NaN, z = NaN]: readonly number[]): number => Math.hypot(x, z);
	const along = ([x = NaN, z = NaN, vx = NaN, vz = NaN]: readonly number[]): number => (x * vx + z * vz) / Math.hypot(x, z);
	const pulled =
		(pull: (length: number) => number): Motion =>
		(state) => {
			const [x = NaN, z = NaN, vx = NaN, vz = NaN] = state;
			const per = pull(distance(state)) / (mass * distance(state));
			return [vx, vz, -per * x, -per * z - gravity];
		};
	const dt = 1e-4;
	const first = (leg: Leg, motion: Motion, guards: readonly ((state: readonly number[]) => number)[]): Leg => {
		const next = until(motion, leg.state, leg.time, [...guards, ([, , , vz = NaN]) => vz, ([x = NaN]) => -x - 0.1 * reach], dt);
		deepest = Math.max(deepest, -(next.state[1] ?? NaN));
		return next;
	};
	let deepest = 0;
	let deployment = 0;
	const taut = until(falling(gravity), [fall.offset, -fall.rise, 0, 0], 0, [(s) => distance(s) - reach]);
	let leg: Leg = { ...taut, guard: -1 };
	let opening = false;
	/* Guard 0 changes between webbing and pack; 1 is a lowest point; 2 is well past the plumb line, where it ends. */
	while (leg.guard !== 2) {
		const shut = reach + deployment;
		leg = opening
			? first(leg, pulled(() => force), [(s) => -along(s)])
			: first(leg, pulled((length) => Math.max(0, stiffness * (length - shut))), [(s) => stiffness * (distance(s) - shut) - force]);
		if (leg.guard !== 0) continue;
		if (opening) deployment = distance(leg.state) - reach - force / stiffness;
		opening = !opening;
	}
	return { deployment, depth: deepest };
}

/** A body without any pull on it. */
function falling(gravity: number): Motion {
	return ([, , vx = NaN, vz = NaN]) => [vx, vz, 0, -gravity];
}
