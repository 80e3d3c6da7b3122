/**
 * Where the soles first meet something, and how much room is left where they do not.
 *
 * Leans on what holds for every track: the D-ring never moves back towards the worker's side, and the soles
 * only sink until the lowest point and only rise after it. So each barrier is in the way during one stretch
 * of time, and its first contact is at the start of that stretch or on the way down.
 */
import type { Fall } from './simulate-fall.ts';
import { firstWhere, type Track } from './simulate-track.ts';

/** Name of the lower level among the things one can meet; ids of obstacles have no hyphen. */
export const LOWER_LEVEL = 'lower-level';

/** A level that can be met between two places; z above the walking surface, x from the plumb line, m. */
export interface Barrier {
	readonly id: string;
	readonly z: number;
	readonly from: number;
	readonly to: number;
}

export interface Contact {
	readonly with: string;
	/** After the start of the fall, s. */
	readonly time: number;
}

/** The soles at a time, m. */
export type Soles = (t: number) => { readonly x: number; readonly z: number };

/** Float noise: soles that end on a level to within it do not meet it, m. */
const NOISE = 1e-9;

/** @returns what the body can meet: every counted obstacle widened by half a body, and the lower level. */
export function barriersOf(fall: Fall): readonly Barrier[] {
	return [
		...fall.obstacles.map(({ id, top, from, to }) => ({
			id,
			z: top - fall.depth,
			from: from - fall.halfBody,
			to: to + fall.halfBody
		})),
		levelAt(-fall.depth)
	];
}

/** @returns the lower level at a height. */
export function levelAt(z: number): Barrier {
	return { id: LOWER_LEVEL, z, from: -Infinity, to: Infinity };
}

interface Stretch {
	readonly from: number;
	readonly to: number;
}

/** The stretch of time during which the soles are above, on or below a barrier, if there is one. */
function stretchOver(barrier: Barrier, track: Track, soles: Soles): Stretch | undefined {
	const { end } = track;
	const first = soles(0).x;
	const last = soles(end).x;
	if (barrier.from > first || barrier.to < last) return undefined;
	return {
		from: barrier.to >= first ? 0 : firstWhere(0, end, (t) => soles(t).x <= barrier.to),
		to: barrier.from <= last ? end : firstWhere(0, end, (t) => soles(t).x < barrier.from)
	};
}

/** @returns the first thing that the soles meet, from above or from the side; undefined if they meet nothing. */
export function firstContact(barriers: readonly Barrier[], track: Track, soles: Soles): Contact | undefined {
	let first: Contact | undefined;
	for (const barrier of barriers) {
		const time = contactTime(barrier, track, soles);
		if (time !== undefined && time < (first?.time ?? Infinity)) first = { with: barrier.id, time };
	}
	return first;
}

function contactTime(barrier: Barrier, track: Track, soles: Soles): number | undefined {
	const stretch = stretchOver(barrier, track, soles);
	if (stretch === undefined) return undefined;
	const deeper = (t: number): boolean => soles(t).z < barrier.z - NOISE;
	if (deeper(stretch.from)) return stretch.from;
	const deepest = Math.min(stretch.to, track.lowest);
	if (deepest <= stretch.from || !deeper(deepest)) return undefined;
	return firstWhere(stretch.from, deepest, (t) => soles(t).z <= barrier.z);
}

/** @returns the least height of the soles above any barrier while they are over it, m; nought at the least. */
export function leastRoom(barriers: readonly Barrier[], track: Track, soles: Soles): number {
	const rooms = barriers.flatMap((barrier) => {
		const stretch = stretchOver(barrier, track, soles);
		if (stretch === undefined) return [];
		const deepest = Math.min(stretch.to, Math.max(stretch.from, track.lowest));
		return [soles(deepest).z - barrier.z];
	});
	return Math.max(0, Math.min(...rooms));
}

/** @returns when the soles first pass a level on the way down, s; undefined if they end above it or on it. */
export function passes(z: number, track: Track, soles: Soles): number | undefined {
	if (soles(0).z <= z) return 0;
	if (!(soles(track.lowest).z < z - NOISE)) return undefined;
	return firstWhere(0, track.lowest, (t) => soles(t).z <= z);
}
