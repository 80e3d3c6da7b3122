/**
 * Obstacles count as far as the body swings. No outside source: the strip that the verdict looks at is held
 * against the planning-case simulation of random falls.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { simulateFall } from '#lib/arrest/index.ts';
import { anyFall } from '../unit/arrest/falls.ts';

test('the swing never ends farther on the other side than twice the offset', () => {
	let farthest = 0;
	fc.assert(
		fc.property(anyFall('swing'), (fall) => {
			// Offsets that a plan would have: nobody ties off at more than half the line's length aside.
			fc.pre(fall.offset <= fall.lineLength / 2 && fall.offset > 0.05 && fall.freeFall <= 2.5);
			const played = simulateFall(fall, {});
			const share = -played.at(played.duration).dRing.x / fall.offset;
			farthest = Math.max(farthest, share);
			expect(share).toBeLessThanOrEqual(2);
		}),
		{ numRuns: 400 }
	);
	expect(farthest).toBeGreaterThan(1);
});
