/** Which field of a scenario decides an outcome: found by trying what each number and fact usually is. */
import { analyse, isAsideGiven, resolve, type Analysis, type CheckStatus, type GivenId, type LanyardPlan, type Topic } from '#lib/arrest/index.ts';
import type { FieldPath } from './finding.ts';
import { PLAN_PLACES, fieldOfFact, fieldOfGiven, type PlanFact } from './places.ts';
import { canSet, isDecoy, planWith } from './sample.ts';
import type { Scenario } from './schema.ts';
import type { Span } from './spans.ts';
import { usualOf } from './usual.ts';

/** A field, and others that would change the outcome too. */
export interface Blamed {
	readonly path: FieldPath;
	readonly also: readonly FieldPath[];
}

/** What a field does to an outcome. */
interface Candidate {
	readonly path: FieldPath;
	/** Whether its numbers now lie where such numbers usually do not. */
	readonly unusual: boolean;
	/** Share of the plans that it alone turns. */
	readonly share: number;
	/** How far it must move for that: 1 is from end to end of what is usual. */
	readonly change: number;
}

/** @reason fine enough to find the nearest value that turns an outcome, few enough to try all fields at once. */
const STEPS_TRIED = 8;
/** @reason a handful tells which field it is; every plan costs some hundred analyses. */
const PLANS_TRIED = 5;
/** @reason a field that turns fewer plans is not what decides. */
const SHARE_TURNED = 0.4;
/** @reason float noise of a sum of steps, SI. */
const NOISE = 1e-9;
/** @reason more are no help to who must change one. */
const MOST_ALSO = 3;

/** Facts with what they can be, each with how a plan is given it. */
const FACTS: readonly { readonly fact: PlanFact; readonly given: (plan: LanyardPlan) => readonly LanyardPlan[] }[] = [
	{ fact: 'rescue', given: (plan) => (['arranged', 'not-arranged', 'unknown'] as const).map((rescue) => ({ ...plan, rescue })) },
	{
		fact: 'connectors',
		given: (plan) => (['yes', 'no', 'unknown'] as const).map((compatible) => ({ ...plan, connectors: { ...plan.connectors, compatible } }))
	},
	{
		fact: 'condition',
		given: (plan) => {
			const { absorber } = plan;
			return absorber === null ? [] : (['dry', 'wet-or-frozen'] as const).map((condition) => ({ ...plan, absorber: { ...absorber, condition } }));
		}
	},
	{ fact: 'persons', given: (plan) => [1, 2].map((persons) => ({ ...plan, anchorage: { ...plan.anchorage, persons } })) },
	{
		fact: 'engineered',
		given: (plan) => (['yes', 'no', 'unknown'] as const).map((engineered) => ({ ...plan, anchorage: { ...plan.anchorage, engineered } }))
	},
	{
		fact: 'longer-fall',
		given: (plan) => {
			const { absorber } = plan;
			return absorber === null ? [] : (['yes', 'no', 'unknown'] as const).map((testedForLongerFall) => ({ ...plan, absorber: { ...absorber, testedForLongerFall } }));
		}
	}
];

/**
 * @param plans some plans of the scenario, none of which comes out as wanted.
 * @param wanted whether a plan comes out as it should.
 * @param stated false: also fields that state nothing yet, as what is missing.
 * @returns the field that by itself, within what is usual, turns the outcome; undefined if none does.
 */
export function fieldDeciding(
	scenario: Scenario,
	spans: ReadonlyMap<GivenId, Span>,
	plans: readonly LanyardPlan[],
	wanted: (plan: LanyardPlan) => boolean,
	stated = true
): Blamed | undefined {
	const tried = plans.slice(0, PLANS_TRIED);
	if (tried.length === 0) return undefined;
	const known = tried.map((plan) => resolve(plan).givens);
	const candidates: Candidate[] = [];
	for (const id of numbersOf(scenario, spans)) {
		const usual = usualOf(id);
		const span = spans.get(id);
		if (usual === undefined || (span === undefined && stated)) continue;
		const width = usual.greatest - usual.least;
		let turned = 0;
		let moved = 0;
		tried.forEach((plan, i) => {
			const now = known[i]?.get(id)?.value;
			let nearest = Infinity;
			for (let k = 0; k <= STEPS_TRIED; k += 1) {
				const value = usual.least + (width * k) / STEPS_TRIED;
				const change = now === undefined ? 0 : Math.abs(value - now) / width;
				if (change < nearest && wanted(planWith(plan, id, value))) nearest = change;
			}
			if (nearest === Infinity) return;
			turned += 1;
			moved += nearest;
		});
		if (turned === 0) continue;
		candidates.push({ path: fieldOfGiven(scenario, id), unusual: span === undefined || isUnusual(id, spans), share: turned / tried.length, change: moved / turned });
	}
	for (const { fact, given } of FACTS) {
		const turned = tried.filter((plan) => given(plan).some(wanted)).length;
		if (turned > 0) candidates.push({ path: fieldOfFact(scenario, fact), unusual: false, share: turned / tried.length, change: 1 });
	}
	return blamed(candidates);
}

/** @returns whether a number lies outside of what is usual by itself: not because the one from which it counts does. */
export function isUnusual(id: GivenId, spans: ReadonlyMap<GivenId, Span>): boolean {
	const span = spans.get(id);
	const usual = usualOf(id);
	if (span === undefined || usual === undefined) return false;
	if (span.least >= usual.least - NOISE && span.greatest <= usual.greatest + NOISE) return false;
	return span.above === undefined || !isUnusual(span.above, spans);
}

/** Numbers of the plan that an author can state. */
function numbersOf(scenario: Scenario, spans: ReadonlyMap<GivenId, Span>): ReadonlySet<GivenId> {
	const places = (Object.keys(PLAN_PLACES) as (keyof typeof PLAN_PLACES)[]).filter((id) => canSet(scenario.base, id));
	return new Set([...places, ...[...spans.keys()].filter((id) => !isDecoy(id) && !isAsideGiven(id))]);
}

function blamed(candidates: readonly Candidate[]): Blamed | undefined {
	const telling = candidates.filter((one) => one.share >= SHARE_TURNED);
	telling.sort((a, b) => Number(b.unusual) - Number(a.unusual) || b.share - a.share || a.change - b.change);
	const [first, ...others] = distinct(telling.map((one) => one.path));
	return first === undefined ? undefined : { path: first, also: others.slice(0, MOST_ALSO) };
}

/** @returns fields without those that came before. */
export function distinct(paths: readonly FieldPath[]): FieldPath[] {
	const seen = new Set<string>();
	return paths.filter((path) => {
		const key = path.join('.');
		if (seen.has(key)) return false;
		seen.add(key);
		return true;
	});
}

/** @returns the analysis of a plan, or undefined where it is refused. */
export function analysisOfPlan(plan: LanyardPlan): Analysis | undefined {
	const outcome = analyse(plan);
	return outcome.kind === 'analysed' ? outcome.analysis : undefined;
}

/** @returns how a topic comes out over the checks that decide: failed before unknown before held; undefined without such a check. */
export function statusOfTopic(analysis: Analysis, topic: string): CheckStatus | undefined {
	const statuses = new Set(analysis.checks.filter((check) => check.decides && check.topic === topic).map((check) => check.status));
	return (['failed', 'unknown', 'held'] as const).find((status) => statuses.has(status));
}

/** @returns the topics that fail by checks that decide. */
export function failedTopics(analysis: Analysis): ReadonlySet<Topic> {
	return new Set(analysis.checks.filter((check) => check.decides && check.status === 'failed').map((check) => check.topic));
}
