/** Numbers of captions, from the engine at the time they are shown. SI; units and words come from the page. */
import { analyse, simulate, targetKey, type FallEventId, type GivenId, type QuantityId } from '#lib/arrest/index.ts';
import { givenValue, numberAsks, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import type { AskedTarget, FallStage, NumberRef, NumberSlot, Numbers, SwingStage } from './lesson.ts';

/** A number of a caption, SI, with what it is: the page writes and rounds it accordingly. */
export type LessonNumber =
	| { readonly kind: 'given'; readonly id: GivenId; readonly si: number }
	| { readonly kind: 'quantity'; readonly id: QuantityId; readonly si: number }
	| { readonly kind: 'time'; readonly si: number }
	| { readonly kind: 'speed'; readonly si: number };

/** The event of the simulation at which the playback stands still for a stage. */
export const EVENT_OF_STAGE: Readonly<Record<FallStage | SwingStage, FallEventId>> = {
	standing: 'start',
	taut: 'lanyard-tight',
	'absorber-end': 'absorber-done',
	hanging: 'rest',
	contact: 'contact',
	low: 'lowest',
	'far-side': 'rest'
};

/**
 * @returns the numbers of a caption by slot, SI.
 * @throws RangeError for one that the plan does not have: examples are chosen so that theirs do.
 */
export function lessonNumbers(problem: Problem, numbers: Numbers): Readonly<Partial<Record<NumberSlot, LessonNumber>>> {
	return Object.fromEntries(
		Object.entries(numbers).map(([slot, ref]): [string, LessonNumber] => [slot, numberOf(problem, ref)])
	);
}

/** @returns when the playback stands at a stage, s; undefined where the fall does not come to it. */
export function stageTime(problem: Problem, stage: FallStage | SwingStage): number | undefined {
	return momentOf(problem, stage)?.t;
}

function momentOf(problem: Problem, stage: FallStage | SwingStage): { readonly t: number; readonly speed: number } | undefined {
	const outcome = analyse(problem.drawn.plan);
	const fall = outcome.kind === 'refused' ? undefined : simulate(outcome.analysis);
	if (fall?.kind !== 'played') return undefined;
	const event = fall.events.find((one) => one.id === EVENT_OF_STAGE[stage]);
	return event === undefined ? undefined : { t: event.t, speed: fall.at(event.t).speed };
}

function numberOf(problem: Problem, ref: NumberRef): LessonNumber {
	if ('given' in ref) {
		const si = givenValue(problem, ref.given);
		if (si !== undefined) return { kind: 'given', id: ref.given, si };
	} else if ('quantity' in ref) {
		const outcome = analyse(problem.drawn.plan);
		const found = outcome.kind === 'refused' ? undefined : outcome.analysis.quantities.get(targetKey(ref.quantity));
		if (found?.known === true) return { kind: 'quantity', id: ref.quantity.quantity, si: found.value };
	} else {
		const moment = momentOf(problem, 'time' in ref ? ref.time : ref.speed);
		if (moment !== undefined) return 'time' in ref ? { kind: 'time', si: moment.t } : { kind: 'speed', si: moment.speed };
	}
	throw new RangeError(`${problem.scenario.id} with seed ${String(problem.seed)} has no ${JSON.stringify(ref)}`);
}

/** @reason precision of shown examples whose scenario asks for no number of that kind: as fine as the drawing prints. */
const FINE: Readonly<Record<Problem['scenario']['units'], NumberAsk['precision']>> = {
	metric: { value: 0.01, unit: 'm' },
	'us-decimal': { value: 0.1, unit: 'ft' },
	'us-inch': { value: 0.5, unit: 'in' }
};

/**
 * @returns the ask of a quantity of a shown example, for what draws tapes and workings: the scenario's own where it
 * has one, else one made for the example, which is never graded.
 */
export function askFor(problem: Problem, of: AskedTarget): NumberAsk {
	const { scenario } = problem;
	const own = numberAsks(scenario).find(
		(ask) => ask.quantity === of.quantity && ('datum' in of ? 'datum' in ask && ask.datum === of.datum : true)
	);
	if (own !== undefined) return own;
	const rest = { id: 'shown', kind: 'number', cell: 'decisions', precision: FINE[scenario.units] } as const;
	return 'datum' in of ? { ...rest, quantity: of.quantity, datum: of.datum } : { ...rest, quantity: of.quantity };
}
