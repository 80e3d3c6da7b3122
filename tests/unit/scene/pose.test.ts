import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { SHIN, STATURE, THIGH, type Spot } from '../../../src/lib/scene/figure/body.ts';
import { figureShape } from '../../../src/lib/scene/figure/outline.ts';
import { FALLING, HANGING, KNEELING, LANDED, mix, type Pose, REACHING, solvePose, WORKING } from '../../../src/lib/scene/figure/pose.ts';

const length = (a: Spot, b: Spot): number => Math.sqrt((a.u - b.u) ** 2 + (a.v - b.v) ** 2);
const lowest = (pose: Pose): number => Math.min(...figureShape(pose).extent.map((s) => s.v));
const metres = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true });

describe('pose', () => {
	test('the soles are exactly as far below the D-ring as told, in every stance and slide', () => {
		fc.assert(
			fc.property(
				metres(1.5, 2.05),
				metres(0.76, 0.84),
				metres(0, 0.6),
				fc.constantFrom(REACHING, WORKING, FALLING, HANGING, LANDED),
				fc.constantFrom(FALLING, HANGING, LANDED),
				metres(0, 1),
				(stature, share, slid, from, to, progress) => {
					const dRingHeight = stature * share;
					const stance = mix(from, to, progress);
					const pose = solvePose({ stature, dRingHeight, soleDrop: dRingHeight + slid, slid, stance, kneeling: false });
					expect(lowest(pose)).toBeCloseTo(-(dRingHeight + slid), 6);
				}
			),
			{ numRuns: 300, seed: 21 }
		);
	});

	test('kneeling, the D-ring is as low as the plan says and knees or toes touch the standing place', () => {
		for (const soleDrop of [1.0, 0.9, 0.8, 0.7, 0.6, 0.52]) {
			const pose = solvePose({ stature: 1.78, dRingHeight: 1.44, soleDrop, slid: 0, stance: KNEELING, kneeling: true });
			expect(Math.abs(lowest(pose) + soleDrop)).toBeLessThan(0.012);
		}
	});

	test('thigh and shin keep their lengths', () => {
		for (const stance of [REACHING, FALLING, HANGING, LANDED]) {
			const pose = solvePose({ stature: STATURE, dRingHeight: 1.5, soleDrop: 1.8, slid: 0.3, stance, kneeling: false });
			for (const { leg } of [pose.near, pose.far]) {
				expect(length(leg.hip, leg.knee)).toBeCloseTo(THIGH * pose.k, 6);
				expect(length(leg.knee, leg.ankle)).toBeCloseTo(SHIN * pose.k, 6);
			}
		}
	});

	test('standing at the usual stature the helmet ends near 1.90 m', () => {
		const pose = solvePose({ stature: STATURE, dRingHeight: 1.5, soleDrop: 1.5, slid: 0, stance: REACHING, kneeling: false });
		const helmet = Math.max(...figureShape(pose).helmet.map((s) => s.v)) + 1.5;
		expect(helmet).toBeGreaterThan(1.84);
		expect(helmet).toBeLessThan(1.95);
	});

	test('a D-ring that no figure of that stature has still stands where the plan has it', () => {
		const pose = solvePose({ stature: 1.5, dRingHeight: 1.48, soleDrop: 1.48, slid: 0, stance: REACHING, kneeling: false });
		expect(lowest(pose)).toBeCloseTo(-1.48, 6);
	});
});
