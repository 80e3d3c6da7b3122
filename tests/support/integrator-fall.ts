/**
 * A body on a line, in a plane: falls straight down, is stopped along the line, swings. Independent of the
 * engine (see `integrator.ts`). Origin at the anchorage, x horizontal, z up, SI. The line has no mass and no
 * friction; nothing is damped.
 */
import { until, type Leg, type Motion, type State } from './integrator.ts';

/** What the line does once it is taut. */
export type Law =
	/** A pack that opens at a constant force, N, until `limit` m have been let out. */
	| { readonly kind: 'constant'; readonly force: number; readonly limit: number }
	/** The constant force that stops the body after exactly this deployment, m: it is searched for. */
	| { readonly kind: 'force-for'; readonly deployment: number }
	/**
	 * The planning case of the playback: along the line the body slows down evenly and is stopped after exactly
	 * this deployment, m; the deceleration is searched for. If it would be less than `least` m/s², or (with an
	 * offset) if the body passed below the anchorage before it is stopped, the pack first opens without force,
	 * as little as cures it.
	 */
	| { readonly kind: 'even'; readonly deployment: number; readonly least: number };

export interface Fall {
	/** kg */
	readonly mass: number;
	/** Line from anchorage to D-ring with the pack closed, m. */
	readonly reach: number;
	/** Height of the anchorage above the D-ring before the fall, m; negative below it. */
	readonly rise: number;
	/** Horizontal distance of the D-ring's plumb line from the anchorage, m. */
	readonly offset: number;
	/** m/s² */
	readonly gravity: number;
	readonly law: Law;
	/** Depth below the anchorage at which the D-ring meets something, m. */
	readonly floor?: number | undefined;
	/** Length of a step, s; the moments are found to far less. */
	readonly step?: number;
}

/** A moment of a fall: s, m, m/s. */
export interface Moment {
	readonly time: number;
	readonly x: number;
	readonly z: number;
	readonly vx: number;
	readonly vz: number;
	readonly speed: number;
	/** Speed at which the line gets longer, and speed across it. */
	readonly along: number;
	readonly across: number;
	/** Pull of the line just before, N. */
	readonly pull: number;
}

export type FallEnd = 'contact' | 'used-up' | 'far-side' | 'hanging';

export interface FallResult {
	readonly ends: FallEnd;
	readonly end: Moment;
	readonly taut: Moment | undefined;
	/** The line no longer gets longer. */
	readonly held: Moment | undefined;
	/** First time straight below the anchorage after that. */
	readonly lowest: Moment | undefined;
	/** What the pack let out, m. */
	readonly deployment: number;
	/** Of it, without force, m. */
	readonly forceless: number;
}

/** Speed along the line below which a body counts as held, m/s. */
const STILL = 1e-9;
/** Offset below which a line counts as plumb, m. */
const PLUMB = 1e-12;

const distance = ([x = NaN, z = NaN]: State): number => Math.hypot(x, z);
const along = ([x = NaN, z = NaN, vx = NaN, vz = NaN]: State): number => (x * vx + z * vz) / Math.hypot(x, z);
const across = ([x = NaN, z = NaN, vx = NaN, vz = NaN]: State): number => (x * vz - z * vx) / Math.hypot(x, z);

/** Pull of the line over the mass, m/s². */
type Pull = (state: State) => number;

/** Pull that slows the body along the line by exactly `deceleration`, whatever gravity and swing do. */
const slowing =
	(gravity: number, deceleration: number): Pull =>
	(state) =>
		deceleration + (gravity * -(state[1] ?? NaN)) / distance(state) + across(state) ** 2 / distance(state);

function moved(gravity: number, pull: Pull): Motion {
	return (state) => {
		const [x = NaN, z = NaN, vx = NaN, vz = NaN] = state;
		const per = pull(state) / distance(state);
		return [vx, vz, -per * x, -per * z - gravity];
	};
}

