/**
 * The planning-case fall of a D-ring that starts beside the plumb line of its anchorage: free fall, stop
 * along the line, swing. Integrated once; drawn from stored samples.
 *
 * ℓ line, a offset, h free fall, x planned elongation, ρ distance from anchorage to D-ring, φ angle of the
 * line from the plumb line (positive on the worker's side), g gravity. Mechanics of a mass point in polar
 * coordinates; the line has no mass and no stretch but its elongation.
 *
 * 1. The D-ring falls straight down; the line is tight when ρ = ℓ. The first e of the elongation opens
 *    without force (see 4), so the free fall goes on until ρ = ℓ + e, at depth D = √(ρ² − a²), speed v.
 *    Then only u = v D/ρ is stopped along the line; φ̇ = −v a/ρ² starts the swing.
 * 2. Along the line the speed falls evenly to nothing over the rest of the elongation:
 *    ρ̈ = −c, c = u²/(2(x − e)), so that ρ̇ = 0 exactly at ρ = ℓ + x. Across it, φ̈ = −(g sin φ + 2ρ̇φ̇)/ρ.
 *    The line pulls with F/m = c + g cos φ + ρφ̇². Without offset that is the constant m g (h + x)/x.
 * 3. Then a pendulum of length R = ℓ + x without loss: φ̈ = −(g/R) sin φ, F/m = g cos φ + Rφ̇². The lowest
 *    point is straight below the anchorage at depth R. It ends at the first stop of the swing, or with the
 *    line level on the far side.
 * 4. e is the least for which the stop is over before the D-ring passes the plumb line, found by bisection;
 *    nought for most plans. So the lowest point is R deep, as the required clearance has it, also for falls
 *    that swing through faster than they would stop.
 */
import { GRAVITY, type Fall } from './simulate-fall.ts';
import { firstWhere, type Motion, type Track } from './simulate-track.ts';

/**
 * Stored samples a second.
 * @reason between two of them the cubic is off by less than a thousandth of a millimetre
 */
const SAMPLE_RATE = 240;

/**
 * Runge-Kutta steps between two samples: under a millisecond each.
 * @reason the target is a millimetre; these steps stay below a millionth of one
 */
const STEPS_A_SAMPLE = 5;

/** The line of a pendulum, levelled out on the far side. */
const LEVEL = -Math.PI / 2;

interface Angle {
	readonly phi: number;
	readonly omega: number;
}

/** φ̈ at a time into a segment, s. */
type Acceleration = (time: number, at: Angle) => number;

/** Samples of one law of motion, from its start; the last one stands at its exact end. */
interface Segment {
	readonly start: number;
	readonly times: readonly number[];
	readonly angles: readonly Angle[];
	readonly acceleration: Acceleration;
}

/** The stop along the line, in closed form, for a forceless run of e. */
interface Radial {
	/** Distance from the anchorage at its start, m. */
	readonly from: number;
	/** The start of the stop after the start of the fall, and how long it takes, s. */
	readonly start: number;
	readonly lasts: number;
	readonly deceleration: number;
	readonly begin: Angle;
}

/** The D-ring before the fall, below the anchorage, m. */
function startDepth({ lineLength, offset, freeFall }: Fall): number {
	return Math.sqrt(lineLength * lineLength - offset * offset) - freeFall;
}

function radialStop(fall: Fall, e: number): Radial {
	const { lineLength, offset: a, elongation: x } = fall;
	const from = lineLength + e;
	const depth = Math.sqrt(from * from - a * a);
	const drop = depth - startDepth(fall);
	const v = Math.sqrt(2 * GRAVITY * drop);
	const u = (v * depth) / from;
	return {
		from,
		start: Math.sqrt((2 * drop) / GRAVITY),
		lasts: (2 * (x - e)) / u,
		deceleration: (u * u) / (2 * (x - e)),
		begin: { phi: Math.atan2(a, depth), omega: (-v * a) / (from * from) }
	};
}

