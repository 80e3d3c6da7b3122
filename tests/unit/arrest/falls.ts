/** Falls and plans for the simulation's tests: one of each by hand, and random ones. SI. */
import fc from 'fast-check';
import type { Fall, FallEventId, LanyardPlan, PlayedFall } from '#lib/arrest/index.ts';

/** Common practice, no source: gravity as the engine has it (standard gravity, CGPM 1901). */
export const G = 9.80665;

/** Line, rise and offset decide the free fall. */
export function fall(own: Partial<Omit<Fall, 'freeFall'>> = {}): Fall {
	const lengths = {
		lineLength: 2,
		riseOfAnchorage: 0.6,
		offset: 0,
		elongation: 1.2,
		stretch: 0.3,
		dRingHeight: 1.5,
		dRingNow: 1.5,
		standingHeight: 0,
		margin: 0.6,
		depth: 20,
		halfBody: 0.3,
		obstacles: [],
		mass: 100,
		...own
	};
	const tautDepth = Math.sqrt(lengths.lineLength ** 2 - lengths.offset ** 2);
	return { ...lengths, freeFall: tautDepth - lengths.riseOfAnchorage };
}

const length = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

/** Any fall over nothing but a lower level far below: straight down, or with an offset up to the line's length. */
export function anyFall(kind: 'straight' | 'swing' | 'either' = 'either'): fc.Arbitrary<Fall> {
	const share = length(0.001, 1);
	const offsets = { straight: fc.constant(0), swing: share, either: fc.oneof(fc.constant(0), share) }[kind];
	return fc
		.record({
			lineLength: length(0.8, 4),
			offsetShare: offsets,
			freeFall: fc.oneof(length(0, 4.5), length(0, 0.05), fc.constant(0)),
			elongation: length(0.2, 2.5),
			stretch: fc.oneof(fc.constant(0), length(0, 0.9)),
			dRingHeight: length(1.1, 1.7),
			lowered: fc.oneof(fc.constant(0), length(0, 0.8)),
			standingHeight: fc.oneof(fc.constant(0), length(0, 1.5)),
			mass: fc.oneof(fc.constant(undefined), length(45, 175))
		})
		.map(({ offsetShare, lowered, freeFall, ...rest }) => {
			const offset = offsetShare * rest.lineLength;
			const riseOfAnchorage = Math.sqrt(rest.lineLength ** 2 - offset ** 2) - freeFall;
			return fall({ ...rest, offset, riseOfAnchorage, dRingNow: rest.dRingHeight - lowered });
		});
}

/** A plan as the schema gives it, from a level deck 20 m up with everything known. */
export function plan(own: {
	readonly worker?: Partial<LanyardPlan['worker']>;
	readonly lanyard?: number;
	readonly absorber?: LanyardPlan['absorber'];
	readonly harness?: LanyardPlan['harness'];
	readonly anchorage?: Partial<LanyardPlan['anchorage']>;
	readonly offset?: number;
	readonly below?: Partial<LanyardPlan['below']>;
	readonly margin?: number;
	readonly bodyCustom?: LanyardPlan['bodyCustom'];
}): LanyardPlan {
	return {
		system: 'lanyard',
		rules: 'ca-ontario',
		practice: 'canada',
		worker: {
			dRingHeight: 1.5,
			stature: 1.83,
			posture: 'standing',
			standingHeight: 0,
			mass: { body: 84, clothing: 3, equipment: 5, tools: 4, tethered: 0 },
			...own.worker
		},
		lanyard: { length: own.lanyard ?? 2 },
		absorber:
			own.absorber === undefined
				? { elongation: 1.2, condition: 'dry', testedForLongerFall: 'unknown' }
				: own.absorber,
		harness: own.harness ?? { slide: 0.3 },
		connectors: { compatible: 'yes' },
		anchorage: { height: 2.1, persons: 1, engineered: 'unknown', connector: null, ...own.anchorage },
		offset: { distance: own.offset ?? 0, direction: 'along-edge' },
		lineMeetsEdge: false,
		margin: own.margin ?? 0.6,
		bodyCustom: own.bodyCustom ?? 'd-ring-and-stretch',
		below: { depth: 20, obstacles: [], ...own.below },
		rescue: 'arranged'
	};
}

