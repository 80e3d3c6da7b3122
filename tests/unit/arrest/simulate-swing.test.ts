/** Falls beside the plumb line: free fall, stop along the line, swing. Elementary mechanics where no source is named. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { simulateFall, type Fall, type PlayedFall } from '#lib/arrest/index.ts';
import { G, alongLine, anyFall, fall, timeOf, workOfLine } from './falls.ts';

/** D-ring seen from the anchorage: distance, how fast it grows, and the speed across the line (+ away from the worker's side). */
function polar(given: Fall, simulation: PlayedFall, t: number) {
	const { dRing, dRingVelocity: v } = simulation.at(t);
	const depth = given.standingHeight + given.dRingNow + given.riseOfAnchorage - dRing.z;
	const distance = Math.hypot(dRing.x, depth);
	return {
		depth,
		distance,
		along: alongLine(given, simulation, t),
		across: (-depth * v.x - dRing.x * v.z) / distance
	};
}

describe('a fall beside the plumb line', () => {
	it('is tight after √(line² − offset²) − rise, with the speed along and across the line that geometry gives', () => {
		/* Level anchorage, 6 ft line, 1 m aside: 1.531179 m; 4.588261 along and 2.996554 m/s across (closed form, and stepped). */
		const given = fall({ lineLength: 1.8288, riseOfAnchorage: 0, offset: 1 });
		const fallen = simulateFall(given);
		const tight = timeOf(fallen, 'lanyard-tight');
		expect(fallen.at(0).dRing.z - fallen.at(tight).dRing.z).toBeCloseTo(1.531179, 6);
		const { along, across } = polar(given, fallen, tight);
		expect(along).toBeCloseTo(4.588261, 5);
		expect(across).toBeCloseTo(2.996554, 5);
	});

	it('reaches the depth of the plan, line and elongation, straight below the anchorage', () => {
		/* Planning depths 2.422785 and 2.487193 m: line + m g h/(F − m g) with h = line − rise, 100 kg, 4 kN (closed form). */
		for (const [lineLength, riseOfAnchorage, offset, plan] of [
			[1.8288, 0, 1, 2.422785],
			[2, 0.5, 1.2, 2.487193]
		] as const) {
			const given = fall({ lineLength, riseOfAnchorage, offset, elongation: plan - lineLength });
			const fallen = simulateFall(given);
			const lowest = polar(given, fallen, timeOf(fallen, 'lowest'));
			expect(lowest.depth).toBeCloseTo(plan, 9);
		}
	});

	it('reaches a depth that a pack of 4 kN, stepped in two dimensions, does not exceed', () => {
		/* 2.226145 and 2.24932 m: stepped at two step sizes, no closed form. */
		for (const [lineLength, riseOfAnchorage, offset, plan, stepped] of [
			[1.8288, 0, 1, 2.422785, 2.226145],
			[2, 0.5, 1.2, 2.487193, 2.24932]
		] as const) {
			const given = fall({ lineLength, riseOfAnchorage, offset, elongation: plan - lineLength });
			const fallen = simulateFall(given);
			expect(polar(given, fallen, timeOf(fallen, 'lowest')).depth).toBeGreaterThan(stepped);
		}
	});

	it('is stopped along the line evenly, over exactly the planned elongation, before it passes the plumb line', () => {
		fc.assert(
			fc.property(anyFall('swing'), (given) => {
				const fallen = simulateFall(given);
				const done = timeOf(fallen, 'absorber-done');
				const end = polar(given, fallen, done);
				expect(end.distance).toBeCloseTo(given.lineLength + given.elongation, 9);
				expect(end.along).toBeCloseTo(0, 9);
				expect(fallen.at(done).dRing.x).toBeGreaterThanOrEqual(-1e-9);
				expect(timeOf(fallen, 'lowest')).toBeGreaterThanOrEqual(done);
				// The last tenth of a second of the stop, or less: the speed along the line shrinks in step with the time left.
				const left = Math.min(0.1, (done - timeOf(fallen, 'lanyard-tight')) / 3);
				const rate = polar(given, fallen, done - left / 2).along / (left / 2);
				expect(polar(given, fallen, done - left / 4).along / (left / 4) / rate).toBeCloseTo(1, 5);
			})
		);
	});

	it('balances energy: speed and the work of the line make up for the drop, to a millionth', () => {
		fc.assert(
			fc.property(anyFall('swing'), (own) => {
				const given = { ...own, mass: 1 };
				const fallen = simulateFall(given);
				const done = timeOf(fallen, 'absorber-done');
				const spent = workOfLine(given, fallen);
				for (const t of [done, (done + fallen.duration) / 2, timeOf(fallen, 'lowest'), fallen.duration]) {
					const { dRing, dRingVelocity: v } = fallen.at(t);
					const drop = fallen.at(0).dRing.z - dRing.z;
					const deepest = given.freeFall + given.lineLength + given.elongation;
					expect(Math.abs((v.x ** 2 + v.z ** 2) / 2 + spent - G * drop)).toBeLessThan(1e-6 * G * deepest);
				}
			}),
			{ numRuns: 60 }
		);
	});

	it('is for a vanishing offset the fall straight down, where that stops before a pendulum would swing through', () => {
		for (const riseOfAnchorage of [0.6, 0, -1]) {
			const straight = simulateFall(fall({ riseOfAnchorage }));
			const aside = simulateFall(fall({ riseOfAnchorage, offset: 1e-5 }));
			for (const t of [0.2, 0.5, 0.7, timeOf(straight, 'absorber-done') - 1e-3]) {
				expect(aside.at(t).soles.z).toBeCloseTo(straight.at(t).soles.z, 6);
				expect(aside.at(t).force).toBeCloseTo(straight.at(t).force, 3);
			}
		}
	});

	it('takes no longer than a few seconds, however little it falls', () => {
		fc.assert(
			fc.property(anyFall('swing'), (given) => {
				expect(simulateFall(given).duration).toBeLessThan(5);
			}),
			{ numRuns: 60 }
		);
	});
});

