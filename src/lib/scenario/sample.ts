/** One try of a draw: from chance to a plan, with nothing yet said about whether it is a good problem. */
import { isAsideGiven, isObstacleGiven, type FixedGivenId, type GivenId, type LanyardPlan } from '#lib/arrest/index.ts';
import { absorberClass, practiceTable, ruleTable, type Requirement } from '#lib/rules/index.ts';
import { fromSI, toSI } from '#lib/quantity/index.ts';
import type { Chance } from './chance.ts';
import { onGrid, type Drawn } from './problem.ts';
import type { Scenario } from './schema.ts';

type Draft = {
	-readonly [K in keyof LanyardPlan]: LanyardPlan[K];
};

/** A copy of a plan whose parts can be set without touching the original. */
function draftOf(plan: LanyardPlan): Draft {
	return {
		...plan,
		worker: { ...plan.worker, ...(plan.worker.mass === undefined ? {} : { mass: { ...plan.worker.mass } }) },
		lanyard: { ...plan.lanyard },
		absorber: plan.absorber === null ? null : { ...plan.absorber },
		harness: { ...plan.harness },
		connectors: { ...plan.connectors },
		anchorage: {
			...plan.anchorage,
			connector: plan.anchorage.connector === null ? null : { ...plan.anchorage.connector }
		},
		offset: { ...plan.offset },
		below: { ...plan.below, obstacles: plan.below.obstacles.map((one) => ({ ...one })) }
	};
}

/** What a draw can set in a plan, by the given's id. Each throws if the base plan has no place for it. */
const SETTERS: Readonly<Partial<Record<FixedGivenId, (plan: Draft, value: number) => void>>> = Object.freeze({
	lanyardLength: (p, v) => (p.lanyard.length = v),
	lanyardCapacity: (p, v) => (p.lanyard.capacity = v),
	connectorLength: (p, v) => (there(p.anchorage.connector, 'anchorage.connector').length = v),
	dRingHeight: (p, v) => (p.worker.dRingHeight = v),
	dRingNow: (p, v) => (p.worker.dRingNow = v),
	standingHeight: (p, v) => (p.worker.standingHeight = v),
	stature: (p, v) => (p.worker.stature = v),
	anchorageHeight: (p, v) => (p.anchorage.height = v),
	anchorageStrength: (p, v) => (p.anchorage.strength = v),
	offset: (p, v) => (p.offset.distance = v),
	margin: (p, v) => (p.margin = v),
	lowerLevelDepth: (p, v) => (p.below.depth = v),
	bodyMass: (p, v) => (there(p.worker.mass, 'worker.mass').body = v),
	clothingMass: (p, v) => (there(p.worker.mass, 'worker.mass').clothing = v),
	equipmentMass: (p, v) => (there(p.worker.mass, 'worker.mass').equipment = v),
	toolsMass: (p, v) => (there(p.worker.mass, 'worker.mass').tools = v),
	tetheredMass: (p, v) => (there(p.worker.mass, 'worker.mass').tethered = v),
	harnessCapacity: (p, v) => (p.harness.capacity = v),
	connectorCapacity: (p, v) => (p.connectors.capacity = v),
	dRingSlide: (p, v) => (p.harness.slide = v),
	harnessStretch: (p, v) => (p.harness.stretch = v),
	elongation: (p, v) => (there(p.absorber, 'absorber').elongation = v),
	peakForce: (p, v) => (there(p.absorber, 'absorber').peakForce = v),
	conditionedForce: (p, v) => (there(p.absorber, 'absorber').conditionedForce = v),
	averageForce: (p, v) => (there(p.absorber, 'absorber').averageForce = v),
	labelMassMin: (p, v) => (there(p.absorber, 'absorber').massMin = v),
	labelMassMax: (p, v) => (there(p.absorber, 'absorber').massMax = v),
	labelFreeFall: (p, v) => (there(p.absorber, 'absorber').freeFallMax = v),
	statedDeceleration: (p, v) => (there(p.absorber, 'absorber').statedDeceleration = v)
});

function there<T>(part: T | null | undefined, name: string): T {
	if (part === null || part === undefined) throw new RangeError(`the base plan has no ${name} for a draw to set`);
	return part;
}

/** Givens that are decoys: they belong to no plan. */
const DECOYS: ReadonlySet<string> = new Set([
	'otherMargin',
	'otherElongation',
	'otherFloorDrop',
	'freeFallLimit',
	'slackShown',
	'railHeight'
]);

/** @returns true for a given that only a decoy can set. */
export function isDecoy(id: GivenId): id is FixedGivenId {
	return DECOYS.has(id);
}

/** @returns true if a draw can set a given in a base plan: the plan has a place for it. */
export function canSet(base: LanyardPlan, id: FixedGivenId): boolean {
	const setter = SETTERS[id];
	if (setter === undefined) return false;
	try {
		setter(draftOf(base), 0);
		return true;
	} catch (error) {
		if (error instanceof RangeError) return false;
		throw error;
	}
}

/** @returns a plan with one number put into it; the plan itself if it has no place for the number. */
export function planWith(plan: LanyardPlan, id: GivenId, value: number): LanyardPlan {
	if (isDecoy(id) || isAsideGiven(id) || (!isObstacleGiven(id) && !canSet(plan, id))) return plan;
	const draft = draftOf(plan);
	setGiven(draft, id, value);
	return draft;
}