/** Random plans that can be rigged, of every shape, over a lower level and stacks that they may or may not meet. */
export function anyPlan(): fc.Arbitrary<LanyardPlan> {
	const stack = fc
		.record({ top: length(0, 8), from: length(-4, 3), width: length(0, 3) })
		.map(({ top, from, width }) => ({ top, from, to: from + width, present: 'sometimes' as const, there: false }));
	return fc
		.record({
			lanyard: length(1, 2.5),
			connector: fc.oneof(fc.constant(null), length(0.3, 1)),
			offsetShare: fc.oneof(fc.constant(0), length(0.05, 0.95)),
			riseShare: length(-1, 1),
			dRingHeight: length(1.2, 1.6),
			lowered: fc.oneof(fc.constant(0), length(0.2, 0.7)),
			standingHeight: fc.oneof(fc.constant(0), length(0.2, 1)),
			elongation: length(0.5, 1.75),
			slide: length(0, 0.4),
			stretch: length(0, 0.3),
			margin: length(0.3, 1),
			depth: length(1, 12),
			custom: fc.constantFrom('d-ring-and-stretch' as const, 'full-height' as const),
			stacks: fc.array(stack, { maxLength: 3 })
		})
		.map((one) => {
			const line = one.lanyard + (one.connector ?? 0);
			const offset = one.offsetShare * line;
			const rise = one.riseShare * Math.sqrt(line ** 2 - offset ** 2) * 0.999;
			const dRingNow = one.dRingHeight - one.lowered;
			return plan({
				worker: {
					dRingHeight: one.dRingHeight,
					stature: one.dRingHeight + 0.3,
					standingHeight: one.standingHeight,
					...(one.lowered > 0 ? { posture: 'kneeling' as const, dRingNow } : {})
				},
				lanyard: one.lanyard,
				absorber: { elongation: one.elongation, condition: 'dry', testedForLongerFall: 'unknown' },
				harness: { slide: one.slide, stretch: one.stretch },
				anchorage: {
					height: dRingNow + one.standingHeight + rise,
					connector: one.connector === null ? null : { length: one.connector, lies: 'hanging' }
				},
				offset,
				below: { depth: one.depth, obstacles: one.stacks.map((it, i) => ({ ...it, id: `stack${i}` })) },
				margin: one.margin,
				bodyCustom: one.custom
			});
		});
}

/** When an event happens, s. */
export function timeOf(simulation: PlayedFall, id: FallEventId): number {
	const event = simulation.events.find((one) => one.id === id);
	if (event === undefined) throw new Error(`no ${id}`);
	return event.t;
}

/** The speed at which the line lets out, from the places of D-ring and anchorage. */
export function alongLine(given: Fall, simulation: PlayedFall, t: number): number {
	const { dRing, dRingVelocity: v } = simulation.at(t);
	const depth = given.standingHeight + given.dRingNow + given.riseOfAnchorage - dRing.z;
	return (dRing.x * v.x - depth * v.z) / Math.hypot(dRing.x, depth);
}

/**
 * Work of the line from tight to done, J: its force times the speed along it, by Simpson's rule, from the
 * moment at which it begins to pull (force is nought before, and sums across a jump are poor).
 */
export function workOfLine(given: Fall, simulation: PlayedFall): number {
	const done = timeOf(simulation, 'absorber-done');
	let [low, from] = [timeOf(simulation, 'lanyard-tight') - 1e-9, done];
	for (let i = 0; i < 80; i += 1) {
		const middle = (low + from) / 2;
		if (simulation.at(middle).force > 0) from = middle;
		else low = middle;
	}
	const parts = 2000;
	const step = (done - from) / parts;
	let total = 0;
	for (let i = 0; i <= parts; i += 1) {
		const t = i === 0 ? from : i === parts ? done - 1e-12 : from + i * step;
		const weight = i === 0 || i === parts ? 1 : i % 2 === 1 ? 4 : 2;
		total += weight * simulation.at(t).force * alongLine(given, simulation, t);
	}
	return (total * step) / 3;
}