function momentOf(leg: Leg, pull: number): Moment {
	const [x = NaN, z = NaN, vx = NaN, vz = NaN] = leg.state;
	return {
		time: leg.time,
		x,
		z,
		vx,
		vz,
		speed: Math.hypot(vx, vz),
		along: along(leg.state),
		across: across(leg.state),
		pull
	};
}

/**
 * Steps a fall to its end: contact, the pack used up, the first stop on the far side (at the latest when the
 * line is level there), or hanging still.
 * @throws RangeError if the D-ring starts out of reach.
 */
export function stepFall(fall: Fall): FallResult {
	const { mass, gravity, reach } = fall;
	if (Math.hypot(fall.offset, fall.rise) > reach + 1e-9) throw new RangeError('the D-ring is out of reach');
	const onFloor = (state: State): number => -(state[1] ?? NaN) - (fall.floor ?? Infinity);
	const result = { taut: undefined, held: undefined, lowest: undefined, deployment: 0, forceless: 0 };

	const start: Leg = { time: 0, state: [fall.offset, -fall.rise, 0, 0], guard: 0 };
	const drop = dropTo(fall, start, reach, onFloor);
	if (drop.guard === 1) return { ...result, ends: 'contact', end: momentOf(drop, 0) };
	const taut = momentOf(drop, 0);

	const { pull, forceless, limit } = pullOf(fall, drop);
	const open = forceless > 0 ? dropTo(fall, drop, reach + forceless, onFloor) : drop;
	if (open.guard === 1) return { ...result, taut, ends: 'contact', end: momentOf(open, 0), deployment: distance(open.state) - reach };

	const hold = moved(gravity, slowing(gravity, 0));
	const stopping = moved(gravity, pull);
	const stop =
		along(open.state) > STILL
			? until(stopping, open.state, open.time, [(s) => -along(s), onFloor, (s) => distance(s) - reach - limit], fall.step)
			: { ...open, guard: 0 };
	const letOutSoFar = { taut, forceless, deployment: distance(stop.state) - reach };
	const stopped = momentOf(stop, mass * pull(stop.state));
	if (stop.guard === 1) return { ...result, ...letOutSoFar, ends: 'contact', end: stopped };
	if (stop.guard === 2) return { ...result, ...letOutSoFar, ends: 'used-up', end: stopped };

	const x = stop.state[0] ?? NaN;
	const held = stopped;
	if (Math.abs(fall.offset) < PLUMB) return { ...result, ...letOutSoFar, held, lowest: held, ends: 'hanging', end: held };
	const side = Math.sign(fall.offset);
	const under = side * x > 1e-9 ? until(hold, stop.state, stop.time, [(s) => -side * (s[0] ?? NaN), onFloor], fall.step) : { ...stop, guard: 0 };
	const low = momentOf(under, mass * slowing(gravity, 0)(under.state));
	if (under.guard === 1) return { ...result, ...letOutSoFar, held, ends: 'contact', end: low };
	const far = until(hold, under.state, under.time, [(s) => side * (s[2] ?? NaN), (s) => s[1] ?? NaN], fall.step);
	return { ...letOutSoFar, held, lowest: low, ends: 'far-side', end: momentOf(far, mass * slowing(gravity, 0)(far.state)) };
}

/** Falls straight down until the line is so long, unless the floor is met first (guard 1). */
function dropTo(fall: Fall, from: Leg, length: number, onFloor: (state: State) => number): Leg {
	/* Hung up at full length the fall is over before it begins; from above the anchorage the line first gets shorter. */
	if ((from.state[1] ?? NaN) <= 0 && distance(from.state) >= length - PLUMB) return { ...from, guard: 0 };
	const falling: Motion = ([, , vx = NaN, vz = NaN]) => [vx, vz, 0, -fall.gravity];
	return until(falling, from.state, from.time, [(state) => distance(state) - length, onFloor], fall.step);
}

