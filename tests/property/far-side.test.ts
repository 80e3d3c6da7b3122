/**
 * Obstacles count as far as the body swings. No outside source: the strip that the verdict looks at is held
 * against the planning-case simulation of random falls.
 */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { simulateFall } from '#lib/arrest/index.ts';
import { anyFall } from '../unit/arrest/falls.ts';

/**
 * Where a short line is tied off far below the D-ring and a hand's breadth aside, the swing can end two millimetres
 * beyond twice the offset (found by chance: offset 0.07 m, line 0.84 m, anchorage 0.61 m below). Places of obstacles are
 * known to a centimetre at best, and half a body's width is added on top, m.
 */
const KNOWN_TO = 0.01;

test('the swing never ends farther on the other side than twice the offset, but for less than a centimetre', () => {
	let farthest = 0;
	fc.assert(
		fc.property(anyFall('swing'), (fall) => {
			// Offsets that a plan would have: nobody ties off at more than half the line's length aside.
			fc.pre(fall.offset <= fall.lineLength / 2 && fall.offset > 0.05 && fall.freeFall <= 2.5);
			const played = simulateFall(fall, {});
			const beyond = -played.at(played.duration).dRing.x;
			farthest = Math.max(farthest, beyond / fall.offset);
			expect(beyond).toBeLessThan(2 * fall.offset + KNOWN_TO);
		}),
		{ numRuns: 400 }
	);
	expect(farthest).toBeGreaterThan(1);
});
