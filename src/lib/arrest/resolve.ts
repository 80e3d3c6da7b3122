/** From a plan and the tables it names to the value of every given, each with where it came from. */
import { absorberClass, practiceTable, type AbsorberClass, type CitedValue, type PracticeTable } from '#lib/rules/index.ts';
import { toSI } from '#lib/quantity/index.ts';
import { GIVENS, type FixedGivenId, type GivenId } from './given.ts';
import type { LanyardPlan } from './schema.ts';
import type { Shape } from './shape.ts';

/** Where the value of a given came from. */
export type Origin =
	| { readonly from: 'plan' }
	| { readonly from: 'practice'; readonly table: string; readonly cited: CitedValue }
	| { readonly from: 'class'; readonly class: string; readonly cited: CitedValue };

export interface ResolvedGiven {
	/** SI. */
	readonly value: number;
	readonly origin: Origin;
}

export interface Resolved {
	readonly shape: Shape;
	readonly givens: ReadonlyMap<GivenId, ResolvedGiven>;
	readonly practice: PracticeTable;
	readonly class: AbsorberClass | undefined;
}

const FROM_PLAN: Origin = Object.freeze({ from: 'plan' });

/**
 * @returns values of all givens that are known, and the plan's shape.
 * @throws RangeError if the plan names a practice table or absorber class that does not exist; `analyse` checks first.
 */
export function resolve(plan: LanyardPlan): Resolved {
	const practice = practiceTable(plan.practice);
	if (practice === undefined) throw new RangeError(`no practice table ${plan.practice}`);
	const named = plan.absorber?.class;
	const type = named === undefined ? undefined : absorberClass(named);
	if (named !== undefined && type === undefined) throw new RangeError(`no absorber class ${named}`);

	const givens = new Map<GivenId, ResolvedGiven>();
	const put = (id: GivenId, value: number | undefined): void => {
		if (value !== undefined) givens.set(id, { value, origin: FROM_PLAN });
	};
	const putPractice = (id: FixedGivenId, cited: CitedValue | undefined): void => {
		if (cited === undefined || givens.has(id)) return;
		givens.set(id, { value: toSI(cited.value, cited.unit), origin: { from: 'practice', table: practice.id, cited } });
	};
	const putClass = (id: FixedGivenId, cited: CitedValue | undefined): void => {
		if (type === undefined || cited === undefined || givens.has(id)) return;
		givens.set(id, { value: toSI(cited.value, cited.unit), origin: { from: 'class', class: type.id, cited } });
	};

	const { worker, lanyard, absorber, harness, connectors, anchorage, offset, below } = plan;
	put('lanyardLength', lanyard.length);
	put('lanyardCapacity', lanyard.capacity);
	put('connectorLength', anchorage.connector?.length);
	put('dRingHeight', worker.dRingHeight);
	put('dRingNow', worker.posture === 'standing' ? worker.dRingHeight : worker.dRingNow);
	put('standingHeight', worker.standingHeight);
	put('stature', worker.stature);
	put('anchorageHeight', anchorage.height);
	put('anchorageStrength', anchorage.strength);
	put('offset', offset.distance);
	put('margin', plan.margin);
	put('lowerLevelDepth', below.depth);
	for (const one of below.obstacles) {
		put(`obstacleTop_${one.id}`, one.top);
		put(`obstacleAside_${one.id}`, Math.max(0, one.from, -one.to));
	}
	put('bodyMass', worker.mass?.body);
	put('clothingMass', worker.mass?.clothing);
	put('equipmentMass', worker.mass?.equipment);
	put('toolsMass', worker.mass?.tools);
	put('tetheredMass', worker.mass?.tethered);
	put('harnessCapacity', harness.capacity);
	put('connectorCapacity', connectors.capacity);
	put('dRingSlide', harness.slide);
	put('harnessStretch', harness.stretch);
	if (absorber !== null) {
		put('elongation', absorber.elongation);
		put('peakForce', absorber.peakForce);
		put('conditionedForce', absorber.conditionedForce);
		put('averageForce', absorber.averageForce);
		put('labelMassMin', absorber.massMin);
		put('labelMassMax', absorber.massMax);
		put('labelFreeFall', absorber.freeFallMax);
		put('statedDeceleration', absorber.statedDeceleration);
	}
	putClass('elongation', type?.deploymentMax);
	putClass('peakForce', type?.peakForce);
	putClass('conditionedForce', type?.peakForceConditioned);
	putClass('averageForce', type?.averageForce);
	putClass('labelMassMin', type?.massMin);
	putClass('labelMassMax', type?.massMax);
	putClass('labelFreeFall', type?.freeFallMax);
	putPractice('margin', practice.margin);
	if (harness.slide === undefined && harness.stretch === undefined) putPractice('dRingSlide', practice.stretch);
	putPractice('stature', practice.bodyHeight);

	const positive = (id: FixedGivenId): boolean => (givens.get(id)?.value ?? 0) > 0;
	const shape: Shape = Object.freeze({
		connector: anchorage.connector !== null,
		offset: offset.distance > 0,
		lowered: worker.posture !== 'standing',
		raised: worker.standingHeight !== 0,
		absorber: absorber !== null,
		conditioned: absorber?.condition === 'wet-or-frozen',
		slide: positive('dRingSlide'),
		stretch: positive('harnessStretch'),
		custom: plan.bodyCustom ?? practice.bodyCustom,
		obstacles: Object.freeze(obstaclesOnPath(plan, toSI(practice.halfBodyWidth.value, practice.halfBodyWidth.unit))),
		masses: Object.freeze((['clothingMass', 'equipmentMass', 'toolsMass'] as const).filter(positive)),
		capacities: Object.freeze(
			(['labelMassMax', 'harnessCapacity', 'lanyardCapacity', 'connectorCapacity'] as const).filter((id) => givens.has(id))
		)
	});
	return { shape, givens, practice, class: type };
}

/**
 * @param halfBody half the width of a body, m, by which every obstacle is widened.
 * @returns ids of the obstacles that the falling and swinging body can meet: those whose widened range
 * meets the strip from the worker's side to the far end of the swing. The fall adds to the swing, so that
 * the far side reaches beyond the offset: seldom to 1.8 times it in the simulation of random plans, once in ten
 * thousand to a few millimetres beyond twice; twice is counted. Obstacles that are there only sometimes count.
 */
export function obstaclesOnPath(plan: LanyardPlan, halfBody: number): string[] {
	const near = plan.offset.distance + halfBody;
	const far = 2 * plan.offset.distance + halfBody;
	return plan.below.obstacles.filter((one) => one.from <= near && one.to >= -far).map((one) => one.id);
}

/** Ids of all givens of fixed name, for those who list them. */
export const FIXED_GIVEN_IDS = Object.freeze(Object.keys(GIVENS)) as readonly FixedGivenId[];
