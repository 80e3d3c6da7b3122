import { describe, expect, test } from 'vitest';
import { analyse, type Analysis, type LanyardPlan } from '#lib/arrest/index.ts';
import { lanyardPlanSchema, planSchema } from '#lib/arrest/schema.ts';
import { RULE_TABLES } from '#lib/rules/index.ts';

/** A plan of our own: every number known, everything held under the European table. */
const document = {
	system: 'lanyard',
	rules: 'eu',
	practice: 'europe',
	worker: {
		stature: '1.80 m',
		dRingHeight: '1.45 m',
		mass: { body: '80 kg', clothing: '3 kg', equipment: '5 kg', tools: '4 kg', tethered: '9 kg' }
	},
	lanyard: { length: '1.80 m' },
	absorber: {
		elongation: '1.30 m',
		peakForce: '5.5 kN',
		conditionedForce: '7 kN',
		averageForce: '4 kN',
		massMin: '60 kg',
		massMax: '120 kg',
		freeFallMax: '3 m',
		statedDeceleration: '0.9 m'
	},
	harness: { slide: '0.20 m', stretch: '0.10 m', capacity: '130 kg' },
	connectors: { compatible: 'yes' },
	anchorage: { height: '2.05 m', strength: '16 kN' },
	margin: '0.75 m',
	below: { depth: '6.10 m', obstacles: [{ id: 'bin', top: '1.40 m', from: '-0.5 m', to: '0.5 m', present: 'sometimes', there: false }] },
	rescue: 'arranged'
} as const;

function plan(change: (p: LanyardPlan) => LanyardPlan = (p) => p): LanyardPlan {
	return change(lanyardPlanSchema.parse(structuredClone(document)));
}

function analysed(p: LanyardPlan): Analysis {
	const outcome = analyse(p);
	if (outcome.kind !== 'analysed') throw new Error(JSON.stringify(outcome.refusal));
	return outcome.analysis;
}

function value(a: Analysis, key: string): number {
	const finding = a.quantities.get(key);
	if (finding?.known !== true) throw new Error(`${key}: ${JSON.stringify(finding?.absence)}`);
	return finding.value;
}

test('the sums of one plan, worked by hand', () => {
	const a = analysed(plan());
	expect(value(a, 'rise')).toBeCloseTo(2.05 - 1.45, 12);
	expect(value(a, 'freeFall')).toBeCloseTo(1.8 - 0.6, 12);
	expect(value(a, 'requiredClearance@surface')).toBeCloseTo(1.2 + 1.3 + 0.3 + 0.75, 12);
	expect(value(a, 'requiredClearance@anchorage')).toBeCloseTo(1.8 + 1.3 + 0.3 + 1.45 + 0.75, 12);
	expect(value(a, 'availableClearance@surface')).toBeCloseTo(6.1 - 1.4, 12);
	expect(value(a, 'spare')).toBeCloseTo(4.7 - 3.55, 12);
	expect(value(a, 'massAttached')).toBe(92);
	expect(value(a, 'lowestCapacity')).toBe(120);
	expect(a.verdict).toMatchObject({ result: 'passes', decision: 'tie-off', against: [] });
});

test('full height takes the place of the D-ring height, and only stretch beyond the head is added', () => {
	const short = analysed(plan((p) => ({ ...p, bodyCustom: 'full-height' })));
	expect(value(short, 'requiredClearance@anchorage')).toBeCloseTo(1.8 + 1.3 + 1.8 + 0.75, 12);
	const long = analysed(plan((p) => ({ ...p, bodyCustom: 'full-height', harness: { ...p.harness, slide: 0.45 } })));
	expect(value(long, 'requiredClearance@anchorage')).toBeCloseTo(1.8 + 1.3 + 1.8 + (0.55 - 0.35) + 0.75, 12);
});