describe('the swing after the stop', () => {
	/** A quarter of a pendulum's period: √(R/g) K(sin(φ/2)), K by the arithmetic-geometric mean (Gauss). */
	function quarter(length: number, amplitude: number): number {
		let [a, b] = [1, Math.cos(amplitude / 2)];
		for (let i = 0; i < 20; i += 1) [a, b] = [(a + b) / 2, Math.sqrt(a * b)];
		return (Math.sqrt(length / G) * Math.PI) / (2 * a);
	}

	it('rises on the far side as high as its speed carries it, in a quarter of its period', () => {
		fc.assert(
			fc.property(anyFall('swing'), (given) => {
				const length = given.lineLength + given.elongation;
				const fallen = simulateFall(given);
				const lowest = timeOf(fallen, 'lowest');
				const speed = polar(given, fallen, lowest).across;
				const height = speed ** 2 / (2 * G);
				const end = polar(given, fallen, fallen.duration);
				if (height < length) {
					expect(length - end.depth).toBeCloseTo(height, 8);
					const amplitude = 2 * Math.asin(Math.sqrt(height / (2 * length)));
					expect(fallen.duration - lowest).toBeCloseTo(quarter(length, amplitude), 7);
				} else {
					expect(end.depth).toBeCloseTo(0, 7);
				}
				expect(fallen.at(fallen.duration).dRing.x).toBeLessThan(0);
			})
		);
	});

	it('pulls hardest at the lowest point: weight and v²/R', () => {
		const given = fall({ offset: 1.2 });
		const fallen = simulateFall(given);
		const lowest = timeOf(fallen, 'lowest');
		const { across } = polar(given, fallen, lowest);
		expect(fallen.at(lowest).force).toBeCloseTo(100 * (G + across ** 2 / 3.2), 6);
		expect(fallen.at(lowest + 0.2).force).toBeLessThan(fallen.at(lowest).force);
	});
});

