/**
 * The planning-case fall: where it ends, what it says on the way, what it meets.
 * Sources beside the checks; where none is named, the check is elementary mechanics or geometry.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	analyse,
	fallOf,
	simulate,
	simulateFall,
	type Analysis,
	type FallEventId,
	type FallFrame,
	type LanyardPlan,
	type PlayedFall,
	type Simulation
} from '#lib/arrest/index.ts';
import { G, anyFall, anyPlan, fall, plan, timeOf, workOfLine } from './falls.ts';

function analysed(of: LanyardPlan): Analysis {
	const outcome = analyse(of);
	if (outcome.kind !== 'analysed') throw new Error(`refused: ${outcome.refusal.why}`);
	return outcome.analysis;
}

function value(analysis: Analysis, key: string): number {
	const finding = analysis.quantities.get(key);
	if (finding?.known !== true) throw new Error(`${key} is not known`);
	return finding.value;
}

function played(simulation: Simulation): PlayedFall {
	if (simulation.kind !== 'played') throw new Error(`refused: ${simulation.refusal.why}`);
	return simulation;
}

const instants = (simulation: PlayedFall, count: number): number[] =>
	Array.from({ length: count + 1 }, (_, i) => (simulation.duration * i) / count);

describe('a fall straight down', () => {
	/* 6 ft free fall, 100 kg, 4 kN: the elongation m g h/(F − m g) is 0.5939851 m (work balance). */
	const sixFeet = fall({ lineLength: 1.8288, riseOfAnchorage: 0, elongation: 0.5939851, stretch: 0 });

	it('is tight after √(2h/g) at √(2gh)', () => {
		const fallen = simulateFall(sixFeet);
		expect(timeOf(fallen, 'lanyard-tight')).toBeCloseTo(0.6107138, 6);
		expect(fallen.at(timeOf(fallen, 'lanyard-tight')).speed).toBeCloseTo(5.989057, 5);
	});

	it('is stopped over the planned elongation by the force that the work balance gives', () => {
		const fallen = simulateFall(sixFeet);
		const tight = timeOf(fallen, 'lanyard-tight');
		expect(timeOf(fallen, 'absorber-done') - tight).toBeCloseTo(0.1984, 4);
		for (const share of [0, 0.3, 0.99]) {
			expect(fallen.at(tight + share * (fallen.duration - tight)).force).toBeCloseTo(4000, 2);
		}
		expect(fallen.at(fallen.duration)).toMatchObject({ speed: 0, deployed: 0.5939851, phase: 'at-rest' });
	});

	it('tells the force in weights of the one who falls when the mass is not known', () => {
		const fallen = simulateFall({ ...sixFeet, mass: undefined });
		expect(fallen.forceUnit).toBe('body-weight');
		expect(fallen.at(0.7).force).toBeCloseTo(4000 / (100 * G), 6);
		expect(fallen.at(fallen.duration).force).toBeCloseTo(1, 12);
	});

	it('comes to rest in under two seconds even without free fall', () => {
		const fallen = simulateFall(fall({ riseOfAnchorage: 2 }));
		expect(timeOf(fallen, 'lanyard-tight')).toBe(0);
		expect(fallen.duration).toBeGreaterThan(1);
		expect(fallen.duration).toBeLessThan(2);
		expect(fallen.at(fallen.duration).soles.z).toBeCloseTo(-1.5, 12);
	});

	it('balances energy: the line takes what the whole drop gave, to a millionth', () => {
		fc.assert(
			fc.property(anyFall('straight'), (own) => {
				const given = { ...own, mass: 1 };
				const work = workOfLine(given, simulateFall(given));
				expect(work / (G * (given.freeFall + given.elongation))).toBeCloseTo(1, 6);
			})
		);
	});

	it('loses speed as the constant force has it: v² = 2gh (1 − share of the elongation)', () => {
		const fallen = simulateFall(sixFeet);
		for (const t of [0.65, 0.7, 0.8]) {
			const { dRingVelocity, deployed } = fallen.at(t);
			expect(dRingVelocity.z ** 2).toBeCloseTo(2 * G * 1.8288 * (1 - deployed / 0.5939851), 9);
		}
	});

	it('meets a level at the speed of the closed form', () => {
		/* x w + s w² = Y at the share w of the elongation; v = √(2gh) √(1 − w) (1 + 2 s w/x). */
		fc.assert(
			fc.property(fc.double({ min: 0.001, max: 1.499, noNaN: true }), (below) => {
				const fallen = simulateFall(fall(), { lowerLevelAt: 1.4 + below });
				const w = (2 * below) / (1.2 + Math.sqrt(1.44 + 1.2 * below));
				const speed = Math.sqrt(2 * G * 1.4 * (1 - w)) * (1 + 0.5 * w);
				expect(fallen.outcome).toMatchObject({ ends: 'contact', with: 'lower-level', phase: 'stopping' });
				expect(fallen.at(fallen.duration).speed).toBeCloseTo(speed, 6);
				expect(fallen.at(fallen.duration).soles.z).toBeCloseTo(-1.4 - below, 9);
			})
		);
	});

	it('meets a level in free fall at √(2g · drop)', () => {
		const { outcome } = simulateFall(fall({ depth: 0.9 }));
		expect(outcome).toMatchObject({ ends: 'contact', phase: 'free-fall' });
		if (outcome.ends === 'contact') {
			expect(outcome.speed).toBeCloseTo(Math.sqrt(2 * G * 0.9), 9);
			expect(outcome.time).toBeCloseTo(Math.sqrt(1.8 / G), 9);
		}
	});

	it('begins on the knees on a step, and ends at full length', () => {
		const fallen = simulateFall(fall({ dRingNow: 0.9, standingHeight: 0.4 }));
		const start = fallen.at(0);
		expect(start.soles.z).toBeCloseTo(0.4, 12);
		expect(start.dRing.z).toBeCloseTo(1.3, 12);
		// Half-way down (a share of 1/√2 of the time) three quarters of the straightening are done.
		const half = fallen.at(timeOf(fallen, 'lanyard-tight') * Math.SQRT1_2);
		expect(half.dRing.z - half.soles.z).toBeCloseTo(0.9 + 0.75 * 0.6, 9);
		const tight = fallen.at(timeOf(fallen, 'lanyard-tight'));
		expect(tight.dRing.z - tight.soles.z).toBeCloseTo(1.5, 9);
		const end = fallen.at(fallen.duration);
		expect(end.dRing.z - end.soles.z).toBeCloseTo(1.8, 12);
	});
});

