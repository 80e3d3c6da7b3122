/** What holds for every pass rule and every way of answering. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	LESSON_RULE,
	PASS_RULES,
	cellsOf,
	firstPage,
	longestForm,
	passRate,
	ruleForCell,
	standing,
	type ItemOutcome,
	type PassRule,
	type Slot,
	type Standing,
	type Worker
} from '#lib/mastery/index.ts';
import { passRuleSchema } from '#lib/mastery/schema.ts';

type How = 'right' | 'wrong' | 'unsafe' | 'accepted';

function outcome(slot: Slot, how: How): ItemOutcome {
	return {
		cell: slot.cell,
		from: slot.from,
		right: how === 'right',
		unsafe: how === 'unsafe' || how === 'accepted',
		failingPlan: slot.fails === true,
		acceptedFailingPlan: how === 'accepted'
	};
}

type Answerer = (slot: Slot, nthOfCell: number) => How;

interface Run {
	readonly outcomes: readonly ItemOutcome[];
	readonly pages: number;
	readonly end: Standing;
}

/** Runs a check to its end. */
function run(rule: PassRule, answer: Answerer): Run {
	const outcomes: ItemOutcome[] = [];
	const nth = new Map<string, number>();
	for (let pages = 0; ; pages += 1) {
		const now = standing(rule, outcomes);
		if (now.kind !== 'more') return { outcomes, pages, end: now };
		for (const slot of now.slots) {
			const n = nth.get(slot.cell) ?? 0;
			nth.set(slot.cell, n + 1);
			outcomes.push(outcome(slot, answer(slot, n)));
		}
	}
}

const SHIPPED = [...PASS_RULES, ruleForCell(LESSON_RULE, 'free-fall')];
const how = fc.oneof(
	{ weight: 12, arbitrary: fc.constant<How>('right') },
	fc.constantFrom<How>('wrong', 'unsafe', 'accepted')
);

/** Small rules that an organisation could make, with up to three cells. */
const madeRule: fc.Arbitrary<PassRule> = fc
	.record({
		base: fc.constantFrom(...PASS_RULES),
		sizes: fc.array(fc.integer({ min: 2, max: 6 }), { minLength: 1, maxLength: 3 }),
		passAtMost: fc.array(fc.integer({ min: 0, max: 2 }), { minLength: 3, maxLength: 3 }),
		band: fc.integer({ min: 2, max: 3 }),
		cells: fc.integer({ min: 1, max: 3 }),
		first: fc.integer({ min: 0, max: 2 }),
		more: fc.integer({ min: 0, max: 2 }),
		plan: fc.integer({ min: 1, max: 3 }),
		second: fc.integer({ min: 1, max: 2 })
	})
	.map(({ base, sizes, passAtMost, band, cells, first, more, plan, second }) => {
		const ends = sizes.map((_, i) => sizes.slice(0, i + 1).reduce((sum, size) => sum + size, cells));
		return {
			...base,
			stages: ends.map((end, i) => {
				const atMost = passAtMost[i] ?? 0;
				return i < ends.length - 1 ? { after: end, passAtMost: atMost, failAtLeast: atMost + band } : { after: end, passAtMost: atMost };
			}),
			unsafe: { first: { items: ends[0] ?? 1, atMost: first }, atMost: first + more },
			failingPlan: { extra: plan },
			cellError: { extra: second },
			blueprint: Array.from({ length: ends.at(-1) ?? 0 }, (_, i) => ({
				cell: `cell-${i % cells}`,
				difficulty: 'middle' as const,
				...(i % 4 === 0 ? { fails: true } : {})
			}))
		};
	})
	.filter((rule) => passRuleSchema.safeParse(rule).success);

const anyRule = fc.oneof(fc.constantFrom(...SHIPPED), madeRule);

/** Fates by cell: how the nth item of a cell is answered. */
function fates(rule: PassRule): fc.Arbitrary<ReadonlyMap<string, How[]>> {
	const cells = cellsOf(rule);
	return fc
		.array(fc.array(how, { minLength: 60, maxLength: 60 }), { minLength: cells.length, maxLength: cells.length })
		.map((lists) => new Map(cells.map((cell, i) => [cell, lists[i] ?? []])));
}