function pullOf(fall: Fall, taut: Leg): { readonly pull: Pull; readonly forceless: number; readonly limit: number } {
	const { law, mass, gravity, reach } = fall;
	if (law.kind === 'constant') return { pull: () => law.force / mass, forceless: 0, limit: law.limit };
	if (law.kind === 'force-for') {
		const spare = shoot(law.deployment, (beyond) => letOut(fall, taut, () => gravity + beyond), 8 * gravity);
		return { pull: () => gravity + spare, forceless: 0, limit: Infinity };
	}
	const opened = (forceless: number): Leg => (forceless > 0 ? dropTo(fall, taut, reach + forceless, () => -1) : taut);
	const rateFrom = (open: Leg): number => shoot(law.deployment, (c) => letOut(fall, open, slowing(gravity, c)), guess(open));
	/* Where a body that only slowed down would stop in time: good enough to begin with, and to tell what is hopeless. */
	const guess = (open: Leg): number => along(open.state) ** 2 / (2 * (reach + law.deployment - distance(open.state)));
	/* Nought or more: this much forceless opening is enough. */
	const enough = (forceless: number): number => {
		const open = opened(forceless);
		if (!(along(open.state) > STILL)) return -1;
		if (Math.abs(fall.offset) < PLUMB) return guess(open) < law.least / 2 ? guess(open) - law.least : rateFrom(open) - law.least;
		const side = Math.sign(fall.offset);
		const swung = (c: number): Leg =>
			until(moved(gravity, slowing(gravity, c)), open.state, open.time, [(s) => -along(s), (s) => -side * (s[0] ?? NaN)], fall.step);
		const first = swung(guess(open));
		const stop = first.guard === 1 && along(first.state) > 1e-2 ? first : swung(rateFrom(open));
		return stop.guard === 0 ? side * (stop.state[0] ?? NaN) : -along(stop.state);
	};
	let some = 0;
	while (!(enough(some) >= 0)) {
		if (some > 0.99 * law.deployment) throw new RangeError('no stop of this fall is over in time');
		some = (some + law.deployment) / 2;
	}
	const forceless = some === 0 ? 0 : rootBetween(2 * some - law.deployment, some, enough);
	return { pull: slowing(gravity, rateFrom(opened(forceless))), forceless, limit: Infinity };
}

/** @returns how far a pull lets the line out until it no longer gets longer, m. */
function letOut(fall: Fall, from: Leg, pull: Pull): number {
	const end = until(moved(fall.gravity, pull), from.state, from.time, [(state) => -along(state)], fall.step);
	return distance(end.state) - fall.reach;
}

/**
 * Shooting: the strength at which a stop lets out exactly `wanted` m, from a first guess. Secants over one by
 * the strength, over which the length let out is nearly straight.
 */
function shoot(wanted: number, lengthLetOut: (strength: number) => number, guess: number): number {
	let [a, b] = [1 / guess, 1.01 / guess];
	let fa = lengthLetOut(1 / a) - wanted;
	if (Math.abs(fa) < 1e-11) return 1 / a;
	let fb = lengthLetOut(1 / b) - wanted;
	for (let i = 0; i < 60 && Math.abs(fb) > 1e-11 && fa !== fb; i++) {
		const next = Math.min(4 * b, Math.max(b / 4, b - (fb * (b - a)) / (fb - fa)));
		[a, fa] = [b, fb];
		b = next;
		fb = lengthLetOut(1 / b) - wanted;
	}
	if (Math.abs(fb) > 1e-9) throw new Error(`the shooting missed by ${fb} m`);
	return 1 / b;
}

/** Regula falsi (Illinois): f is negative at `low`, positive at `high`. @returns where it is nought. */
function rootBetween(low: number, high: number, f: (at: number) => number): number {
	let [a, b] = [low, high];
	let [fa, fb] = [f(a), f(b)];
	if (fa >= 0 || fb < 0) throw new RangeError('no change of sign');
	for (let i = 0; i < 200 && b - a > 1e-8; i++) {
		const straight = b - (fb * (b - a)) / (fb - fa);
		const at = i % 3 === 2 ? (a + b) / 2 : straight;
		const value = f(at);
		if (Math.abs(value) < 1e-8) return at;
		if (value >= 0) {
			[b, fb] = [at, value];
			fa /= 2;
		} else {
			[a, fa] = [at, value];
			fb /= 2;
		}
	}
	return b;
}