describe('every fall', () => {
	it('ends where the required clearance ends: its margin above, whatever the plan', () => {
		fc.assert(
			fc.property(anyPlan(), (of) => {
				const analysis = analysed({ ...of, below: { depth: 30, obstacles: [] } });
				const fallen = played(simulate(analysis));
				const lowest = fallen.at(timeOf(fallen, 'lowest'));
				const required = value(analysis, 'requiredClearance@surface');
				expect(lowest.soles.z).toBeCloseTo((of.margin ?? NaN) - required, 9);
				expect(lowest.dRing.x).toBeCloseTo(0, 12);
			}),
			{ numRuns: 200 }
		);
	});

	it('straight down is arrested exactly when the engine has the soles end above everything they meet', () => {
		fc.assert(
			fc.property(anyPlan(), (of) => {
				const analysis = analysed({ ...of, offset: { distance: 0, direction: 'along-edge' }, anchorage: within(of) });
				const { outcome } = played(simulate(analysis));
				const spare = value(analysis, 'spare');
				expect(outcome.ends).toBe(spare + (of.margin ?? NaN) >= 0 ? 'arrested' : 'contact');
				if (outcome.ends === 'arrested') {
					expect(outcome.spareLeft).toBeCloseTo(Math.max(0, spare), 9);
					expect(outcome.marginUsed).toBeCloseTo(Math.max(0, -spare), 9);
				}
			}),
			{ numRuns: 300 }
		);
	});

	it('beside the plumb line meets nothing when the engine has the soles end above everything on the way', () => {
		fc.assert(
			fc.property(anyPlan(), (of) => {
				const analysis = analysed(of);
				const { outcome } = played(simulate(analysis));
				const left = value(analysis, 'spare') + (of.margin ?? NaN);
				if (left >= 0) expect(outcome.ends).toBe('arrested');
				if (outcome.ends === 'arrested') expect(outcome.spareLeft).toBeGreaterThanOrEqual(Math.max(0, value(analysis, 'spare')) - 1e-9);
			}),
			{ numRuns: 200 }
		);
	});

	it('has its events in order, the last at its end', () => {
		fc.assert(
			fc.property(anyPlan(), (of) => {
				const fallen = played(simulate(analysed(of), { learnerLevel: 2.5 }));
				const times = fallen.events.map((event) => event.t);
				expect(times).toEqual([...times].sort((one, other) => one - other));
				expect(fallen.events[0]).toEqual({ id: 'start', t: 0 });
				expect(fallen.events.at(-1)?.t).toBe(fallen.duration);
				expect(fallen.events.at(-1)?.id).toBe(fallen.outcome.ends === 'contact' ? 'contact' : 'rest');
			})
		);
	});

	it('moves without a jump, its velocity being the rate at which the D-ring moves', () => {
		fc.assert(
			fc.property(anyFall(), fc.double({ min: 0, max: 1, noNaN: true }), (given, share) => {
				const fallen = simulateFall(given);
				const span = 1e-5;
				const t = share * (fallen.duration - span);
				const [before, middle, after] = [fallen.at(t), fallen.at(t + span / 2), fallen.at(t + span)];
				expect((after.dRing.x - before.dRing.x) / span).toBeCloseTo(middle.dRingVelocity.x, 2);
				expect((after.dRing.z - before.dRing.z) / span).toBeCloseTo(middle.dRingVelocity.z, 2);
				expect(after.speed).toBeCloseTo(before.speed, 1);
				expect(middle.velocity.z - middle.dRingVelocity.z).toBeCloseTo((before.slid - after.slid) / span, 2);
			})
		);
	});

	it('only ever lowers the soles until the lowest point, and only lengthens the body and the elongation', () => {
		fc.assert(
			fc.property(anyFall(), (given) => {
				const fallen = simulateFall(given);
				const lowest = timeOf(fallen, 'lowest');
				const frames = instants(fallen, 200).map((t) => fallen.at(t));
				const grows = (of: (frame: FallFrame) => number, until: number): boolean =>
					frames.every((frame, i) => i === 0 || frame.t > until || of(frame) >= of(frames[i - 1] ?? frame) - 1e-12);
				expect(grows((frame) => frame.deployed, fallen.duration)).toBe(true);
				expect(grows((frame) => frame.slid, fallen.duration)).toBe(true);
				expect(grows((frame) => frame.dRing.z - frame.soles.z, fallen.duration)).toBe(true);
				expect(grows((frame) => -frame.soles.z, lowest)).toBe(true);
			})
		);
	});

	it('never pushes: the line pulls or hangs slack', () => {
		fc.assert(
			fc.property(anyFall(), (given) => {
				const fallen = simulateFall(given);
				expect(Math.min(...instants(fallen, 200).map((t) => fallen.at(t).force))).toBeGreaterThanOrEqual(0);
			})
		);
	});

	it('is the same at an instant whichever way it is scrubbed', () => {
		const fallen = simulateFall(fall({ offset: 1.2 }));
		const times = instants(fallen, 50);
		const forwards = times.map((t) => fallen.at(t));
		const backwards = [...times].reverse().map((t) => fallen.at(t));
		expect(backwards.reverse()).toEqual(forwards);
		expect(simulateFall(fall({ offset: 1.2 })).at(0.7)).toEqual(fallen.at(0.7));
	});

	it('stands still before its start and after its end, and refuses what is no time', () => {
		const fallen = simulateFall(fall());
		expect(fallen.at(-1)).toEqual(fallen.at(0));
		expect(fallen.at(99)).toEqual(fallen.at(fallen.duration));
		expect(() => fallen.at(NaN)).toThrow(RangeError);
	});
});