function by(fate: ReadonlyMap<string, readonly How[]>): Answerer {
	return (slot, n) => fate.get(slot.cell)?.[n] ?? 'right';
}

describe('every check', () => {
	it('ends within its longest form, however it is answered', () => {
		fc.assert(
			fc.property(
				anyRule.chain((rule) => fc.tuple(fc.constant(rule), fates(rule))),
				([rule, fate]) => {
					const { outcomes, pages } = run(rule, by(fate));
					expect(outcomes.length).toBeLessThanOrEqual(longestForm(rule));
					expect(pages).toBeLessThanOrEqual(rule.stages.length + 1);
				}
			),
			{ numRuns: 2000 }
		);
	});

	it('is passed when everything is right, in as many items as its first stage', () => {
		fc.assert(
			fc.property(anyRule, (rule) => {
				const { outcomes, end } = run(rule, () => 'right');
				expect(end.kind).toBe('passed');
				expect(outcomes).toHaveLength(rule.stages[0]?.after ?? 0);
			})
		);
	});

	it('is never passed because a right answer was made wrong', () => {
		fc.assert(
			fc.property(
				anyRule.chain((rule) =>
					fc.tuple(fc.constant(rule), fates(rule), fc.constantFrom(...cellsOf(rule)), fc.nat({ max: 12 }), fc.constantFrom<How>('wrong', 'unsafe', 'accepted'))
				),
				([rule, fate, cell, at, worse]) => {
					const worsened = new Map(fate);
					worsened.set(cell, (fate.get(cell) ?? []).map((one, i) => (i === at && one === 'right' ? worse : one)));
					if (run(rule, by(worsened)).end.kind === 'passed') expect(run(rule, by(fate)).end.kind).toBe('passed');
				}
			),
			{ numRuns: 5000 }
		);
	});

	it('is not passed with a second acceptance of a failing plan, a wrong extra item, or two errors in a cell on the first page', () => {
		fc.assert(
			fc.property(
				anyRule.chain((rule) => fc.tuple(fc.constant(rule), fates(rule))),
				([rule, fate]) => {
					const { outcomes, end } = run(rule, by(fate));
					const accepted = outcomes.filter((one) => one.acceptedFailingPlan).length;
					if (accepted > 1) {
						expect(end.kind).toBe('failed');
						if (end.kind === 'failed') expect(end.why).toContain('failing-plan-accepted-again');
					}
					if (outcomes.some((one) => one.from !== 'blueprint' && !one.right)) expect(end.kind).not.toBe('passed');
					const first = outcomes.slice(0, firstPage(rule).length);
					for (const cell of cellsOf(rule)) {
						if (first.filter((one) => one.cell === cell && !one.right).length > 1) expect(end.kind).not.toBe('passed');
					}
				}
			),
			{ numRuns: 2000 }
		);
	});

	it('does not depend on the order of a page', () => {
		fc.assert(
			fc.property(fc.constantFrom(...SHIPPED), fc.array(how, { minLength: 60, maxLength: 60 }), (rule, hows) => {
				const page = firstPage(rule).map((slot, i) => outcome(slot, hows[i] ?? 'right'));
				const turned = standing(rule, [...page].reverse());
				const straight = standing(rule, page);
				expect(turned.kind).toBe(straight.kind);
				if (turned.kind === 'more' && straight.kind === 'more') expect(turned.slots).toHaveLength(straight.slots.length);
			})
		);
	});
});

/** What a worker does with an item, and how probable that is: the model of rates.ts. */
function ways(slot: Slot, worker: Worker): readonly (readonly [How, number])[] {
	const p = worker.except?.cell === slot.cell ? worker.except.right : worker.right;
	const unsafe = (1 - p) * worker.unsafeShare;
	return [
		['right', p],
		['wrong', 1 - p - unsafe],
		[slot.fails === true ? 'accepted' : 'unsafe', unsafe]
	];
}

