/**
 * The independent integrator by itself, before anything is held against it: the closed forms of physics.md
 * that own-numerics.json lists (each of them twice obtained), and the work balance along a fall.
 */
import { describe, expect, test } from 'vitest';
import { OWN_NUMERICS, input } from '../support/examples.ts';
import { stepFall, type Fall } from '../support/integrator-fall.ts';
import { stepDrop, stepStop, stepSwing } from '../support/integrator-line.ts';

/** Written out: nothing here is taken from src. m/s² */
const g = 9.80665;

const of = (match: RegExp): [string, (name: string) => number, number, number][] =>
	OWN_NUMERICS.filter(({ id }) => match.test(id)).map((one) => [one.id, (name) => input(one, name), one.expected, one.tolerance]);

const straight = (read: (name: string) => number): Fall => ({
	mass: read('m'),
	reach: read('h'),
	rise: 0,
	offset: 0,
	gravity: g,
	law: { kind: 'constant', force: read('F'), limit: 10 }
});

describe('against closed forms', () => {
	test.each(of(/^ff\.speed\./))('%s', (_, read, expected, within) => {
		expect(Math.abs(stepDrop(read('h'), g).speed - expected)).toBeLessThanOrEqual(within);
	});

	test.each(of(/^ff\.time\./))('%s', (_, read, expected, within) => {
		expect(Math.abs(stepDrop(read('h'), g).time - expected)).toBeLessThanOrEqual(within);
	});

	test.each(of(/^ff\.(vertical|offset\.(level|above|feet))/))('%s: drop until taut', (id, read, expected, within) => {
		const rise = read('anchor_above_dring');
		const offset = id.startsWith('ff.offset') ? read('offset') : 0;
		const { taut } = stepFall({ mass: 80, reach: read('L'), rise, offset, gravity: g, law: { kind: 'constant', force: 3000, limit: 10 } });
		expect(Math.abs(-rise - (taut?.z ?? NaN) - expected)).toBeLessThanOrEqual(within);
	});

	test.each(of(/^ff\.offset\.(radial|tangential)-speed$/))('%s', (id, read, expected, within) => {
		const { taut } = stepFall({
			mass: 80,
			reach: read('L'),
			rise: 0,
			offset: read('offset'),
			gravity: g,
			law: { kind: 'constant', force: 3000, limit: 10 }
		});
		const speed = id.includes('radial') ? taut?.along : taut?.across;
		expect(Math.abs(Math.abs(speed ?? NaN) - expected)).toBeLessThanOrEqual(within);
	});

	test.each(of(/^swing\.obstacle\./))('%s', (_, read, expected, within) => {
		expect(Math.abs(stepSwing(read('H'), read('offset'), g, read('xo')).horizontal - expected)).toBeLessThanOrEqual(within);
	});

	test.each(of(/^abs\.const\..*\.x$/))('%s: constant force, plane and straight', (_, read, expected, within) => {
		const fall = stepFall(straight(read));
		expect(Math.abs(fall.deployment - expected)).toBeLessThanOrEqual(within);
		const stop = stepStop(read('m'), stepDrop(read('h'), g).speed, g, () => read('F'));
		expect(Math.abs(stop.travel - expected)).toBeLessThanOrEqual(within);
	});

	test.each(of(/^abs\.const\..*\.tstop$/))('%s', (_, read, expected, within) => {
		const { taut, held } = stepFall(straight(read));
		expect(Math.abs((held?.time ?? NaN) - (taut?.time ?? NaN) - expected)).toBeLessThanOrEqual(within);
	});

	test.each(of(/^abs\.const\..*\.x$/))('%s: the force that is searched for is the force given', (_, read, expected) => {
		const fall = stepFall({ ...straight(read), law: { kind: 'force-for', deployment: expected } });
		expect(Math.abs((fall.held?.pull ?? NaN) / read('F') - 1)).toBeLessThan(1e-4);
		const even = stepFall({ ...straight(read), law: { kind: 'even', deployment: expected, least: 0.1 * g } });
		expect(Math.abs((even.held?.pull ?? NaN) / read('F') - 1)).toBeLessThan(1e-4);
		expect(even.forceless).toBe(0);
	});

	test.each(of(/^swing\.(drop|v|t|T)\./))('%s', (id, read, expected, within) => {
		const swing = stepSwing(read('H'), read('offset'), g);
		const part = { drop: swing.drop, v: swing.speed, t: swing.time, T: swing.tension }[id.split('.')[1] ?? ''];
		expect(Math.abs((part ?? NaN) - expected)).toBeLessThanOrEqual(within);
	});

	test('a line that is taut at once swings in the plane as the pendulum does', () => {
		const fall = stepFall({
			mass: 80,
			reach: Math.hypot(3, 2),
			rise: 3,
			offset: 2,
			gravity: g,
			law: { kind: 'constant', force: 1e6, limit: 10 }
		});
		const swing = stepSwing(3, 2, g);
		expect(fall.deployment).toBeLessThan(1e-9);
		expect(fall.lowest?.time).toBeCloseTo(swing.time, 9);
		expect(fall.lowest?.speed).toBeCloseTo(swing.speed, 9);
		expect((fall.lowest?.pull ?? NaN) / (80 * g)).toBeCloseTo(swing.tension, 9);
		expect(fall.end.x).toBeCloseTo(-2, 9);
		expect(fall.end.z).toBeCloseTo(-3, 9);
	});
});