/** Brings the anchorage into reach straight above: the offset that the plan was drawn with is taken away. */
function within(of: LanyardPlan): LanyardPlan['anchorage'] {
	const line = of.lanyard.length + (of.anchorage.connector?.length ?? 0);
	const dRing = (of.worker.dRingNow ?? of.worker.dRingHeight) + of.worker.standingHeight;
	return { ...of.anchorage, height: Math.min(of.anchorage.height, dRing + line) };
}

describe('what a fall meets', () => {
	it('a low speed is still contact', () => {
		const { outcome } = simulateFall(fall({ depth: 2.9 - 1e-6 }));
		expect(outcome).toMatchObject({ ends: 'contact', with: 'lower-level' });
		if (outcome.ends === 'contact') expect(outcome.speed).toBeLessThan(0.02);
	});

	it('soles that end exactly on the level are arrested, the whole margin used up', () => {
		const over = (depth: number) => {
			const { outcome } = simulateFall(fall({ depth }));
			return outcome.ends === 'arrested' ? [outcome.spareLeft, outcome.marginUsed].map((n) => n.toFixed(9)) : outcome.ends;
		};
		expect(over(2.9)).toEqual(['0.000000000', '0.600000000']);
		expect(over(3.2)).toEqual(['0.000000000', '0.300000000']);
		expect(over(4)).toEqual(['0.500000000', '0.000000000']);
	});

	it('an obstacle counts when its place, half a body wider, lies in the way', () => {
		const stackFrom = (from: number) =>
			simulateFall(fall({ depth: 5, obstacles: [{ id: 'stack', top: 2.6, from, to: from + 1 }] })).outcome;
		expect(stackFrom(0.29)).toMatchObject({ ends: 'contact', with: 'stack' });
		expect(stackFrom(0.31)).toMatchObject({ ends: 'arrested' });
		expect(stackFrom(-1.29)).toMatchObject({ ends: 'contact', with: 'stack' });
		expect(stackFrom(-1.31)).toMatchObject({ ends: 'arrested' });
	});

	it('the higher of two is met first', () => {
		const obstacles = [
			{ id: 'low', top: 2.4, from: -1, to: 1 },
			{ id: 'high', top: 3, from: -1, to: 1 }
		];
		expect(simulateFall(fall({ depth: 5, obstacles })).outcome).toMatchObject({ ends: 'contact', with: 'high' });
	});

	it('an obstacle that reaches the standing place is met at once', () => {
		const obstacles = [{ id: 'rack', top: 6, from: -1, to: 1 }];
		expect(simulateFall(fall({ depth: 5, obstacles })).outcome).toMatchObject({ ends: 'contact', time: 0, speed: 0 });
	});

	it('over an assumed lower level the obstacles of the site are left out', () => {
		const site = fall({ depth: 3.7, obstacles: [{ id: 'stack', top: 1.2, from: -1, to: 1 }] });
		expect(simulateFall(site).outcome).toMatchObject({ ends: 'contact', with: 'stack' });
		expect(simulateFall(site, { lowerLevelAt: 4 }).outcome).toMatchObject({ ends: 'arrested', marginUsed: 0 });
		expect(simulateFall(site, { lowerLevelAt: 2.3 }).outcome).toMatchObject({ ends: 'contact', with: 'lower-level' });
		expect(() => simulateFall(site, { lowerLevelAt: NaN })).toThrow('lowerLevelAt');
	});

	it('tells when the soles pass the level of the learner, and says nothing when they do not', () => {
		const passed = simulateFall(fall(), { learnerLevel: 2.3 });
		expect(passed.at(timeOf(passed, 'passes-learner-level')).soles.z).toBeCloseTo(-2.3, 9);
		expect(passed.outcome.ends).toBe('arrested');
		const ids = (level: number): FallEventId[] =>
			simulateFall(fall(), { learnerLevel: level }).events.map((event) => event.id);
		expect(ids(2.9)).not.toContain('passes-learner-level');
		expect(ids(2.89)).toContain('passes-learner-level');
		expect(simulateFall(fall({ depth: 2 }), { learnerLevel: 2.3 }).events.map((event) => event.id)).toEqual([
			'start',
			'lanyard-tight',
			'contact'
		]);
	});
});