/** Probability to pass and items asked, by going through every outcome of every page with the judge. */
function enumerated(rule: PassRule, worker: Worker): { pass: number; items: number } {
	let pass = 0;
	let items = 0;
	const through = (done: readonly ItemOutcome[], probability: number): void => {
		const now = standing(rule, done);
		if (now.kind === 'passed') pass += probability;
		if (now.kind !== 'more') return;
		items += probability * now.slots.length;
		const answer = (page: readonly ItemOutcome[], slots: readonly Slot[], soFar: number): void => {
			const [slot, ...rest] = slots;
			if (slot === undefined) through([...done, ...page], soFar);
			else for (const [one, part] of ways(slot, worker)) if (part > 0) answer([...page, outcome(slot, one)], rest, soFar * part);
		};
		answer([], now.slots, probability);
	};
	through([], 1);
	return { pass, items };
}

describe('computed rates', () => {
	const small: PassRule = {
		...LESSON_RULE,
		stages: [
			{ after: 3, passAtMost: 0, failAtLeast: 3 },
			{ after: 5, passAtMost: 2 }
		],
		unsafe: { first: { items: 3, atMost: 1 }, atMost: 2 },
		blueprint: [
			{ cell: 'a', difficulty: 'middle' },
			{ cell: 'b', difficulty: 'middle', fails: true },
			{ cell: 'b', difficulty: 'middle' },
			{ cell: 'c', difficulty: 'middle', fails: true },
			{ cell: 'a', difficulty: 'middle' }
		]
	};

	it.each([
		[{ right: 0.7, unsafeShare: 0 }],
		[{ right: 0.8, unsafeShare: 0.5 }],
		[{ right: 0.6, unsafeShare: 1 }],
		[{ right: 0.9, unsafeShare: 0.3, except: { cell: 'b', right: 0.2 } }]
	])('are what going through every outcome with the judge gives, for %j', (worker) => {
		for (const rule of [small, ruleForCell(LESSON_RULE, 'a')]) {
			const truth = enumerated(rule, worker);
			expect(passRate(rule, worker).pass).toBeCloseTo(truth.pass, 10);
			expect(passRate(rule, worker).items).toBeCloseTo(truth.items, 10);
		}
	});

	it('are what drawn workers give under the judge, for every shipped rule', () => {
		let state = 20_261_125;
		const roll = (): number => {
			// xorshift32 (Marsaglia 2003, from memory): chance apart from the program's own.
			state ^= state << 13;
			state ^= state >>> 17;
			state ^= state << 5;
			return (state >>> 0) / 2 ** 32;
		};
		const worker = { right: 0.8, unsafeShare: 0.5 };
		const draws = 20_000;
		for (const rule of PASS_RULES) {
			const answer: Answerer = (slot) => {
				let left = roll();
				return ways(slot, worker).find(([, part]) => (left -= part) < 0)?.[0] ?? 'right';
			};
			let passed = 0;
			for (let i = 0; i < draws; i += 1) if (run(rule, answer).end.kind === 'passed') passed += 1;
			const { pass } = passRate(rule, worker);
			const standardError = Math.sqrt((pass * (1 - pass)) / draws);
			expect(Math.abs(passed / draws - pass)).toBeLessThan(4 * standardError);
		}
	});

	it('of clustered errors are the mean over workers whose reliability is spread as Beta says', () => {
		const rule = PASS_RULES[0];
		if (rule === undefined) throw new Error('no rule is shipped');
		// Mean .7, intraclass correlation .1: Beta(6.3, 2.7), by the midpoint rule.
		const steps = 400;
		let weights = 0;
		let sum = 0;
		for (let i = 0; i < steps; i += 1) {
			const p = (i + 0.5) / steps;
			const density = p ** 5.3 * (1 - p) ** 1.7;
			weights += density;
			sum += density * passRate(rule, { right: p, unsafeShare: 0.5 }).pass;
		}
		expect(passRate(rule, { right: 0.7, unsafeShare: 0.5, cluster: 0.1 }).pass).toBeCloseTo(sum / weights, 4);
	});

	it('are zero for a worker who is always wrong in one cell, whichever it is', () => {
		for (const rule of PASS_RULES) {
			for (const cell of cellsOf(rule)) {
				expect(passRate(rule, { right: 1, unsafeShare: 0.5, except: { cell, right: 0 } }).pass).toBe(0);
			}
		}
	});
});
