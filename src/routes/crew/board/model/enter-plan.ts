/** A plan as it was entered, held against the plan's schema. Loaded only where a plan is entered: the schema is large. */
import * as z from 'zod';
import { FORCE, MASS, readQuantity, sameDimension, type Language, type Question, type Unreadable, type UnitId } from '#lib/quantity/index.ts';
import { givenDimension, plausibleOf, type FixedGivenId, type GivenId, type LanyardPlan } from '#lib/arrest/index.ts';
import { lanyardPlanSchema } from '#lib/arrest/schema.ts';
import { problemOf, type Problem } from '#lib/scenario/index.ts';
import { factsOf, fieldReading, fieldsOf, pathOf, type PlanEntry } from './plan-fields.ts';

/** Why an entry is not taken. Lengths, masses and forces in SI. */
export type EntryProblem =
	| { readonly kind: 'unreadable'; readonly reading: Unreadable }
	| { readonly kind: 'question'; readonly reading: Question }
	| { readonly kind: 'range'; readonly atLeast: number; readonly atMost: number }
	| { readonly kind: 'clash'; readonly with: Clash };

/** Entries that do not go together. */
export type Clash = 'above-head' | 'now-missing' | 'now-above' | 'mass-range' | 'other';

export type Entered =
	| { readonly kind: 'plan'; readonly problem: Problem }
	/** By the id of the given or of the fact. */
	| { readonly kind: 'refused'; readonly problems: Readonly<Record<string, EntryProblem>> };

function documentUnit(id: GivenId): UnitId {
	const dimension = givenDimension(id);
	return sameDimension(dimension, MASS) ? 'kg' : sameDimension(dimension, FORCE) ? 'N' : 'm';
}

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

function setAt(document: Json, path: readonly (string | number)[], value: string): void {
	const last = path.at(-1);
	let part: Json | undefined = document;
	for (const key of path.slice(0, -1)) part = typeof part === 'object' && part !== null ? (part as { [key: string]: Json })[key] : undefined;
	if (last === undefined || typeof part !== 'object' || part === null) throw new RangeError(`the plan has no ${path.join('.')}`);
	(part as { [key: string]: Json })[last] = value;
}

/** A plan with its facts set as they were entered; what is no state of a fact is left to the schema. */
function withFacts(problem: Problem, facts: PlanEntry['facts']): LanyardPlan {
	const { plan } = problem.drawn;
	const known = new Map(factsOf(problem).map((one) => [one.id, one]));
	const state = (id: string): string | undefined => {
		const entered = facts[id];
		const fact = known.get(id);
		return entered !== undefined && fact?.states.includes(entered) === true ? entered : fact?.state;
	};
	return {
		...plan,
		rescue: (state('rescue') ?? plan.rescue) as LanyardPlan['rescue'],
		lineMeetsEdge: state('edge') === 'yes',
		offset: { ...plan.offset, direction: (state('direction') ?? plan.offset.direction) as LanyardPlan['offset']['direction'] },
		connectors: { ...plan.connectors, compatible: (state('connectors') ?? 'unknown') as LanyardPlan['connectors']['compatible'] },
		anchorage: { ...plan.anchorage, persons: Number(state('persons') ?? plan.anchorage.persons) },
		worker: { ...plan.worker, posture: (state('posture') ?? plan.worker.posture) as LanyardPlan['worker']['posture'] },
		absorber: plan.absorber === null ? null : { ...plan.absorber, condition: (state('condition') ?? plan.absorber.condition) as NonNullable<LanyardPlan['absorber']>['condition'] },
		below: {
			...plan.below,
			obstacles: plan.below.obstacles.map((one) => {
				const now = state(`obstacle:${one.id}`);
				return now === 'can-come' ? { ...one, present: 'sometimes' as const, there: false } : { ...one, there: true };
			})
		}
	};
}

const CLASHES: Readonly<Record<string, Clash>> = { 'worker.dRingHeight': 'above-head', 'worker.dRingNow': 'now-above', 'absorber.massMin': 'mass-range' };

/**
 * @param site the drawn problem that the plan starts from.
 * @returns the problem with the plan as entered, or what is wrong, field by field. Nothing of a plan that is not whole.
 */
export function enterPlan(site: Problem, entry: PlanEntry, language: Language): Entered {
	const problems: Record<string, EntryProblem> = {};
	const decoys: Partial<Record<FixedGivenId, number>> = { ...site.drawn.decoys };
	const document = z.encode(lanyardPlanSchema, withFacts(site, entry.facts)) as Json;
	const fields = fieldsOf(site);
	for (const { id } of fields) {
		const text = entry.texts[id];
		if (text === undefined) continue;
		const reading = readQuantity(text, fieldReading(site.scenario, id, language));
		if (reading.kind !== 'read') {
			problems[id] = reading.kind === 'question' ? { kind: 'question', reading } : { kind: 'unreadable', reading };
			continue;
		}
		const { least, greatest } = plausibleOf(id);
		const path = pathOf(site, id);
		if (reading.si < least || reading.si > greatest) problems[id] = { kind: 'range', atLeast: least, atMost: greatest };
		else if (path === undefined) decoys[id as FixedGivenId] = reading.si;
		else setAt(document, path, `${reading.si} ${documentUnit(id)}`);
	}
	const parsed = lanyardPlanSchema.safeParse(document);
	for (const issue of parsed.error?.issues ?? []) {
		const at = issue.path.join('.');
		const field = fields.find(({ id }) => pathOf(site, id)?.join('.') === at);
		problems[field?.id ?? at] ??= { kind: 'clash', with: CLASHES[at] ?? 'other' };
	}
	if (parsed.data === undefined || Object.keys(problems).length > 0) return { kind: 'refused', problems };
	const gone = new Set(site.drawn.plan.below.obstacles.filter((one) => entry.facts[`obstacle:${one.id}`] === 'none').map((one) => one.id));
	const plan = { ...parsed.data, below: { ...parsed.data.below, obstacles: parsed.data.below.obstacles.filter((one) => !gone.has(one.id)) } };
	return { kind: 'plan', problem: problemOf(site.scenario, { ...site.drawn, plan, decoys }, site.seed, site.acceptedTry) };
}