/**
 * @returns one try: person, plan and decoys by chance. The order in which chance is asked is part of
 * the draw version: person first, then draws and decoys in the order of the document.
 * @throws RangeError if a draw sets what the base plan or the tables do not have.
 */
export function sample(scenario: Scenario, chance: Chance): Drawn {
	const person = scenario.people[chance.below(scenario.people.length)] ?? '';
	const plan = draftOf(scenario.base);
	const decoys: Partial<Record<FixedGivenId, number>> = {};
	const drawn = new Map<GivenId, number>();
	const set = (id: GivenId, value: number): void => {
		drawn.set(id, value);
		if (isDecoy(id)) decoys[id] = value;
		else setGiven(plan, id, value);
	};
	for (const draw of scenario.draws) {
		if ('fact' in draw) {
			setFact(plan, draw, chance);
			continue;
		}
		const value = 'among' in draw ? amongSI(draw.among, chance) : gridSI(draw, chance, aboveOf(draw, drawn));
		for (const id of draw.sets) set(id, value);
	}
	for (const decoy of scenario.decoys) {
		set(decoy.given, 'from' in decoy ? gridSI(decoy, chance, 0) : decoyValue(scenario, decoy));
	}
	return { plan, decoys, person };
}

type Grid = { readonly from: number; readonly to: number; readonly step: number; readonly unit: Parameters<typeof toSI>[1] };

/** @param above where the range counts from, SI. */
function gridSI(grid: Grid, chance: Chance, above: number): number {
	const count = Math.round((grid.to - grid.from) / grid.step) + 1;
	return onGrid(fromSI(above, grid.unit) + grid.from, grid.step, chance.below(count), grid.unit);
}

function aboveOf(draw: { readonly above?: GivenId | undefined }, drawn: ReadonlyMap<GivenId, number>): number {
	return draw.above === undefined ? 0 : there(drawn.get(draw.above), `drawn ${draw.above}`);
}

function amongSI(among: readonly { readonly value: number; readonly unit: Grid['unit'] }[], chance: Chance): number {
	const picked = there(among[chance.below(among.length)], 'choice');
	return toSI(picked.value, picked.unit);
}

function setGiven(plan: Draft, id: GivenId, value: number): void {
	if (isObstacleGiven(id)) {
		const name = id.slice('obstacleTop_'.length);
		// An obstacle that this try left out has no top to set.
		const obstacle = plan.below.obstacles.find((one) => one.id === name);
		if (obstacle !== undefined) obstacle.top = value;
		return;
	}
	const setter = isAsideGiven(id) ? undefined : SETTERS[id];
	if (setter === undefined) throw new RangeError(`no draw can set ${id}`);
	setter(plan, value);
}

type FactDraw = Extract<Scenario['draws'][number], { fact: string }>;

function setFact(plan: Draft, draw: FactDraw, chance: Chance): void {
	const at = chance.below(draw.among.length);
	switch (draw.fact) {
		case 'rescue':
			plan.rescue = there(draw.among[at], 'choice');
			return;
		case 'connectors':
			plan.connectors.compatible = there(draw.among[at], 'choice');
			return;
		case 'condition':
			there(plan.absorber, 'absorber').condition = there(draw.among[at], 'choice');
			return;
		case 'posture':
			plan.worker.posture = there(draw.among[at], 'choice');
			return;
		case 'persons':
			plan.anchorage.persons = there(draw.among[at], 'choice');
			return;
		case 'obstacle': {
			const state = there(draw.among[at], 'choice');
			const { id } = draw;
			if (!plan.below.obstacles.some((one) => one.id === id)) throw new RangeError(`the base plan has no obstacle ${id}`);
			if (state === 'none') {
				plan.below = { ...plan.below, obstacles: plan.below.obstacles.filter((one) => one.id !== id) };
				return;
			}
			for (const one of plan.below.obstacles) {
				if (one.id !== id) continue;
				one.there = state === 'there';
				if (state === 'can-come') one.present = 'sometimes';
			}
		}
	}
}

type FixedDecoy = Exclude<Scenario['decoys'][number], { from: number }>;

function decoyValue(scenario: Scenario, decoy: FixedDecoy): number {
	if ('value' in decoy) return toSI(decoy.value.value, decoy.value.unit);
	if ('practice' in decoy) {
		const { margin } = there(practiceTable(decoy.practice), `practice table ${decoy.practice}`);
		return toSI(margin.value, margin.unit);
	}
	if ('class' in decoy) {
		const { deploymentMax } = there(absorberClass(decoy.class), `absorber class ${decoy.class}`);
		return toSI(deploymentMax.value, deploymentMax.unit);
	}
	const limit = ruleTable(scenario.base.rules)?.limits.find((one) => one.id === decoy.limit);
	const bound = there(limit?.role === 'check' ? greatestOf(limit.require) : undefined, `limit ${decoy.limit}`);
	return toSI(bound.value, bound.unit);
}

/** @returns the first bound of a requirement that is a greatest amount; undefined if it has none. */
export function greatestOf(part: Requirement): { readonly value: number; readonly unit: Grid['unit'] } | undefined {
	if ('all' in part) return part.all.map(greatestOf).find((one) => one !== undefined);
	if ('any' in part) return part.any.map(greatestOf).find((one) => one !== undefined);
	return 'max' in part && 'unit' in part.max ? part.max : undefined;
}
