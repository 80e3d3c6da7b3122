/**
 * What must hold for every plan, whatever its numbers. No outside source: these are always/never
 * sentences of mechanics and of the project's own promises.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DATUMS, analyse, type Analysis, type LanyardPlan } from '#lib/arrest/index.ts';
import { planArbitrary } from './arbitraries/plan.ts';

function analysed(plan: LanyardPlan): Analysis {
	const outcome = analyse(plan);
	if (outcome.kind !== 'analysed') throw new Error(`refused: ${JSON.stringify(outcome.refusal)}`);
	return outcome.analysis;
}

function value(analysis: Analysis, key: string): number | undefined {
	const finding = analysis.quantities.get(key);
	return finding?.known === true ? finding.value : undefined;
}

function rigged(analysis: Analysis): boolean {
	return (value(analysis, 'reachSpare') ?? -1) >= 0;
}

const spareOf = (plan: LanyardPlan): number | undefined => value(analysed(plan), 'spare');

/** Both plans rigged: how the spare distance moves from one to the other. */
function spareMoves(before: LanyardPlan, after: LanyardPlan): number | undefined {
	const a = spareOf(before);
	const b = spareOf(after);
	return a === undefined || b === undefined ? undefined : b - a;
}

const NOISE = 1e-9;
const more = fc.double({ min: 0.01, max: 0.5, noNaN: true });

describe('one plan has one spare distance', () => {
	test('from the anchorage, the connector, the surface and the D-ring alike', () => {
		fc.assert(
			fc.property(planArbitrary, (plan) => {
				const analysis = analysed(plan);
				fc.pre(rigged(analysis));
				const spare = value(analysis, 'spare') ?? NaN;
				for (const datum of DATUMS) {
					const left =
						(value(analysis, `availableClearance@${datum}`) ?? NaN) - (value(analysis, `requiredClearance@${datum}`) ?? NaN);
					expect(left).toBeCloseTo(spare, 9);
				}
			}),
			{ numRuns: 500 }
		);
	});
});

describe('raising what eats clearance never raises the spare distance', () => {
	const raise: Record<string, (plan: LanyardPlan, by: number) => LanyardPlan> = {
		connector: (p, by) => ({
			...p,
			anchorage: { ...p.anchorage, connector: { length: (p.anchorage.connector?.length ?? 0) + by, lies: 'hanging' } }
		}),
		elongation: (p, by) => ({
			...p,
			absorber: p.absorber === null ? null : { ...p.absorber, elongation: (p.absorber.elongation ?? 0) + by }
		}),
		stretch: (p, by) => ({ ...p, harness: { ...p.harness, stretch: (p.harness.stretch ?? 0) + by } }),
		margin: (p, by) => ({ ...p, margin: (p.margin ?? 0) + by }),
		obstacle: (p, by) => ({
			...p,
			below: { ...p.below, obstacles: p.below.obstacles.map((o) => ({ ...o, top: o.top + by })) }
		}),
		'body below the anchorage': (p, by) => ({
			...p,
			worker: { ...p.worker, dRingHeight: p.worker.dRingHeight + by, stature: (p.worker.stature ?? 0) + by }
		})
	};
	for (const [name, change] of Object.entries(raise)) {
		test(name, () => {
			fc.assert(
				fc.property(planArbitrary, more, (plan, by) => {
					const moved = spareMoves(plan, change(plan, by));
					fc.pre(moved !== undefined);
					expect(moved).toBeLessThanOrEqual(NOISE);
				}),
				{ numRuns: 300 }
			);
		});
	}
});

describe('raising what gives clearance never lowers the spare distance', () => {
	test('the anchorage', () => {
		fc.assert(
			fc.property(planArbitrary, more, (plan, by) => {
				const moved = spareMoves(plan, { ...plan, anchorage: { ...plan.anchorage, height: plan.anchorage.height + by } });
				fc.pre(moved !== undefined);
				expect(moved).toBeGreaterThanOrEqual(-NOISE);
			}),
			{ numRuns: 300 }
		);
	});
	test('the deck with all that stands on it', () => {
		fc.assert(
			fc.property(planArbitrary, more, (plan, by) => {
				const moved = spareMoves(plan, { ...plan, below: { ...plan.below, depth: plan.below.depth + by } });
				fc.pre(moved !== undefined);
				expect(moved).toBeGreaterThanOrEqual(-NOISE);
			}),
			{ numRuns: 300 }
		);
	});
});

test('among rigged plans a longer lanyard never lowers free fall', () => {
	fc.assert(
		fc.property(planArbitrary, more, (plan, by) => {
			const before = value(analysed(plan), 'freeFall');
			const after = value(analysed({ ...plan, lanyard: { length: plan.lanyard.length + by } }), 'freeFall');
			fc.pre(before !== undefined && after !== undefined);
			expect((after ?? 0) - (before ?? 0)).toBeGreaterThanOrEqual(-NOISE);
		}),
		{ numRuns: 300 }
	);
});

describe('what is not known is never passed', () => {
	const forget: Record<string, (plan: LanyardPlan) => LanyardPlan> = {
		rescue: (p) => ({ ...p, rescue: 'unknown' }),
		connectors: (p) => ({ ...p, connectors: { compatible: 'unknown' } }),
		'the peak force': (p) => ({ ...p, absorber: p.absorber === null ? null : { ...p.absorber, peakForce: undefined } }),
		'the elongation': (p) => ({ ...p, absorber: p.absorber === null ? null : { ...p.absorber, elongation: undefined } }),
		'the mass': (p) => ({ ...p, worker: { ...p.worker, mass: undefined } }),
		'every capacity': (p) => ({
			...p,
			harness: { ...p.harness, capacity: undefined },
			absorber: p.absorber === null ? null : { ...p.absorber, massMax: undefined, class: undefined }
		})
	};
	for (const [name, change] of Object.entries(forget)) {
		test(name, () => {
			fc.assert(
				fc.property(planArbitrary, (plan) => {
					const { verdict } = analysed(change(plan));
					expect(verdict.result).not.toBe('passes');
					expect(verdict.decision).toBe('do-not-tie-off');
				}),
				{ numRuns: 100 }
			);
		});
	}
	test('and a plan with everything known can pass, so the sentences above are not empty', () => {
		const passing = fc.sample(planArbitrary, 400).filter((plan) => analysed({ ...plan, rescue: 'arranged' }).verdict.result === 'passes');
		expect(passing.length).toBeGreaterThan(20);
	});
});

test('a plan that does not reach its anchorage has no free fall and fails by reach', () => {
	fc.assert(
		fc.property(planArbitrary, (plan) => {
			const far = analysed({ ...plan, anchorage: { ...plan.anchorage, height: 9 } });
			expect(far.quantities.get('freeFall')).toMatchObject({ known: false, absence: { why: 'not-rigged' } });
			expect(far.verdict.against).toContain('reach');
		}),
		{ numRuns: 50 }
	);
});