describe('what no closed form tells', () => {
	const beside: Fall = { mass: 100, reach: 1.8288, rise: 0, offset: 1, gravity: g, law: { kind: 'constant', force: 4000, limit: 2 } };

	test('energy: what gravity gave is in the motion and in the pack', () => {
		const { held, lowest, end, deployment } = stepFall(beside);
		for (const moment of [held, lowest, end]) {
			const given = 100 * g * -(moment?.z ?? NaN);
			const found = 0.5 * 100 * (moment?.speed ?? NaN) ** 2 + 4000 * deployment;
			expect(Math.abs(found / given - 1)).toBeLessThan(1e-9);
		}
	});

	test('ends where something is met, and there only', () => {
		const free = stepFall(beside);
		const lowest = -(free.lowest?.z ?? NaN);
		expect(stepFall({ ...beside, floor: lowest + 1e-6 }).ends).toBe('far-side');
		const met = stepFall({ ...beside, floor: lowest - 0.1 });
		expect(met.ends).toBe('contact');
		expect(met.end.z).toBeCloseTo(0.1 - lowest, 9);
		const early = stepFall({ ...beside, floor: 0.5 });
		expect(early.taut).toBeUndefined();
		expect(early.end.speed).toBeCloseTo(Math.sqrt(g), 9);
	});

	test('a pack that is used up ends the steps still moving', () => {
		const fall = stepFall({ ...beside, law: { kind: 'constant', force: 4000, limit: 0.2 } });
		expect(fall.ends).toBe('used-up');
		expect(fall.deployment).toBeCloseTo(0.2, 9);
		expect(fall.end.along).toBeGreaterThan(1);
	});

	test('an even stop lets out just what was asked, and opens without force only where it must', () => {
		const plain = stepFall({ ...beside, law: { kind: 'even', deployment: 0.9, least: 0.1 * g } });
		expect(plain.deployment).toBeCloseTo(0.9, 9);
		expect(plain.forceless).toBe(0);
		const slow = stepFall({ ...beside, rise: 1.5, offset: 1, law: { kind: 'even', deployment: 1.2, least: 0.1 * g } });
		expect(slow.deployment).toBeCloseTo(1.2, 9);
		expect(slow.forceless).toBeGreaterThan(0);
		expect(slow.held?.x).toBeCloseTo(0, 6);
	});

	test('a D-ring out of reach is refused', () => {
		expect(() => stepFall({ ...beside, rise: 1.8 })).toThrow('out of reach');
	});
});
