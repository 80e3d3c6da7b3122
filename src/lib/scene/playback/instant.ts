/** The figure and its line at one instant of a fall, as outlines. */
import type { View } from '../drawing/view.ts';
import { type FigureShape, figureShape } from '../figure/outline.ts';
import { FALLING, HANGING, KNEELING, LANDED, mix, REACHING, solvePose, type Stance } from '../figure/pose.ts';
import { distance, type Place, relaxChain } from '../lanyard/chain.ts';
import { openingLine } from '../lanyard/hang.ts';
import type { PlaybackCase, PlaybackFrame, PlaybackModel } from '../model.ts';

export interface Instant {
	readonly t: number;
	readonly frame: PlaybackFrame;
	readonly shape: FigureShape;
	/** Places of the line, m, with the worker's side at negative x. */
	readonly slack: readonly Place[];
	readonly straight: readonly Place[];
	readonly zigzag: readonly Place[];
	readonly pack: readonly Place[];
	readonly dRing: Place;
	readonly structure: Place;
}

function ease(s: number): number {
	const x = Math.max(0, Math.min(1, s));
	return x * x * (3 - 2 * x);
}

function eventTime(fall: PlaybackCase, id: string): number | null {
	return fall.events.find((e) => e.id === id)?.t ?? null;
}

function stanceAt(model: PlaybackModel, fall: PlaybackCase, t: number, frame: PlaybackFrame, kneelsNow: boolean): Stance {
	const tight = eventTime(fall, 'lanyard-tight') ?? Infinity;
	const contact = eventTime(fall, 'contact');
	const start = kneelsNow ? KNEELING : REACHING;
	if (frame.phase === 'free-fall' || t < tight) {
		const gone = mix(start, FALLING, ease(t / Math.max(0.22, Math.min(0.5, tight))));
		return gone;
	}
	const held = mix(FALLING, HANGING, ease((t - tight) / 0.24));
	if (contact !== null && t >= contact - 0.07) return mix(held, LANDED, ease((t - contact + 0.07) / 0.07));
	return held;
}

/** @param links links of a slack line: fewer for a ghost than for the one that moves */
export function instantAt(model: PlaybackModel, fall: PlaybackCase, t: number, links = 40): Instant {
	const frame = fall.at(t);
	const { worker, anchorage, lanyard } = model;
	const dRing = { x: -frame.dRing.x, z: frame.dRing.z };
	const soleDrop = frame.dRing.z - frame.soles.z;
	const kneels = worker.posture === 'kneeling' && soleDrop < worker.dRingHeight - 0.25;
	const pose = solvePose({
		stature: worker.stature,
		dRingHeight: worker.dRingHeight,
		soleDrop,
		slid: frame.slid,
		stance: stanceAt(model, fall, t, frame, kneels),
		kneeling: kneels
	});
	const structure = { x: 0, z: anchorage.height };
	const whole = lanyard.length + anchorage.connectorLength;
	const tight = frame.phase !== 'free-fall' || distance(structure, dRing) >= whole * 0.9995;
	const empty: readonly Place[] = [];
	const opening = openingLine(structure, dRing, frame.deployed, 0.055);
	return {
		t,
		frame,
		shape: figureShape(pose),
		slack: tight ? empty : relaxChain({ from: structure, to: dRing, length: whole, links, stiffEnd: 0.24, openSide: 1, steps: 70 }),
		straight: tight ? opening.straight : empty,
		zigzag: tight ? opening.zigzag : empty,
		pack: tight ? opening.pack : empty,
		dRing,
		structure
	};
}

/** A view in which the D-ring of an instant stands at a given pixel column. */
export function viewAt(view: View, instant: Instant, column: number): View {
	return { ...view, x0: column - instant.dRing.x * view.scale };
}
