import { expect, test } from 'vitest';
import { FINDING_TASKS, answerKey, drawPicture, guessOf } from '#lib/findings/index.ts';

/** Other seeds than those that were counted for the table. */
const SEEDS = Array.from({ length: 600 }, (_, i) => 50_000 + i);

test.each(FINDING_TASKS.map((task) => task.id))('%s: common answers are known to be common', (id) => {
	const drawn = SEEDS.map((seed) => drawPicture(id, seed));
	const count = new Map<string, number>();
	for (const { key } of drawn) count.set(answerKey(key), (count.get(answerKey(key)) ?? 0) + 1);
	for (const picture of drawn) {
		const share = (count.get(answerKey(picture.key)) ?? 0) / SEEDS.length;
		// Four standard errors of the share counted here, and the table's own rounding.
		const error = 4 * Math.sqrt((Math.max(share, 0.05) * (1 - share)) / SEEDS.length) + 0.01;
		expect(guessOf(picture), answerKey(picture.key)).toBeGreaterThan(share - error);
	}
});
