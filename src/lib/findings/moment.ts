/**
 * Drawn moments of a fall. A fall is drawn on a grid, straight below its anchorage, and simulated by the engine
 * as the playback does; the right answers are read off the engine's frames. Straight down, the engine uses no
 * arithmetic that could differ between machines.
 */
import { simulateFall, type Fall, type FallFrame } from '#lib/arrest/index.ts';
import type { Chance } from '#lib/scenario/index.ts';
import { onSteps, shuffled, weighted } from './order.ts';
import type { MomentFacts, PictureKey, Shown, ShownChoice, ShownPart, Stage } from './picture.ts';
import type { MomentTask } from './tasks.ts';

interface DrawnFall {
	readonly fall: Fall;
	readonly stature: number;
	readonly at: (t: number) => FallFrame;
	readonly tight: number;
	readonly done: number;
}

interface Moment {
	readonly numbers: Readonly<Record<string, number>>;
	readonly facts: MomentFacts;
	/** Of the whole body, the slide on the back included, m/s. */
	readonly bodySpeed: number;
}

interface Made {
	readonly shown: Shown;
	readonly key: PictureKey;
}

/** Two speeds that differ by less than this share are not asked apart. @reason seen in a drawing, not computed */
const APART = 0.12;
/** Two lengths to choose from lie at least this far apart, m. @reason read off at a glance */
const LENGTHS_APART = 0.1;
/** @reason nearly every second try fits; what is left over is caught by a test */
const TRIES = 200;
/** Mass that falls, kg; it takes no part in any answer. @reason an ordinary worker with tools */
const MASS = 90;
/** Height of the D-ring in parts of the stature. @reason the proportions of the drawn figure */
const D_RING_SHARE = 0.81;

export function drawMoment(task: MomentTask, chance: Chance): Made {
	switch (task.asks) {
		case 'stage':
			return stageTask(task, chance);
		case 'used-up':
			return usedUpTask(task, chance);
		case 'pull':
			return fits(() => pullTask(task, chance));
		case 'faster':
			return fits(() => fasterTask(task, chance));
	}
}

function fits(attempt: () => { made: Made; fits: boolean }): Made {
	let last = attempt();
	for (let t = 1; !last.fits && t < TRIES; t += 1) last = attempt();
	return last.made;
}

/** A fall that is arrested: every length on a grid, with some room left below. */
function drawFall(chance: Chance): DrawnFall {
	const lineLength = onSteps(1.3, 0.1, 7, chance);
	const freeFall = onSteps(0.8, 0.1, 8, chance);
	const elongation = onSteps(0.8, 0.1, 5, chance);
	const stretch = onSteps(0.2, 0.05, 5, chance);
	const margin = onSteps(0.6, 0.4, 2, chance);
	const dRingHeight = onSteps(1.35, 0.05, 5, chance);
	const spare = onSteps(0.2, 0.1, 6, chance);
	const needed = freeFall + elongation + stretch + margin;
	const fall: Fall = {
		lineLength,
		riseOfAnchorage: milli(lineLength - freeFall),
		offset: 0,
		freeFall,
		elongation,
		stretch,
		dRingHeight,
		dRingNow: dRingHeight,
		standingHeight: 0,
		margin,
		depth: milli(needed + spare),
		halfBody: 0,
		obstacles: [],
		mass: MASS
	};
	const played = simulateFall(fall);
	const when = (id: string): number => played.events.find((event) => event.id === id)?.t ?? played.duration;
	return { fall, stature: milli(dRingHeight / D_RING_SHARE), at: played.at, tight: when('lanyard-tight'), done: when('absorber-done') };
}

/** To a millimetre; never minus nought, which JSON does not keep. */
function milli(length: number): number {
	return Math.round(length * 1000) / 1000 + 0;
}

/** The instant at which a share of the free fall, or of the elongation, is used up. */
function instantOf(stage: Stage, share: number, { tight, done }: DrawnFall): number {
	switch (stage) {
		case 'standing':
			return 0;
		case 'free-fall':
			return tight * Math.sqrt(share);
		case 'slowing':
			return done - (done - tight) * Math.sqrt(1 - share);
		case 'hanging':
			return done;
	}
}

/** @reason far enough from the ends of a stage to be told by eye */
const SHARES: Readonly<Record<Stage, readonly number[]>> = {
	standing: [0],
	'free-fall': [0.3, 0.45, 0.6, 0.75, 0.9],
	slowing: [0.2, 0.35, 0.5, 0.65, 0.8],
	hanging: [1]
};

function momentAt(stage: Stage, share: number, drawn: DrawnFall): Moment {
	const t = instantOf(stage, share, drawn);
	const frame = drawn.at(t);
	return {
		numbers: {
			dRing: milli(frame.dRing.z),
			soles: milli(frame.soles.z),
			deployed: milli(frame.deployed),
			slid: milli(frame.slid)
		},
		facts: {
			stage,
			time: milli(t),
			speed: milli(Math.abs(frame.dRingVelocity.z)),
			pull: milli(frame.force / (MASS * GRAVITY_OF_WEIGHT))
		},
		bodySpeed: milli(frame.speed)
	};
}