test('kneeling shortens the free fall and leaves the clearance below the anchorage alone', () => {
	const up = analysed(plan());
	const down = analysed(plan((p) => ({ ...p, worker: { ...p.worker, posture: 'kneeling', dRingNow: 0.85 } })));
	expect(value(down, 'freeFall')).toBeCloseTo(value(up, 'freeFall') - 0.6, 12);
	expect(value(down, 'requiredClearance@anchorage')).toBe(value(up, 'requiredClearance@anchorage'));
});

describe('each check fails for its own reason', () => {
	const cases: [string, string, (p: LanyardPlan) => LanyardPlan][] = [
		['too little room', 'clearance', (p) => ({ ...p, below: { ...p.below, depth: 4.5 } })],
		['the vehicle that is away now', 'clearance', (p) => ({ ...p, below: { depth: 4.6, obstacles: p.below.obstacles } })],
		['a force above the limit', 'rule:eu.arrest-force', (p) => ({ ...p, absorber: p.absorber && { ...p.absorber, peakForce: 6500 } })],
		['a frozen absorber', 'rule:eu.arrest-force', (p) => ({ ...p, absorber: p.absorber && { ...p.absorber, condition: 'wet-or-frozen' } })],
		['a lanyard that is too long', 'rule:eu.lanyard-length', (p) => ({ ...p, lanyard: { length: 2.05 } })],
		['too heavy', 'too-heavy', (p) => ({ ...p, worker: { ...p.worker, mass: p.worker.mass && { ...p.worker.mass, tools: 40 } } })],
		['too light', 'too-light', (p) => ({ ...p, worker: { ...p.worker, mass: p.worker.mass && { ...p.worker.mass, body: 44 } } })],
		['connectors that do not fit', 'connectors', (p) => ({ ...p, connectors: { compatible: 'no' } })],
		['no rescue', 'rescue', (p) => ({ ...p, rescue: 'not-arranged' })],
		['an anchorage out of reach', 'reach', (p) => ({ ...p, anchorage: { ...p.anchorage, height: 3.6 } })],
		['more free fall than the label allows', 'label-free-fall', (p) => ({ ...p, anchorage: { ...p.anchorage, height: 0 } })]
	];
	test.each(cases)('%s: %s', (_, id, change) => {
		const { verdict } = analysed(plan(change));
		expect(verdict.result).toBe('fails');
		expect(verdict.against).toContain(id);
	});
});

test('outside the label, required clearance is not stated', () => {
	const a = analysed(plan((p) => ({ ...p, anchorage: { ...p.anchorage, height: 0 } })));
	expect(a.quantities.get('requiredClearance@surface')).toMatchObject({ known: false, absence: { why: 'outside-label' } });
	expect(value(a, 'freeFall')).toBeCloseTo(3.25, 12);
});

test('tools tethered to the structure do not count', () => {
	const heavier = analysed(plan((p) => ({ ...p, worker: { ...p.worker, mass: p.worker.mass && { ...p.worker.mass, tethered: 50 } } })));
	expect(value(heavier, 'massAttached')).toBe(92);
});

test('a limit from memory proves nothing, and its failure is not passed over', () => {
	const remembered = RULE_TABLES.flatMap((table) => table.limits).find((l) => l.role === 'check' && l.id === 'eu.anchorage');
	expect(remembered?.mark).toBe('memory');
	const weak = plan((p) => ({ ...p, anchorage: { ...p.anchorage, strength: 9000 } }));
	expect(analysed(weak).verdict).toMatchObject({ result: 'cannot-be-shown', against: ['rule:eu.anchorage'] });
	const confirmed = analyse(weak, { confirmed: new Set(['eu.anchorage']) });
	expect(confirmed.kind === 'analysed' && confirmed.analysis.verdict.result).toBe('fails');
});

