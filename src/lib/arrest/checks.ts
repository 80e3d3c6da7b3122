/** The checks of a plan: what geometry and labels demand, and every limit of the rule table. */
import { judge, ruleTable, type Citation, type Facts, type Judgement, type Quantities } from '#lib/rules/index.ts';
import type { AnalyseOptions, Finding } from './analyse.ts';
import { targetKey, type Target } from './quantities.ts';
import type { GivenId } from './given.ts';
import type { Resolved } from './resolve.ts';
import type { LanyardPlan } from './schema.ts';

export type CheckStatus = 'held' | 'failed' | 'unknown';

/** Checks that geometry, labels and the plan itself demand, whatever the law. */
export type OwnCheckId = 'reach' | 'too-heavy' | 'too-light' | 'label-free-fall' | 'clearance' | 'connectors' | 'rescue';
export type CheckId = OwnCheckId | `rule:${string}`;

/** What a check is about, whichever law or label asks it. */
export type Topic =
	| 'reach'
	| 'capacity'
	| 'free-fall'
	| 'clearance'
	| 'force'
	| 'deceleration'
	| 'anchorage-strength'
	| 'anchorage-height'
	| 'lanyard-length'
	| 'swing'
	| 'connectors'
	| 'edge'
	| 'rescue';

export interface Check {
	readonly id: CheckId;
	readonly topic: Topic;
	readonly status: CheckStatus;
	/** False: a limit from memory that nobody has confirmed; shown, but it proves nothing. */
	readonly decides: boolean;
	/** By how much it is held (positive) or failed (negative), SI of `of`. */
	readonly slack?: number | undefined;
	/** Slack over the limit's own size: what "nearest to failing" compares. */
	readonly relative?: number | undefined;
	readonly limit?: number | undefined;
	readonly value?: number | undefined;
	/** The quantity that is held against the limit, where it is one of the engine's. */
	readonly target?: Target | undefined;
	readonly judgement?: Judgement | undefined;
	readonly citation?: Citation | undefined;
}

/** Subjects of a rule table that a plan can be held against; the rest are duties outside a plan. */
const TOPIC_OF_SUBJECT: ReadonlyMap<string, Topic> = new Map<string, Topic>([
	['free-fall', 'free-fall'],
	['arrest-force', 'force'],
	['deceleration', 'deceleration'],
	['capacity', 'capacity'],
	['anchorage-strength', 'anchorage-strength'],
	['anchorage-height', 'anchorage-height'],
	['lanyard-length', 'lanyard-length'],
	['swing', 'swing'],
	['contact', 'clearance'],
	['connectors', 'connectors'],
	['edge', 'edge'],
	['rescue', 'rescue']
]);

const TOPIC_OF_OWN: Readonly<Record<OwnCheckId, Topic>> = Object.freeze({
	reach: 'reach',
	'too-heavy': 'capacity',
	'too-light': 'capacity',
	'label-free-fall': 'free-fall',
	clearance: 'clearance',
	connectors: 'connectors',
	rescue: 'rescue'
});

/** Float noise allowed at a limit, SI. */
const NOISE = 1e-9;

/** @returns all checks of a plan, those of geometry and labels first, then the rule table's. */
export function examine(
	plan: LanyardPlan,
	resolved: Resolved,
	quantities: ReadonlyMap<string, Finding>,
	options: AnalyseOptions
): readonly Check[] {
	const value = (target: Target): number | undefined => {
		const finding = quantities.get(targetKey(target));
		return finding?.known === true ? finding.value : undefined;
	};
	const known = (id: GivenId): number | undefined => resolved.givens.get(id)?.value;
	const checks: Check[] = [];

	const atMost = (id: OwnCheckId, target: Target, limit: number | undefined): void => {
		const v = value(target);
		checks.push(compared(id, target, v, limit, v === undefined || limit === undefined ? undefined : limit - v));
	};
	const atLeast = (id: OwnCheckId, target: Target, limit: number | undefined): void => {
		const v = value(target);
		checks.push(compared(id, target, v, limit, v === undefined || limit === undefined ? undefined : v - limit));
	};

	const reach = value({ quantity: 'reachSpare' });
	const line = (known('lanyardLength') ?? 0) + (plan.anchorage.connector?.length ?? 0);
	checks.push(compared('reach', { quantity: 'reachDistance' }, value({ quantity: 'reachDistance' }), line, reach));
	const mass: Target = { quantity: 'massAttached' };
	atMost('too-heavy', mass, value({ quantity: 'lowestCapacity' }));
	if (known('labelMassMin') !== undefined) atLeast('too-light', mass, known('labelMassMin'));
	if (known('labelFreeFall') !== undefined) atMost('label-free-fall', { quantity: 'freeFall' }, known('labelFreeFall'));
	const required = value({ quantity: 'requiredClearance', datum: 'surface' });
	const available = value({ quantity: 'availableClearance', datum: 'surface' });
	checks.push(
		compared(
			'clearance',
			{ quantity: 'requiredClearance', datum: 'surface' },
			required,
			available,
			value({ quantity: 'spare' })
		)
	);

	const table = ruleTable(plan.rules);
	if (table === undefined) throw new RangeError(`no rule table ${plan.rules}`);
	const facts = factsOf(plan, resolved, quantities);
	const measured = quantitiesOf(plan, resolved, quantities);
	const judged: Check[] = [];
	for (const limit of table.limits) {
		const topic = TOPIC_OF_SUBJECT.get(limit.subject);
		if (limit.role !== 'check' || topic === undefined) continue;
		const judgement = judge(limit, facts, measured, { confirmed: options.confirmed });
		if (judgement.applies === 'failed') continue;
		judged.push(fromJudgement(judgement, topic));
	}
	const covered = new Set(judged.filter((check) => check.decides).map((check) => check.topic));
	if (!covered.has('connectors')) checks.push(answered('connectors', plan.connectors.compatible));
	if (!covered.has('rescue')) {
		const rescue = { arranged: 'yes', 'not-arranged': 'no', unknown: 'unknown' } as const;
		checks.push(answered('rescue', rescue[plan.rescue]));
	}
	return Object.freeze([...checks, ...judged]);
}

