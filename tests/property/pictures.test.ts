import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { FINDING_TASKS, drawPicture, gradePicture } from '#lib/findings/index.ts';
import { pictureAnswerSchema } from '#lib/findings/schema.ts';

const picture = fc
	.tuple(fc.constantFrom(...FINDING_TASKS.map((task) => task.id)), fc.integer())
	.map(([id, seed]) => drawPicture(id, seed));

describe('pictures', () => {
	test('any whole number is a seed, and marking exactly the key is right and never critical', () => {
		fc.assert(
			fc.property(picture, (drawn) => {
				const grade = gradePicture(drawn, { kind: 'picture', marked: drawn.key.marks, choice: drawn.key.choice });
				expect(grade).toEqual({ right: true, critical: false, missed: [], extra: [], choice: { given: drawn.key.choice, right: drawn.key.choice } });
			})
		);
	});

	test('any answer gets a grade, right only if it is the key', () => {
		fc.assert(
			fc.property(
				picture.chain((drawn) =>
					fc.record({
						drawn: fc.constant(drawn),
						marked: fc.oneof(fc.subarray(drawn.shown.parts.map((part) => part.id)), fc.array(fc.string({ minLength: 1, maxLength: 12 }), { maxLength: 6 })),
						choice: fc.oneof(fc.constantFrom(...drawn.shown.choices.map((one) => one.id)), fc.string({ minLength: 1, maxLength: 12 }))
					})
				),
				({ drawn, marked, choice }) => {
					const answer = pictureAnswerSchema.parse({ kind: 'picture', marked, choice });
					const grade = gradePicture(drawn, answer);
					const same = [...new Set(marked)].sort().join() === [...drawn.key.marks].sort().join() && choice === drawn.key.choice;
					expect(grade.right).toBe(same);
					expect(grade.right && grade.critical).toBe(false);
					expect(grade.missed.filter((part) => marked.includes(part))).toEqual([]);
					expect(grade.extra.filter((part) => drawn.key.marks.includes(part))).toEqual([]);
				}
			)
		);
	});

	test('on gear and situations, a missed part is always on the unsafe side', () => {
		fc.assert(
			fc.property(
				picture.filter(({ kind, key }) => kind !== 'moment' && key.marks.length > 0),
				fc.nat(),
				(drawn, which) => {
					const marked = drawn.key.marks.filter((_, i) => i !== which % drawn.key.marks.length);
					expect(gradePicture(drawn, { kind: 'picture', marked, choice: drawn.key.choice }).critical).toBe(true);
				}
			)
		);
	});

	test.each([
		{ kind: 'picture', marked: [], choice: '' },
		{ kind: 'picture', marked: 'label', choice: 'use' },
		{ kind: 'picture', marked: [1], choice: 'use' },
		{ kind: 'number', marked: [], choice: 'use' },
		{ kind: 'picture', marked: [], choice: 'use', right: true },
		{ kind: 'picture', marked: Array.from({ length: 33 }, () => 'label'), choice: 'use' },
		{ marked: [], choice: 'use' }
	])('an answer of another shape is refused: %o', (answer) => {
		expect(pictureAnswerSchema.safeParse(answer).success).toBe(false);
	});
});