/** @source standard gravity, CGPM 1901, as the engine has it */
const GRAVITY_OF_WEIGHT = 9.80665;

function drawShare(stage: Stage, chance: Chance): number {
	const among = SHARES[stage];
	return among[chance.below(among.length)] ?? 0;
}

function lengthsOf({ fall, stature }: DrawnFall): Record<string, number> {
	return {
		lanyard: fall.lineLength,
		anchorage: milli(fall.dRingHeight + fall.riseOfAnchorage),
		dRingHeight: fall.dRingHeight,
		stature,
		freeFall: fall.freeFall,
		elongation: fall.elongation,
		stretch: fall.stretch,
		margin: fall.margin,
		depth: fall.depth
	};
}

const TERMS = ['free-fall', 'elongation', 'stretch', 'margin'] as const;

function termParts({ fall }: DrawnFall): ShownPart[] {
	const lengths = { 'free-fall': fall.freeFall, elongation: fall.elongation, stretch: fall.stretch, margin: fall.margin };
	return TERMS.map((id) => ({ id, form: 'term', look: 'plain', numbers: { length: lengths[id] } }));
}

function made(
	task: MomentTask,
	parts: readonly ShownPart[],
	choices: readonly ShownChoice[],
	numbers: Readonly<Record<string, number>>,
	key: Pick<PictureKey, 'marks' | 'choice' | 'criticalChoices' | 'facts'>
): Made {
	return {
		shown: { task: task.id, version: task.version, kind: task.kind, drawing: task.drawing, parts, choices, numbers },
		key: { ...key, criticalMarks: false, notes: Object.fromEntries(parts.map((part) => [part.id, part.form === 'term' ? `term-${part.id}` : 'moment'])) }
	};
}

/** Which stage is this, and which lengths of the tape are being used or are used up? */
function stageTask(task: MomentTask, chance: Chance): Made {
	const drawn = drawFall(chance);
	const stages: readonly Stage[] = ['standing', 'free-fall', 'slowing', 'hanging'];
	const stage = stages[weighted([2, 3, 3, 2], chance)] ?? 'standing';
	const moment = momentAt(stage, drawShare(stage, chance), drawn);
	const begun = { standing: [], 'free-fall': ['free-fall'], slowing: ['free-fall', 'elongation', 'stretch'], hanging: ['free-fall', 'elongation', 'stretch'] };
	return made(
		task,
		termParts(drawn),
		stages.map((id) => ({ id })),
		{ ...lengthsOf(drawn), ...moment.numbers },
		{ marks: begun[stage], choice: stage, criticalChoices: [], facts: { now: moment.facts } }
	);
}

/** Which lengths are wholly used up, and how far do the soles still go down? */
function usedUpTask(task: MomentTask, chance: Chance): Made {
	const drawn = drawFall(chance);
	const { freeFall, elongation, stretch } = drawn.fall;
	const stages: readonly Stage[] = ['free-fall', 'slowing', 'hanging'];
	const stage = stages[weighted([5, 5, 1], chance)] ?? 'slowing';
	const moment = momentAt(stage, drawShare(stage, chance), drawn);
	const whole = { standing: [], 'free-fall': [], slowing: ['free-fall'], hanging: ['free-fall', 'elongation', 'stretch'] };
	const fallen = centi(0 - (moment.numbers['soles'] ?? 0));
	const left = centi(freeFall + elongation + stretch - fallen);
	const lengths = lengthsToChoose(left, drawn.fall, chance);
	const choices = lengths.map((length, i): ShownChoice => ({ id: `length-${i + 1}`, length }));
	const right = choices.find((choice) => choice.length === left)?.id ?? '';
	return made(task, termParts(drawn), choices, { ...lengthsOf(drawn), ...moment.numbers, fallen }, {
		marks: whole[stage],
		choice: right,
		criticalChoices: choices.filter((choice) => (choice.length ?? 0) < left).map((choice) => choice.id),
		facts: { now: moment.facts }
	});
}

/** @reason what fits on a phone one under the other */
const LENGTHS = 5;

/**
 * The right length among others that come out when the margin is counted in, a term is left out, or one that is
 * used up is counted again. How many of them lie below it is up to chance, so that its place tells nothing.
 */
function lengthsToChoose(left: number, { freeFall, elongation, stretch, margin }: Fall, chance: Chance): readonly number[] {
	const slips = [
		left + margin,
		left - stretch,
		elongation + stretch,
		freeFall + elongation + stretch,
		left + freeFall,
		elongation,
		left - margin,
		left + stretch,
		left - elongation,
		left + elongation,
		left + margin + stretch,
		freeFall + elongation + stretch + margin
	].map(centi);
	const apart = (length: number, from: readonly number[]): boolean => from.every((other) => Math.abs(other - length) >= LENGTHS_APART - 0.001);
	const pick = (among: readonly number[], count: number): number[] => {
		const picked: number[] = [];
		for (const length of among) if (picked.length < count && apart(length, [left, ...picked])) picked.push(length);
		return picked;
	};
	const below = pick(slips.filter((length) => length > 0 && length < left), chance.below(LENGTHS));
	const above = pick(slips.filter((length) => length > left), LENGTHS - 1 - below.length);
	return [...below, left, ...above].sort((a, b) => a - b);
}