describe('what cannot be shown', () => {
	const refusal = (of: Parameters<typeof plan>[0]) => {
		const simulation = simulate(analysed(plan(of)));
		return simulation.kind === 'refused' ? simulation.refusal : 'played';
	};

	it('is refused with its reason', () => {
		expect(refusal({ absorber: null })).toEqual({ why: 'no-finite-stop' });
		expect(refusal({ absorber: { elongation: 0, condition: 'dry', testedForLongerFall: 'unknown' } })).toEqual({ why: 'no-finite-stop' });
		expect(refusal({ absorber: { condition: 'dry', testedForLongerFall: 'unknown' } })).toMatchObject({
			why: 'missing',
			givens: ['elongation']
		});
		expect(refusal({ anchorage: { height: 4 } })).toEqual({ why: 'not-rigged' });
		expect(
			refusal({ absorber: { elongation: 1.2, massMax: 90, condition: 'dry', testedForLongerFall: 'unknown' } })
		).toEqual({ why: 'outside-label' });
		expect(refusal({})).toBe('played');
	});

	it('a fall made by hand that contradicts itself is the mistake of its maker', () => {
		expect(() => simulateFall({ ...fall(), freeFall: 1 })).toThrow('freeFall');
		expect(() => simulateFall(fall({ elongation: 0 }))).toThrow('elongation');
		expect(() => simulateFall(fall({ stretch: NaN }))).toThrow('stretch');
		expect(() => simulateFall(fall({ depth: -1 }))).toThrow('depth');
		expect(() => simulateFall(fall({ dRingNow: 1.6 }))).toThrow('dRingNow');
		expect(() => simulateFall(fall({ mass: 0 }))).toThrow('mass');
		expect(() => simulateFall(fall({ obstacles: [{ id: 'stack', top: 1, from: 2, to: 1 }] }))).toThrow('stack');
	});
});