describe('what a swing meets', () => {
	const swing = (obstacles: Fall['obstacles'], depth = 8) => simulateFall(fall({ offset: 1.2, depth, obstacles }));

	it('ends on a lower level that the stop along the line does not clear, before the lowest point', () => {
		const free = swing([]);
		const deep = 0.3 - free.at(timeOf(free, 'lowest')).soles.z;
		const { outcome, events } = swing([], deep - 0.5);
		expect(outcome).toMatchObject({ ends: 'contact', with: 'lower-level', phase: 'stopping' });
		expect(events.map((event) => event.id)).not.toContain('lowest');
	});

	it('meets a wall on the far side at half a body from it, at the speed that the drop leaves', () => {
		const free = swing([]);
		const { outcome } = swing([{ id: 'wall', top: 20, from: -3, to: -1 }]);
		if (outcome.ends !== 'contact') throw new Error('no contact');
		expect(outcome).toMatchObject({ with: 'wall', phase: 'swinging' });
		const there = free.at(outcome.time);
		expect(there.dRing.x).toBeCloseTo(-0.7, 9);
		const lowest = free.at(timeOf(free, 'lowest'));
		// Without loss from the lowest point on: v² falls by 2g for each metre of rise.
		expect(outcome.speed ** 2).toBeCloseTo(lowest.speed ** 2 - 2 * G * (there.dRing.z - lowest.dRing.z), 6);
	});

	it('meets a wall that is let stand at the lowest point at the speed of the lowest point', () => {
		const { outcome } = swing([{ id: 'wall', top: 20, from: -3, to: -0.3 }]);
		const free = swing([]);
		if (outcome.ends !== 'contact') throw new Error('no contact');
		expect(outcome.time).toBeCloseTo(timeOf(free, 'lowest'), 7);
		expect(outcome.speed).toBeCloseTo(free.at(timeOf(free, 'lowest')).speed, 6);
	});

	it('passes over what it has left below on its way, and says how much room that left', () => {
		const free = swing([]);
		const deepest = -free.at(timeOf(free, 'lowest')).soles.z;
		const end = free.at(free.duration).soles;
		// Under the far end of the swing, 5 cm lower than the soles where they first come over it.
		const from = end.x - 1;
		const to = end.x + 0.2 - 0.3;
		const over = whereX(free, to + 0.3);
		const { outcome } = swing([{ id: 'pile', top: 8 + over - 0.05, from, to }]);
		expect(outcome).toMatchObject({ ends: 'arrested', spareLeft: 0 });
		if (outcome.ends === 'arrested') expect(outcome.marginUsed).toBeCloseTo(0.55, 6);
		expect(swing([{ id: 'pile', top: 8 + over + 0.05, from, to }]).outcome).toMatchObject({ ends: 'contact', with: 'pile' });
		expect(8 + over - 0.05).toBeGreaterThan(8 - deepest);
	});

	it('meets what stands under the worker on the way down', () => {
		const free = swing([]);
		const { outcome } = swing([{ id: 'rack', top: 7.5, from: 1.4, to: 2 }]);
		expect(outcome).toMatchObject({ ends: 'contact', with: 'rack', phase: 'free-fall' });
		if (outcome.ends === 'contact') expect(free.at(outcome.time).soles.z).toBeCloseTo(-0.5, 9);
		expect(swing([{ id: 'rack', top: 7.5, from: 1.6, to: 2 }]).outcome).toMatchObject({ ends: 'arrested' });
	});

	it('leaves what stands on the worker\'s side behind before it sinks below its top', () => {
		const free = swing([]);
		const lowest = timeOf(free, 'lowest');
		const leaves = firstTime(free, lowest, (t) => free.at(t).soles.x < 0.5);
		const there = free.at(leaves).soles.z;
		expect(there).toBeGreaterThan(free.at(lowest).soles.z + 0.1);
		const stack = (top: number) => swing([{ id: 'stack', top, from: 0.8, to: 2 }]).outcome;
		expect(stack(8 + there - 0.05)).toMatchObject({ ends: 'arrested', spareLeft: 0 });
		expect(stack(8 + there + 0.05)).toMatchObject({ ends: 'contact', with: 'stack' });
	});

	it('agrees at its first contact with what its own samples show', () => {
		const stack = fc
			.record({
				top: fc.double({ min: 2, max: 8, noNaN: true }),
				from: fc.double({ min: -4, max: 3, noNaN: true }),
				width: fc.double({ min: 0, max: 2, noNaN: true })
			})
			.map(({ top, from, width }) => ({ id: 'stack', top, from, to: from + width }));
		fc.assert(
			fc.property(anyFall('swing'), stack, (given, one) => {
				const free = simulateFall({ ...given, depth: 40 });
				const met = simulateFall({ ...given, depth: 8, obstacles: [one] }, {});
				const inside = (t: number): boolean => {
					const { x, z } = free.at(t).soles;
					return z < -8 - 1e-6 || (z < one.top - 8 - 1e-6 && x > one.from - 0.3 + 1e-6 && x < one.to + 0.3 - 1e-6);
				};
				const span = met.outcome.ends === 'contact' ? met.outcome.time : free.duration;
				const times = Array.from({ length: 200 }, (_, i) => (span * i) / 200);
				expect(times.filter(inside)).toEqual([]);
			}),
			{ numRuns: 80 }
		);
	});
});

/** The first time up to an end at which something that stays true becomes true. */
function firstTime(simulation: PlayedFall, end: number, holds: (t: number) => boolean, from = 0): number {
	let [low, high] = [from, Math.min(end, simulation.duration)];
	for (let i = 0; i < 60; i += 1) {
		const middle = (low + high) / 2;
		if (holds(middle)) high = middle;
		else low = middle;
	}
	return high;
}

/** Height of the soles of a swing where it passes a place on the far side. */
function whereX(simulation: PlayedFall, x: number): number {
	const passes = (t: number): boolean => simulation.at(t).soles.x <= x;
	return simulation.at(firstTime(simulation, simulation.duration, passes, timeOf(simulation, 'lowest'))).soles.z;
}
