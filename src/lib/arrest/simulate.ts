/**
 * The fall of a plan as the playback shows it: always the planning case, so that the picture ends where the
 * graded answer ends. Pure; SI; nothing is integrated while it is drawn.
 *
 * The laws of motion stand in `simulate-vertical.ts`, `simulate-swing.ts` and `simulate-body.ts`.
 * Settling and the swing dying out after the end are no part of it: a picture may add them.
 */
import { bodyAt } from './simulate-body.ts';
import { barriersOf, firstContact, leastRoom, levelAt, passes, type Soles } from './simulate-contact.ts';
import { GRAVITY, checkFall, fallOf, type Fall, type FallSource, type SimulationRefusal } from './simulate-fall.ts';
import { swingTrack } from './simulate-swing.ts';
import type { FallPhase, Track } from './simulate-track.ts';
import { verticalTrack } from './simulate-vertical.ts';

export interface SimulateOptions {
	/**
	 * Depth of an assumed lower level below the walking surface, m, in place of the site's own lower level
	 * and obstacles: the ground at the learner's number.
	 */
	readonly lowerLevelAt?: number | undefined;
	/** Depth of a level below the walking surface, m, that is only marked when the soles pass it. */
	readonly learnerLevel?: number | undefined;
}

/** A place, m: x from the plumb line of the anchorage, positive to the worker's side; z above the walking surface. */
export interface Place {
	readonly x: number;
	readonly z: number;
}

/** One instant of a fall. */
export interface FallFrame {
	/** After the start of the fall, s. */
	readonly t: number;
	readonly dRing: Place;
	/** Straight below the D-ring. */
	readonly soles: Place;
	/** Of the body: the D-ring's velocity and the slide, without the straightening of the legs; m/s, z upwards. */
	readonly velocity: Place;
	/** Length of `velocity`, m/s. */
	readonly speed: number;
	/** Of the D-ring alone, m/s, z upwards. */
	readonly dRingVelocity: Place;
	/** Of the line on the D-ring, in the simulation's `forceUnit`. An average for understanding, never a peak. */
	readonly force: number;
	/** Elongation run out so far, m. */
	readonly deployed: number;
	/** D-ring slide and harness stretch so far, m. */
	readonly slid: number;
	readonly phase: FallPhase;
	readonly lineTaut: boolean;
}

export type FallEventId =
	| 'start'
	| 'lanyard-tight'
	| 'passes-learner-level'
	| 'absorber-done'
	| 'lowest'
	/** Still; with a swing its first stop, or the line level on the far side. */
	| 'rest'
	| 'contact';

export interface FallEvent {
	readonly id: FallEventId;
	/** After the start of the fall, s. */
	readonly t: number;
}

export type FallOutcome =
	| {
			readonly ends: 'arrested';
			/** Left under the soles beyond the margin, m. */
			readonly spareLeft: number;
			/** Of the margin, how much the fall took, m: all of it when the soles end on the level. */
			readonly marginUsed: number;
	  }
	| {
			/** Not arrested, however low the speed. */
			readonly ends: 'contact';
			/** Id of the obstacle, or `lower-level`. */
			readonly with: string;
			/** Of the body, m/s. */
			readonly speed: number;
			/** After the start of the fall, s. */
			readonly time: number;
			readonly phase: FallPhase;
	  };

export interface PlayedFall {
	readonly kind: 'played';
	/** s; the last event stands at it. */
	readonly duration: number;
	/** In the order of time; several may share an instant (straight down, the stop is also the lowest point). */
	readonly events: readonly FallEvent[];
	readonly outcome: FallOutcome;
	/** Newtons, or weights of the one who falls when the mass is not known. */
	readonly forceUnit: 'N' | 'body-weight';
	/**
	 * @param t s; before the start and after the end the first and last instant stand still.
	 * @throws RangeError if t is not a number.
	 */
	readonly at: (t: number) => FallFrame;
}

export type Simulation = PlayedFall | { readonly kind: 'refused'; readonly refusal: SimulationRefusal };