function centi(length: number): number {
	return Math.round(length * 100) / 100 + 0;
}

/** A number of different moments of one fall, in an order that chance gives. */
function drawMoments(drawn: DrawnFall, freeFalls: number, slowings: number, ends: readonly Stage[], chance: Chance): readonly Moment[] {
	const some = (stage: Stage, count: number): Moment[] =>
		shuffled(SHARES[stage], chance)
			.slice(0, count)
			.map((share) => momentAt(stage, share, drawn));
	return shuffled([...some('free-fall', freeFalls), ...some('slowing', slowings), ...ends.map((stage) => momentAt(stage, stage === 'hanging' ? 1 : 0, drawn))], chance);
}

function momentParts(moments: readonly Moment[]): ShownPart[] {
	return moments.map((moment, i) => ({ id: `moment-${i + 1}`, form: 'moment', look: 'plain', numbers: moment.numbers }));
}

function factsOf(moments: readonly Moment[]): Record<string, MomentFacts> {
	return Object.fromEntries(moments.map((moment, i) => [`moment-${i + 1}`, moment.facts]));
}

/** Whether one speed is above another for certain: that of the D-ring and that of the body alike. */
function clearlyFaster(one: Moment, other: Moment): boolean {
	const above = (a: number, b: number): boolean => a > b * (1 + APART) && a > b;
	return above(one.facts.speed, other.facts.speed) && above(one.bodySpeed, other.bodySpeed);
}

/** At which moments does the lanyard pull, and when is the fall fastest? */
function pullTask(task: MomentTask, chance: Chance): { made: Made; fits: boolean } {
	const drawn = drawFall(chance);
	const freeFalls = 1 + chance.below(3);
	const end: Stage = chance.below(2) === 0 ? 'standing' : 'hanging';
	const moments = drawMoments(drawn, freeFalls, 4 - freeFalls, [end], chance);
	const fastest = moments.findIndex((one) => moments.every((other) => other === one || clearlyFaster(one, other)));
	const parts = momentParts(moments);
	const marks = parts.filter((_, i) => (moments[i]?.facts.pull ?? 0) > 0).map((part) => part.id);
	return {
		made: made(
			task,
			parts,
			parts.map((part) => ({ id: part.id, part: part.id })),
			lengthsOf(drawn),
			{ marks, choice: `moment-${Math.max(0, fastest) + 1}`, criticalChoices: [], facts: factsOf(moments) }
		),
		fits: fastest >= 0
	};
}

/** Which moments are faster than the framed one, and at which of two does the lanyard pull harder? */
function fasterTask(task: MomentTask, chance: Chance): { made: Made; fits: boolean } {
	const drawn = drawFall(chance);
	const freeFalls = 1 + chance.below(3);
	const end: Stage = chance.below(3) === 0 ? 'standing' : 'hanging';
	const all = drawMoments(drawn, freeFalls, 5 - freeFalls, [end], chance);
	const [frame, ...moments] = all;
	const parts = momentParts(moments);
	if (frame === undefined) throw new RangeError('a picture of moments has none');
	const told = moments.every((one) => clearlyFaster(one, frame) || clearlyFaster(frame, one));
	const marks = parts.filter((_, i) => (moments[i]?.facts.speed ?? 0) > frame.facts.speed).map((part) => part.id);
	const [a, b] = shuffled(moments.map((_, i) => i), chance).slice(0, 2).sort((x, y) => x - y);
	const pulls = [moments[a ?? 0]?.facts.pull ?? 0, moments[b ?? 1]?.facts.pull ?? 0] as const;
	const named = [parts[a ?? 0]?.id ?? '', parts[b ?? 1]?.id ?? ''] as const;
	const same = Math.abs(pulls[0] - pulls[1]) < 0.01;
	const framed = Object.fromEntries(Object.entries(frame.numbers).map(([id, value]) => [`framed-${id}`, value]));
	return {
		made: made(
			task,
			parts,
			[...named.map((id): ShownChoice => ({ id, part: id })), { id: 'same' }],
			{ ...lengthsOf(drawn), ...framed },
			{
				marks,
				choice: same ? 'same' : pulls[0] > pulls[1] ? named[0] : named[1],
				criticalChoices: [],
				facts: { ...factsOf(moments), framed: frame.facts }
			}
		),
		// Two moments without any pull would be asked in vain.
		fits: told && frame.facts.stage !== 'standing' && frame.facts.stage !== 'hanging' && Math.max(...pulls) > 0
	};
}