describe('reading a fall from an analysis', () => {
	it('takes line, stretch-out, counted obstacles and mass as the engine has them', () => {
		const found = fallOf(
			analysed(
				plan({
					anchorage: { height: 2.4, connector: { length: 0.4, lies: 'hanging' } },
					harness: { slide: 0.3, stretch: 0.1 },
					below: {
						depth: 9,
						obstacles: [
							{ id: 'near', top: 1, from: -1, to: 1, present: 'sometimes', there: false },
							{ id: 'far', top: 1, from: 5, to: 6, present: 'always', there: true }
						]
					}
				})
			)
		);
		expect(found).toMatchObject({
			kind: 'fall',
			fall: { lineLength: 2.4, offset: 0, mass: 96, depth: 9, obstacles: [{ id: 'near', top: 1, from: -1, to: 1 }] }
		});
		if (found.kind === 'fall') {
			expect(found.fall.stretch).toBeCloseTo(0.4, 12);
			expect(found.fall.riseOfAnchorage).toBeCloseTo(0.9, 12);
			expect(found.fall.freeFall).toBeCloseTo(1.5, 12);
		}
	});

	it('lets the body down to the head in the custom of full height', () => {
		const custom = (slide: number) => {
			const found = fallOf(analysed(plan({ bodyCustom: 'full-height', harness: { slide } })));
			return found.kind === 'fall' ? found.fall.stretch : NaN;
		};
		expect(custom(0.1)).toBeCloseTo(0.33, 12);
		expect(custom(0.4)).toBeCloseTo(0.4, 12);
	});
});
