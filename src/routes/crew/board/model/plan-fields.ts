/** What can be entered of a plan: its numbers, each with its place in the plan's document, and its facts. */
import { GIVENS, givenDimension, isObstacleGiven, type FixedGivenId, type GivenId } from '#lib/arrest/index.ts';
import { unitSymbol, type Language, type ReadOptions, type UnitId } from '#lib/quantity/index.ts';
import { PLAN_PLACES, givenValue, isShown, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { unitFor, type Writer } from '../../../learn/problem/model/writing.ts';

/** What was entered: texts of numbers by the given's id, states of facts by the fact's. Only what differs from the site. */
export interface PlanEntry {
	readonly texts: Readonly<Record<string, string>>;
	readonly facts: Readonly<Record<string, string>>;
}

export const NOTHING_ENTERED: PlanEntry = Object.freeze({ texts: Object.freeze({}), facts: Object.freeze({}) });

/**
 * @param asDrawn the site has it so: then nothing of it is entered.
 * @returns entries with one changed.
 */
export function changed(entries: Readonly<Record<string, string>>, id: string, text: string, asDrawn: boolean): Readonly<Record<string, string>> {
	const others = Object.entries(entries).filter(([one]) => one !== id);
	return Object.fromEntries(asDrawn ? others : [...others, [id, text]]);
}

/** Where the number stands on the site: in the drawing, on the gear, or with the person and the rule. */
export type FieldGroup = 'drawing' | 'gear' | 'person';

const IN_DRAWING: readonly GivenId[] = ['dRingHeight', 'dRingNow', 'stature', 'standingHeight', 'anchorageHeight', 'connectorLength', 'offset', 'lowerLevelDepth', 'otherFloorDrop', 'railHeight'];
const OF_PERSON: readonly GivenId[] = ['bodyMass', 'clothingMass', 'equipmentMass', 'toolsMass', 'tetheredMass', 'margin', 'freeFallLimit', 'otherMargin'];

export interface PlanField {
	readonly id: GivenId;
	readonly group: FieldGroup;
	/** As the site has it, SI. */
	readonly value: number;
}

/** @returns the place of a given in a plan's document; undefined for a number beside the plan. */
export function pathOf(problem: Problem, id: GivenId): readonly (string | number)[] | undefined {
	if (isObstacleGiven(id)) {
		const at = problem.drawn.plan.below.obstacles.findIndex((one) => `obstacleTop_${one.id}` === id);
		return at < 0 ? undefined : ['below', 'obstacles', at, 'top'];
	}
	return PLAN_PLACES[id as FixedGivenId];
}

/** Whether the plan has the part that a given belongs to: an absorber, a connector, a mass. */
function hasPlace(problem: Problem, id: FixedGivenId): boolean {
	const path = PLAN_PLACES[id];
	if (path === undefined) return problem.drawn.decoys[id] !== undefined;
	let part: unknown = problem.drawn.plan;
	for (const key of path.slice(0, -1)) part = typeof part === 'object' && part !== null ? (part as Readonly<Record<string, unknown>>)[key] : undefined;
	return typeof part === 'object' && part !== null;
}

/** @returns every number of a site that can be entered, in the order of the drawing, the gear, the person. */
export function fieldsOf(problem: Problem): readonly PlanField[] {
	const kneels = problem.drawn.plan.worker.dRingNow !== undefined;
	const ids = [...IN_DRAWING, ...(Object.keys(GIVENS) as FixedGivenId[]).filter((id) => !IN_DRAWING.includes(id))] as FixedGivenId[];
	const fixed = ids.flatMap((id): PlanField[] => {
		const value = givenValue(problem, id);
		if (value === undefined || !(isShown(problem, id) || id === 'tetheredMass') || !hasPlace(problem, id) || (id === 'dRingNow' && !kneels)) return [];
		return [{ id, group: IN_DRAWING.includes(id) ? 'drawing' : OF_PERSON.includes(id) ? 'person' : 'gear', value }];
	});
	const tops = problem.drawn.plan.below.obstacles.map((one): PlanField => ({ id: `obstacleTop_${one.id}`, group: 'drawing', value: one.top }));
	return [...fixed.filter((one) => one.group === 'drawing'), ...tops, ...fixed.filter((one) => one.group === 'gear'), ...fixed.filter((one) => one.group === 'person')];
}

/** @returns what stands in a field before anything is entered. */
export function fieldText(writer: Writer, field: PlanField): string {
	return writer.bare(field.value, givenDimension(field.id));
}

function unitOf(scenario: Scenario, id: GivenId): UnitId {
	const unit = unitFor(scenario.units, givenDimension(id));
	return unit === 'ft-in' ? 'ft' : unit;
}

/** @returns what stands behind a field; feet and inches bring their own marks. */
export function fieldUnit(scenario: Scenario, id: GivenId, language: Language): string {
	const unit = unitFor(scenario.units, givenDimension(id));
	return unit === 'ft-in' ? `${unitSymbol('ft', language)} ${unitSymbol('in', language)}` : unitSymbol(unit, language);
}

/** @returns how what is typed into a field is read. */
export function fieldReading(scenario: Scenario, id: GivenId, language: Language): ReadOptions {
	return { expected: unitOf(scenario, id), language, compound: scenario.units === 'us-inch' };
}

export interface PlanFact {
	/** `rescue`, `obstacle:stack` and so on. */
	readonly id: string;
	readonly kind: 'rescue' | 'connectors' | 'posture' | 'condition' | 'persons' | 'edge' | 'direction' | 'obstacle';
	readonly states: readonly string[];
	/** As the site has it. */
	readonly state: string;
}

/** @returns the facts of a site that can be entered. */
export function factsOf({ drawn: { plan } }: Problem): readonly PlanFact[] {
	const obstacles = plan.below.obstacles.map((one): PlanFact => ({
		id: `obstacle:${one.id}`,
		kind: 'obstacle',
		states: ['there', 'can-come', 'none'],
		state: one.there ? 'there' : 'can-come'
	}));
	const persons = ['1', '2', '3', '4'];
	return [
		...obstacles,
		...(plan.worker.dRingNow === undefined ? [] : [{ id: 'posture', kind: 'posture', states: ['standing', 'kneeling'], state: plan.worker.posture } as const]),
		...(plan.absorber === null ? [] : [{ id: 'condition', kind: 'condition', states: ['dry', 'wet-or-frozen'], state: plan.absorber.condition } as const]),
		{ id: 'connectors', kind: 'connectors', states: ['yes', 'no', 'unknown'], state: plan.connectors.compatible },
		{ id: 'persons', kind: 'persons', states: persons, state: String(plan.anchorage.persons) },
		{ id: 'rescue', kind: 'rescue', states: ['arranged', 'not-arranged', 'unknown'], state: plan.rescue },
		{ id: 'edge', kind: 'edge', states: ['no', 'yes'], state: plan.lineMeetsEdge ? 'yes' : 'no' },
		{ id: 'direction', kind: 'direction', states: ['along-edge', 'away-from-edge'], state: plan.offset.direction }
	];
}
