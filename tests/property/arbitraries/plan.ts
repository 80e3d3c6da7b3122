/** Random lanyard plans, SI, most of them riggable. */
import fc from 'fast-check';
import type { LanyardPlan } from '#lib/arrest/index.ts';

const span = (min: number, max: number): fc.Arbitrary<number> =>
	fc.double({ min, max, noNaN: true, noDefaultInfinity: true });

export const obstacleArbitrary = fc.record({
	top: span(0, 2.5),
	from: span(-4, 2),
	width: span(0.1, 3),
	present: fc.constantFrom('always' as const, 'sometimes' as const)
});

/** Everything a formula reads varies; tables are the European ones unless asked otherwise. */
export const planArbitrary: fc.Arbitrary<LanyardPlan> = fc
	.record({
		lanyard: span(1, 2),
		dRing: span(1.2, 1.6),
		kneels: fc.boolean(),
		lowered: span(0.4, 0.9),
		standing: fc.constantFrom(0, 0.25, 0.6),
		connector: fc.option(span(0.2, 1.2), { nil: undefined }),
		anchorage: span(-0.2, 3),
		offset: fc.constantFrom(0, 0, 0.4, 0.8, 1.1),
		elongation: span(0.5, 1.75),
		slide: fc.option(span(0.05, 0.5), { nil: undefined }),
		stretch: fc.option(span(0.05, 0.3), { nil: undefined }),
		margin: span(0.3, 1.2),
		custom: fc.constantFrom('d-ring-and-stretch' as const, 'full-height' as const),
		stature: span(1.6, 2),
		depth: span(3, 14),
		obstacles: fc.array(obstacleArbitrary, { maxLength: 3 }),
		body: span(55, 110),
		tools: span(0, 12),
		rescue: fc.constantFrom('arranged' as const, 'unknown' as const)
	})
	.map((r): LanyardPlan => ({
		system: 'lanyard',
		rules: 'eu',
		practice: 'europe',
		worker: {
			stature: r.stature,
			dRingHeight: r.dRing,
			posture: r.kneels ? 'kneeling' : 'standing',
			dRingNow: r.kneels ? r.dRing * r.lowered : undefined,
			standingHeight: r.standing,
			mass: { body: r.body, clothing: 3, equipment: 4, tools: r.tools, tethered: 0 }
		},
		lanyard: { length: r.lanyard },
		absorber: {
			elongation: r.elongation,
			peakForce: 6000,
			averageForce: 4000,
			massMin: 40,
			massMax: 150,
			freeFallMax: 6,
			condition: 'dry',
			testedForLongerFall: 'no'
		},
		harness: { slide: r.slide, stretch: r.stretch, capacity: 150 },
		connectors: { compatible: 'yes' },
		anchorage: {
			height: r.anchorage,
			strength: 15000,
			persons: 1,
			engineered: 'unknown',
			connector: r.connector === undefined ? null : { length: r.connector, lies: 'hanging' }
		},
		offset: { distance: r.offset, direction: 'along-edge' },
		lineMeetsEdge: false,
		margin: r.margin,
		bodyCustom: r.custom,
		below: {
			depth: r.depth,
			obstacles: r.obstacles.map((o, i) => ({
				id: `o${i}`,
				top: o.top,
				from: o.from,
				to: o.from + o.width,
				present: o.present,
				there: o.present === 'always'
			}))
		},
		rescue: r.rescue
	}));