/** φ̈ while the line runs out: the closed form of ρ is put in, so that ρ never drifts. */
function whileStopping({ lasts, deceleration }: Radial, full: number): Acceleration {
	return (time, { phi, omega }) => {
		const left = lasts - time;
		const rho = full - 0.5 * deceleration * left * left;
		return -(GRAVITY * Math.sin(phi) + 2 * deceleration * left * omega) / rho;
	};
}

/**
 * Weights 1, 2, 2, 1 of the four slopes add up to this.
 * @source classical Runge-Kutta method, any text on numerical integration
 */
const SIMPSON = 6;

/** One step of the classical Runge-Kutta method of fourth order. */
function step(acceleration: Acceleration, time: number, at: Angle, length: number): Angle {
	const half = length / 2;
	const a1 = acceleration(time, at);
	const at2 = { phi: at.phi + half * at.omega, omega: at.omega + half * a1 };
	const a2 = acceleration(time + half, at2);
	const at3 = { phi: at.phi + half * at2.omega, omega: at.omega + half * a2 };
	const a3 = acceleration(time + half, at3);
	const at4 = { phi: at.phi + length * at3.omega, omega: at.omega + length * a3 };
	const a4 = acceleration(time + length, at4);
	return {
		phi: at.phi + (length * (at.omega + 2 * (at2.omega + at3.omega) + at4.omega)) / SIMPSON,
		omega: at.omega + (length * (a1 + 2 * (a2 + a3) + a4)) / SIMPSON
	};
}

/**
 * Integrates one law of motion until a given time, or until a guard holds, whichever is first.
 * The instant at which the guard begins to hold is found by halving the step.
 */
function integrate(
	start: number,
	begin: Angle,
	acceleration: Acceleration,
	lasts: number,
	over: (at: Angle) => boolean
): Segment {
	const times = [0];
	const angles = [begin];
	let at = begin;
	for (let sample = 0; sample / SAMPLE_RATE < lasts; sample += 1) {
		const from = sample / SAMPLE_RATE;
		const length = (Math.min(lasts, (sample + 1) / SAMPLE_RATE) - from) / STEPS_A_SAMPLE;
		for (let i = 0; i < STEPS_A_SAMPLE; i += 1) {
			const time = from + i * length;
			const before = at;
			at = step(acceleration, time, before, length);
			if (over(at)) {
				const part = firstWhere(0, length, (some) => over(step(acceleration, time, before, some)));
				times.push(time + part);
				angles.push(step(acceleration, time, before, part));
				return { start, times, angles, acceleration };
			}
		}
		times.push(Math.min(lasts, (sample + 1) / SAMPLE_RATE));
		angles.push(at);
	}
	return { start, times, angles, acceleration };
}

const never = (): boolean => false;
const pastPlumb = (at: Angle): boolean => at.phi < 0;

/** Whether the stop along the line is over before the D-ring passes the plumb line. */
function stopsInTime(fall: Fall, e: number): boolean {
	const radial = radialStop(fall, e);
	if (radial.deceleration === 0) return false;
	const full = fall.lineLength + fall.elongation;
	const path = integrate(0, radial.begin, whileStopping(radial, full), radial.lasts, pastPlumb);
	return !pastPlumb(lastOf(path.angles));
}