/**
 * @returns the planning-case fall of an analysed plan, or why it cannot be shown.
 * @throws RangeError if a level in the options is not a finite number.
 */
export function simulate(analysis: FallSource, options: SimulateOptions = {}): Simulation {
	const found = fallOf(analysis);
	return found.kind === 'refused' ? found : simulateFall(found.fall, options);
}

/**
 * @returns the planning-case fall.
 * @throws RangeError if a length is missing, negative or at odds with the others, or a level is not finite.
 */
export function simulateFall(fall: Fall, options: SimulateOptions = {}): PlayedFall {
	checkFall(fall);
	const { lowerLevelAt, learnerLevel } = options;
	for (const [name, level] of Object.entries({ lowerLevelAt, learnerLevel })) {
		if (level !== undefined && !Number.isFinite(level)) throw new RangeError(`${name} must be finite, not ${level}`);
	}
	const track = fall.offset > 0 ? swingTrack(fall) : verticalTrack(fall);
	const frame = frameOf(fall, track);
	const soles: Soles = (t) => frame(t).soles;
	const barriers = lowerLevelAt === undefined ? barriersOf(fall) : [levelAt(-lowerLevelAt)];
	const contact = firstContact(barriers, track, soles);
	const duration = contact?.time ?? track.end;

	const marked = learnerLevel === undefined ? undefined : passes(-learnerLevel, track, soles);
	const events: FallEvent[] = [
		{ id: 'start', t: 0 },
		{ id: 'lanyard-tight', t: track.tight },
		{ id: 'passes-learner-level', t: marked ?? Infinity },
		{ id: 'absorber-done', t: track.done },
		{ id: 'lowest', t: track.lowest },
		{ id: 'rest', t: contact === undefined ? track.end : Infinity },
		{ id: 'contact', t: contact?.time ?? Infinity }
	];
	const end = frame(duration);
	const room = contact === undefined ? leastRoom(barriers, track, soles) : 0;
	return Object.freeze({
		kind: 'played',
		duration,
		events: Object.freeze(
			events
				.filter((event) => event.t <= duration)
				.sort((one, other) => one.t - other.t)
				.map((event) => Object.freeze(event))
		),
		outcome: Object.freeze<FallOutcome>(
			contact === undefined
				? {
						ends: 'arrested',
						spareLeft: Math.max(0, room - fall.margin),
						marginUsed: Math.max(0, fall.margin - room)
					}
				: { ends: 'contact', with: contact.with, speed: end.speed, time: contact.time, phase: end.phase }
		),
		forceUnit: fall.mass === undefined ? 'body-weight' : 'N',
		at: (t: number): FallFrame => {
			if (Number.isNaN(t)) throw new RangeError('the time of a fall is not a number');
			return frame(Math.min(duration, Math.max(0, t)));
		}
	});
}

/** Puts the D-ring's motion and the body below it into the places of the drawing. */
function frameOf(fall: Fall, track: Track): (t: number) => FallFrame {
	const startZ = fall.standingHeight + fall.dRingNow;
	const startDepth = track.at(0).depth;
	const perPull = fall.mass ?? 1 / GRAVITY;
	return (t) => {
		const motion = track.at(t);
		const body = bodyAt(fall, motion);
		const dRing = { x: motion.x, z: startZ + startDepth - motion.depth };
		const dRingVelocity = { x: motion.velocity.x, z: 0 - motion.velocity.down };
		const velocity = { x: dRingVelocity.x, z: dRingVelocity.z - body.sliding };
		return {
			t,
			dRing,
			soles: { x: dRing.x, z: dRing.z - body.below },
			velocity,
			speed: Math.sqrt(velocity.x * velocity.x + velocity.z * velocity.z),
			dRingVelocity,
			force: motion.pull * perPull,
			deployed: motion.deployed,
			slid: body.slid,
			phase: motion.phase,
			lineTaut: t >= track.tight
		};
	};
}