function compared(
	id: OwnCheckId,
	target: Target,
	value: number | undefined,
	limit: number | undefined,
	slack: number | undefined
): Check {
	const status = slack === undefined ? 'unknown' : slack >= -NOISE ? 'held' : 'failed';
	return { id, topic: TOPIC_OF_OWN[id], status, decides: true, slack, relative: relativeTo(slack, limit), limit, value, target };
}

function answered(id: OwnCheckId, answer: 'yes' | 'no' | 'unknown'): Check {
	return { id, topic: TOPIC_OF_OWN[id], status: answer === 'yes' ? 'held' : answer === 'no' ? 'failed' : 'unknown', decides: true };
}

function relativeTo(slack: number | undefined, limit: number | undefined): number | undefined {
	return slack === undefined || limit === undefined || limit === 0 ? undefined : slack / Math.abs(limit);
}

/** The bound of a judgement that says most: the worst failed one, else the one with least to spare. */
function fromJudgement(judgement: Judgement, topic: Topic): Check {
	const rank = { failed: 0, unknown: 1, held: 2 } as const;
	const agreeing = judgement.bounds.filter((b) => b.status === judgement.status);
	const telling = [...agreeing].sort(
		(a, b) => rank[a.status] - rank[b.status] || (relativeTo(a.slack, a.limitSI) ?? 0) - (relativeTo(b.slack, b.limitSI) ?? 0)
	)[0];
	return {
		id: `rule:${judgement.limit}`,
		topic,
		status: judgement.status,
		decides: judgement.decides,
		slack: telling?.slack,
		relative: relativeTo(telling?.slack, telling?.limitSI),
		limit: telling?.limitSI,
		value: telling?.valueSI,
		target: targetOfBound(telling?.quantity),
		judgement,
		citation: judgement.citation
	};
}

/** The computed quantity behind a bound; undefined for numbers that are read, not computed. */
function targetOfBound(quantity: string | undefined): Target | undefined {
	if (quantity === 'freeFall' || quantity === 'massAttached' || quantity === 'spare') return { quantity };
	return quantity === 'anchorageAboveDRing' ? { quantity: 'rise' } : undefined;
}

/** @returns the plan's facts in the words of the rule tables. */
export function factsOf(plan: LanyardPlan, resolved: Resolved, quantities: ReadonlyMap<string, Finding>): Facts {
	const tri = (answer: 'yes' | 'no' | 'unknown'): boolean | 'unknown' => (answer === 'unknown' ? 'unknown' : answer === 'yes');
	const required = quantities.get('requiredClearance@surface');
	const outside = required !== undefined && !required.known && required.absence.why === 'outside-label';
	return {
		absorber: plan.absorber !== null,
		absorberClass: resolved.class?.id ?? (plan.absorber === null ? 'none' : 'unknown'),
		makerTestedLongerFreeFall: plan.absorber === null ? false : tri(plan.absorber.testedForLongerFall),
		usedAsInstructed: required?.known === true ? true : outside ? false : 'unknown',
		factorTwoDesign: tri(plan.anchorage.engineered),
		connectorsCompatible: tri(plan.connectors.compatible),
		lineMeetsEdge: plan.lineMeetsEdge,
		rescueArranged: plan.rescue === 'unknown' ? 'unknown' : plan.rescue === 'arranged',
		harness: 'full-body',
		attachment: 'back',
		persons: plan.anchorage.persons
	};
}

/** @returns the plan's quantities in the names of the rule tables, SI; what is unknown is left out. */
export function quantitiesOf(
	plan: LanyardPlan,
	resolved: Resolved,
	quantities: ReadonlyMap<string, Finding>
): Quantities {
	const value = (key: string): number | undefined => {
		const finding = quantities.get(key);
		return finding?.known === true ? finding.value : undefined;
	};
	const strength = resolved.givens.get('anchorageStrength')?.value;
	return {
		freeFall: value('freeFall'),
		peakForce: value('arrestForce'),
		decelerationDistance: resolved.givens.get('statedDeceleration')?.value,
		massAttached: value('massAttached'),
		anchorageStrength: strength,
		strengthPerPerson: strength === undefined ? undefined : strength / plan.anchorage.persons,
		lanyardLength: plan.lanyard.length,
		spare: value('spare'),
		anchorageAboveDRing: value('rise'),
		offset: plan.offset.distance,
		fallHeight: plan.below.depth
	};
}