/** @returns the motion of the D-ring of a fall with an offset. */
export function swingTrack(fall: Fall): Track {
	const { lineLength, offset: a, elongation: x, freeFall: h } = fall;
	const begins = startDepth(fall);
	const full = lineLength + x;
	const e = stopsInTime(fall, 0) ? 0 : firstWhere(0, x, (some) => some < x && stopsInTime(fall, some));
	if (e >= x) throw new RangeError('no stop of this fall is over before the D-ring passes the plumb line');
	const radial = radialStop(fall, e);
	const tight = Math.sqrt((2 * h) / GRAVITY);
	const done = radial.start + radial.lasts;

	const stopping = integrate(radial.start, radial.begin, whileStopping(radial, full), radial.lasts, never);
	const pendulum: Acceleration = (_, { phi }) => (-GRAVITY / full) * Math.sin(phi);
	const stopped = lastOf(stopping.angles);
	// With a forceless run the stop ends on the plumb line: nothing is left to fall.
	const falling = integrate(done, stopped, pendulum, e > 0 ? 0 : Infinity, (at) => at.phi <= 0);
	const lowest = endOf(falling);
	const through = { phi: 0, omega: lastOf(falling.angles).omega };
	const rising = integrate(lowest, through, pendulum, Infinity, (at) => at.omega >= 0 || at.phi <= LEVEL);
	const end = endOf(rising);

	const at = (t: number): Motion => {
		if (t < radial.start) return freely(t);
		if (t < done) {
			const left = done - t;
			const rho = full - 0.5 * radial.deceleration * left * left;
			return along(read(stopping, t), rho, radial.deceleration * left, radial.deceleration, 'stopping');
		}
		return along(read(t < lowest ? falling : rising, t), full, 0, 0, 'swinging');
	};
	const freely = (t: number): Motion => {
		const drop = 0.5 * GRAVITY * t * t;
		const depth = begins + drop;
		const down = GRAVITY * t;
		if (t < tight) {
			return { x: a, depth, velocity: { x: 0, down }, run: drop, deployed: 0, deploying: 0, pull: 0, phase: 'free-fall' };
		}
		const rho = Math.sqrt(a * a + depth * depth);
		const deployed = Math.max(0, rho - lineLength);
		const deploying = (down * depth) / rho;
		return { x: a, depth, velocity: { x: 0, down }, run: h + deployed, deployed, deploying, pull: 0, phase: 'stopping' };
	};
	const along = ({ phi, omega }: Angle, rho: number, out: number, c: number, phase: Motion['phase']): Motion => {
		const sine = Math.sin(phi);
		const cosine = Math.cos(phi);
		return {
			x: rho * sine,
			depth: rho * cosine,
			velocity: { x: out * sine + rho * omega * cosine, down: out * cosine - rho * omega * sine },
			run: h + rho - lineLength,
			deployed: rho - lineLength,
			deploying: out,
			pull: c + GRAVITY * cosine + rho * omega * omega,
			phase
		};
	};
	return { tight, done, lowest, end, at };
}

/** Cubic Hermite interpolation of the angle from its rate, and of the rate from the law of motion. */
function read(segment: Segment, t: number): Angle {
	const { times, angles, acceleration } = segment;
	const time = t - segment.start;
	let low = 0;
	let high = times.length - 1;
	while (high - low > 1) {
		const middle = Math.floor((low + high) / 2);
		if ((times[middle] ?? Infinity) <= time) low = middle;
		else high = middle;
	}
	const from = times[low] ?? 0;
	const to = times[high] ?? from;
	const left = angles[low];
	const right = angles[high];
	if (left === undefined || right === undefined) throw new RangeError('a segment without samples');
	const length = to - from;
	if (length === 0) return left;
	const s = Math.min(1, Math.max(0, (time - from) / length));
	return {
		phi: hermite(s, length, left.phi, left.omega, right.phi, right.omega),
		omega: hermite(s, length, left.omega, acceleration(from, left), right.omega, acceleration(to, right))
	};
}

function hermite(s: number, length: number, from: number, fromRate: number, to: number, toRate: number): number {
	const r = 1 - s;
	return r * r * (from * (1 + 2 * s) + length * s * fromRate) + s * s * (to * (1 + 2 * r) - length * r * toRate);
}

function lastOf(angles: readonly Angle[]): Angle {
	const last = angles[angles.length - 1];
	if (last === undefined) throw new RangeError('a segment without samples');
	return last;
}

function endOf(segment: Segment): number {
	return segment.start + (segment.times[segment.times.length - 1] ?? 0);
}
