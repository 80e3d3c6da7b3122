/** The fall of a problem as the playback shows it: this site, and what the learner's number means. */
import { analyse, simulate, type FallEventId, type PlayedFall } from '#lib/arrest/index.ts';
import { SPEED, TIME } from '#lib/quantity/index.ts';
import type { NumberAsk, Problem } from '#lib/scenario/index.ts';
import type { PlaybackCase, PlaybackModel, SiteModel } from '#lib/scene/index.ts';
import { heightOf } from './draft.ts';
import { obstacleLabel, obstacleName, placeLabel, thePlace, type Speech } from './names.ts';
import { firstThing } from './tapes.ts';
import type { Writer } from './writing.ts';

/** The learner's number and the level it means, m below the walking surface. */
export interface LearnerLevel {
	/** The number as it was answered, SI. */
	readonly answer: number;
	readonly depth: number;
	/** The number says that this much is just enough: the same fall is shown over such a ground. */
	readonly ground: boolean;
}

/**
 * @returns the level that a clearance means, below the walking surface: where the ground would lie if it were
 * just enough, or where the learner takes it to be; undefined for a number that means none.
 */
export function learnerLevel(problem: Problem, ask: NumberAsk, answer: number): LearnerLevel | undefined {
	if (ask.quantity !== 'requiredClearance' && ask.quantity !== 'availableClearance') return undefined;
	return { answer, depth: answer - heightOf(problem, ask.datum), ground: ask.quantity === 'requiredClearance' };
}

export interface ShownFall {
	readonly model: PlaybackModel;
	/** What is said of each case, by its id. */
	readonly told: Readonly<Record<string, string>>;
}

export const SITE_CASE = 'site';
export const OWN_CASE = 'own';

/** @returns the playback of a problem, or undefined where its plan has no fall that could be shown. */
export function playbackOf(speech: Speech, writer: Writer, site: SiteModel, level: LearnerLevel | undefined): ShownFall | undefined {
	const { problem, m } = speech;
	const outcome = analyse(problem.drawn.plan);
	if (outcome.kind === 'refused') return undefined;
	const own = level === undefined || !(level.depth > 0) ? undefined : level;
	const fall = simulate(outcome.analysis, { learnerLevel: own?.depth });
	if (fall.kind === 'refused') return undefined;
	const first = firstThing(problem);
	const thing = first.obstacle === undefined ? thePlace(speech, 'lowerLevel') : obstacleName(speech, first.obstacle);
	const siteLevels: PlaybackCase['levels'] = [
		{ z: 0, name: placeLabel(speech, 'surface'), kind: 'surface' },
		...(first.obstacle === undefined ? [] : [{ z: first.z, name: obstacleLabel(speech, first.obstacle), kind: 'obstacle' as const }]),
		{ z: -problem.drawn.plan.below.depth, name: placeLabel(speech, 'lowerLevel'), kind: 'ground' }
	];
	const cases: PlaybackCase[] = [
		{
			id: SITE_CASE,
			name: m.playback.thisSite,
			duration: fall.duration,
			at: fall.at,
			events: eventsOf(speech, fall, thing),
			levels: siteLevels,
			learner: own === undefined ? null : { z: -own.depth, text: atLearner(speech, writer, fall, own) }
		}
	];
	const told: Record<string, string> = { [SITE_CASE]: tellSite(speech, writer, fall, thing) };
	if (own?.ground === true) {
		const other = simulate(outcome.analysis, { lowerLevelAt: own.depth });
		if (other.kind === 'played') {
			const value = writer.length(own.answer);
			cases.push({
				id: OWN_CASE,
				name: m.playback.groundAt({ value }),
				duration: other.duration,
				at: other.at,
				events: eventsOf(speech, other, m.page.thatGround),
				levels: [
					{ z: 0, name: placeLabel(speech, 'surface'), kind: 'surface' },
					{ z: -own.depth, name: m.page.yourLevel, kind: 'ground' }
				],
				learner: { z: -own.depth, text: '' }
			});
			told[OWN_CASE] = `${m.playback.groundAtWhat} ${tellSite(speech, writer, other, m.page.thatGround)}`;
		}
	}
	return {
		model: { worker: site.worker, anchorage: site.anchorage, lanyard: site.lanyard, cases },
		told
	};
}

/** Events that get a name over their upright: when the line tightens, and how the fall ends. */
const NAMED: readonly FallEventId[] = ['lanyard-tight', 'absorber-done', 'contact'];

function eventsOf(speech: Speech, fall: PlayedFall, thing: string): PlaybackCase['events'] {
	return fall.events.map((event) => ({
		id: event.id,
		t: event.t,
		name: NAMED.includes(event.id) ? speech.m.playback.events[event.id]({ thing }) : ''
	}));
}

/** "your 2.30 m: still 3.3 m/s", where the soles pass the learner's level. */
function atLearner(speech: Speech, writer: Writer, fall: PlayedFall, level: LearnerLevel): string {
	const passes = fall.events.find((event) => event.id === 'passes-learner-level');
	const value = writer.length(level.answer);
	if (passes === undefined) return speech.m.page.yourNumberIs({ value });
	return speech.m.playback.still({ value, v: writer.full(fall.at(passes.t).speed, SPEED) });
}

function tellSite(speech: Speech, writer: Writer, fall: PlayedFall, thing: string): string {
	const { m, problem } = speech;
	const name = problem.drawn.person;
	const { outcome } = fall;
	if (outcome.ends === 'contact') {
		const opening = outcome.phase === 'stopping' ? ` ${m.playback.stillOpening}` : '';
		return `${m.playback.notArrested({ name, thing, t: writer.full(outcome.time, TIME), v: writer.full(outcome.speed, SPEED) })}${opening}`;
	}
	const { marginUsed, spareLeft } = outcome;
	const margin = problem.resolved.givens.get('margin')?.value ?? 0;
	/** Lengths below this are nought on the screen, m. */
	const shown = 0.0005;
	if (marginUsed >= margin - shown && margin > 0) return m.playback.marginGone({ name });
	if (marginUsed > shown) return m.playback.marginUsed({ name, used: writer.length(marginUsed), margin: writer.length(margin) });
	return spareLeft > shown ? m.playback.arrested({ name, left: writer.length(spareLeft, 'down') }) : m.playback.arrestedJust({ name });
}
