/**
 * A pass rule as a document: how many items a check asks, how many errors it bears, what an error brings.
 * The one schema for the shipped rules and for those that an organisation makes. The browser never loads it.
 */
import * as z from 'zod';

const slug = z
	.string()
	.regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/, { error: 'is no short name; give small letters, digits and hyphens, such as "free-fall"' })
	.max(40);
const count = z.int().min(0).max(60);

/** Errors that a rule may bear. @reason more than any check needs; keeps a rule's rates cheap to compute */
const MOST_ERRORS = 7;
/** Cells that a rule may ask. @reason the course has eight; keeps a rule's rates cheap to compute */
const MOST_CELLS = 10;

/** What a lesson's rule calls the one cell that the lesson teaches. */
const LESSON_CELL = 'lesson';

const stage = z.strictObject({
	/** How many items of the blueprint have been handed in. */
	after: z.int().min(1).max(60),
	/** So many errors at most, and the check is passed. */
	passAtMost: z.int().min(0).max(MOST_ERRORS),
	/** So many errors or more, and it is failed. Left out at the last stage, where more than `passAtMost` fails. */
	failAtLeast: z.int().min(1).max(MOST_ERRORS + 1).optional()
});

/** One place in a form: what is asked there. */
const place = z.strictObject({
	cell: slug,
	difficulty: z.enum(['easy', 'middle', 'hard']),
	/** Whether it asks for a decision on a plan that fails (true) or passes (false); left out: anything of the cell. */
	fails: z.boolean().optional()
});

const cut = z.discriminatedUnion('kind', [
	z.strictObject({ kind: z.literal('provisional') }),
	z.strictObject({
		kind: z.literal('judged'),
		date: z.iso.date({ error: 'is no date; give year, month and day, such as "2027-03-14"' }),
		judges: z
			.array(z.string().trim().min(1).max(120))
			.min(3, { error: 'are fewer than three; name at least three competent judges' })
			.max(40),
		document: z.string().trim().min(1).max(300)
	})
]);

export const passRuleSchema = z
	.strictObject({
		id: slug,
		version: z.int().min(1).max(10_000),
		/** What it judges: the final check, or the check at the end of one lesson. */
		for: z.enum(['final', 'lesson']),
		stages: z.array(stage).min(1).max(6),
		/** Items with a number on the unsafe side: the cap on the first ones, and the cap on all. */
		unsafe: z.strictObject({ first: z.strictObject({ items: z.int().min(1).max(60), atMost: count }), atMost: count }),
		/** How many more failing plans accepting one brings. */
		failingPlan: z.strictObject({ extra: z.int().min(1).max(4) }),
		/** How many more items of its cell an error brings to the next page. */
		cellError: z.strictObject({ extra: z.int().min(1).max(3) }),
		/** A place for each item of the stages, in the order of the stages. */
		blueprint: z.array(place).min(1).max(60),
		tries: z.strictObject({ beforeUnlock: z.int().min(1).max(10), perDay: z.int().min(1).max(10) }),
		/** Whether the pass mark was set by judges, or is still the author's. */
		cut
	})
	.check((context) => {
		const rule = context.value;
		const say = (path: (string | number)[], message: string): void => {
			context.issues.push({ code: 'custom', path, message, input: rule });
		};
		const last = rule.stages.length - 1;
		rule.stages.forEach(({ after, passAtMost, failAtLeast }, i) => {
			const before = rule.stages[i - 1];
			if (before !== undefined && after <= before.after) say(['stages', i, 'after'], 'is not more than at the stage before; let the stages grow');
			if (passAtMost >= after) say(['stages', i, 'passAtMost'], 'lets every item be wrong; give fewer errors than items');
			if (i < last) {
				if (failAtLeast !== undefined && failAtLeast <= passAtMost + 1) {
					say(['stages', i, 'failAtLeast'], 'leaves no count that goes on to the next stage; give at least two more than "passAtMost", or end here');
				}
			} else if (failAtLeast !== undefined && failAtLeast !== passAtMost + 1) {
				say(['stages', i, 'failAtLeast'], 'leaves counts undecided at the last stage; give one more than "passAtMost", or leave it out');
			}
		});
		const { first, atMost } = rule.unsafe;
		if (!rule.stages.some((one) => one.after === first.items)) say(['unsafe', 'first', 'items'], 'is the end of no stage; give the "after" of a stage');
		if (first.atMost > atMost) say(['unsafe', 'first', 'atMost'], 'is more than is allowed in all; give at most "unsafe.atMost"');
		const whole = rule.stages[last]?.after ?? 0;
		if (rule.blueprint.length !== whole) {
			say(['blueprint'], `has ${rule.blueprint.length} places for ${whole} items; give one for each item of the last stage`);
		}
		if (rule.tries.perDay > rule.tries.beforeUnlock) say(['tries', 'perDay'], 'is more than is allowed before a trainer unlocks; give at most "beforeUnlock"');
		const cells = new Set(rule.blueprint.map((one) => one.cell));
		if (cells.size > MOST_CELLS) say(['blueprint'], `names ${cells.size} cells; name at most ${MOST_CELLS}`);
		if (rule.for === 'lesson') {
			for (const cell of cells) {
				if (cell !== LESSON_CELL) say(['blueprint'], `names the cell "${cell}"; a lesson's rule names its cell "${LESSON_CELL}"`);
			}
			return;
		}
		const twiceBy = rule.stages[1]?.after ?? whole;
		for (const cell of cells) {
			const within = (end: number): number => rule.blueprint.slice(0, end).filter((one) => one.cell === cell).length;
			const once = rule.stages[0]?.after ?? 0;
			if (within(once) < 1) say(['blueprint'], `does not ask "${cell}" in the first ${once} items; ask every cell there`);
			if (within(twiceBy) < 2) say(['blueprint'], `asks "${cell}" less than twice in the first ${twiceBy} items; ask every cell twice by then`);
		}
		if (!rule.blueprint.slice(0, rule.stages[0]?.after).some((one) => one.fails === true)) {
			say(['blueprint'], 'has no failing plan in its first stage; let at least one decision there be on a plan that fails');
		}
	});

type Fixed<T> = T extends object ? { readonly [K in keyof T]: Fixed<T[K]> } : T;

export type PassRule = Fixed<z.output<typeof passRuleSchema>>;