describe('refused by name', () => {
	test.each([
		['line-over-edge', { lineMeetsEdge: true }],
		['away-from-edge', { offset: { distance: '0.5 m', direction: 'away-from-edge' } }],
		['no-such-table', { rules: 'nowhere' }]
	])('%s', (why, change) => {
		const outcome = analyse(planSchema.parse({ ...document, ...change }));
		expect(outcome).toMatchObject({ kind: 'refused', refusal: { why } });
	});
	test.each(['powered-platform', 'climbing-rail', 'rope-access', 'positioning', 'yielding-anchorage'])('outside the scope: %s', (system) => {
		expect(analyse(planSchema.parse({ system }))).toMatchObject({ kind: 'refused', refusal: { why: 'system-outside-scope', system } });
	});
	test.each(['self-retracting-device', 'horizontal-lifeline', 'vertical-lifeline', 'travel-restraint'])('not built yet: %s', (system) => {
		expect(analyse(planSchema.parse({ system }))).toMatchObject({ kind: 'refused', refusal: { why: 'system-not-built', system } });
	});
});

test('what the plan leaves out comes from class and practice, and says so', () => {
	const bare = analysed(
		lanyardPlanSchema.parse({
			...document,
			rules: 'ca-alberta',
			practice: 'canada',
			margin: undefined,
			harness: { capacity: '130 kg' },
			absorber: { class: 'csa-e4' }
		})
	);
	expect(bare.resolved.givens.get('elongation')?.origin).toMatchObject({ from: 'class', class: 'csa-e4' });
	expect(bare.resolved.givens.get('margin')?.origin).toMatchObject({ from: 'practice', table: 'canada' });
	expect(bare.resolved.givens.get('dRingHeight')?.origin).toEqual({ from: 'plan' });
});

test("Quebec's either-or: more free fall is held as long as the force is (S-2.1, r. 4, s. 2.10.12)", () => {
	const quebec = plan((p) => ({ ...p, rules: 'ca-quebec', anchorage: { ...p.anchorage, height: 0.6, strength: 20000 } }));
	const a = analysed(quebec);
	expect(value(a, 'freeFall')).toBeGreaterThan(1.8);
	expect(a.checks.find((c) => c.id === 'rule:ca-quebec.free-fall-or-force')?.status).toBe('held');
	const hard = analysed({ ...quebec, absorber: quebec.absorber && { ...quebec.absorber, peakForce: 6500 } });
	expect(hard.checks.find((c) => c.id === 'rule:ca-quebec.free-fall-or-force')?.status).toBe('failed');
});

test('a swing: speeds along and across the line, and the most at an obstacle aside', () => {
	// By hand: line 1.80 m, 0.90 m aside, tight at √(1.8² − 0.9²) = 1.5588 m; free fall 1.5588 − 0.60 = 0.9588 m.
	const a = analysed(
		plan((p) => ({
			...p,
			offset: { distance: 0.9, direction: 'along-edge' },
			below: { depth: 9, obstacles: [{ id: 'duct', top: 1, from: -1.1, to: -0.5, present: 'always', there: true }] }
		}))
	);
	const tight = Math.sqrt(1.8 ** 2 - 0.9 ** 2);
	const speed = Math.sqrt(2 * 9.80665 * (tight - 0.6));
	expect(value(a, 'swingDrop')).toBeCloseTo(1.8 - tight, 12);
	expect(value(a, 'tightSpeed')).toBeCloseTo((speed * tight) / 1.8, 12);
	expect(value(a, 'sidewaysSpeed')).toBeCloseTo((speed * 0.9) / 1.8, 12);
	expect(value(a, 'tightSpeed') ** 2 + value(a, 'sidewaysSpeed') ** 2).toBeCloseTo(speed ** 2, 10);
	const depth = Math.sqrt(3.1 ** 2 - 0.5 ** 2);
	expect(value(a, 'speedAtObstacle@duct')).toBeCloseTo((Math.sqrt(2 * 9.80665 * (depth - 0.6)) * depth) / 3.1, 10);
});

test('the hanging body ends a margin above what required clearance asks for', () => {
	const a = analysed(plan());
	expect(value(a, 'hangingDepth')).toBeCloseTo(value(a, 'requiredClearance@anchorage') - 0.75, 12);
});
