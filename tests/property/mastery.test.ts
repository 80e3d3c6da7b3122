/** What holds for every learner and every order of answers. Sources: learning-and-records.md 5.1; DESIGN 6. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
	DIFFICULTIES,
	NOTHING_KNOWN,
	REFRESH_DAYS,
	cellOf,
	isMastered,
	isReady,
	nextTask,
	observe,
	readySince,
	refreshersDue,
	skillOf,
	type Mastery,
	type Outcome,
	type TaskFacts
} from '#lib/mastery/index.ts';
import { daysAfter, dayNumber } from '#lib/mastery/day.ts';

const CELLS = ['stages', 'force', 'swing'];
const SKILLS = ['datum', 'margin', 'slide', 'connector'];
const START = '2026-01-28';

const credit = fc.record({
	cell: fc.constantFrom(...CELLS),
	skills: fc.uniqueArray(fc.constantFrom(...SKILLS), { maxLength: 3 }),
	right: fc.boolean(),
	guess: fc.constantFrom(0.02, 0.001, 0.14, 0.3)
});
const outcome: fc.Arbitrary<Outcome> = fc.record({
	task: fc.constantFrom('a', 'b', 'c'),
	kind: fc.constantFrom('k', 'l'),
	difficulty: fc.constantFrom(...DIFFICULTIES),
	day: fc.nat(40).map((days) => daysAfter(START, days)),
	aided: fc.boolean(),
	credits: fc.array(credit, { maxLength: 4 })
});
/** Outcomes in order of their days. */
const history = fc
	.array(outcome, { maxLength: 60 })
	.map((outcomes) => outcomes.sort((a, b) => dayNumber(a.day) - dayNumber(b.day)));

function after(outcomes: readonly Outcome[], before: Mastery = NOTHING_KNOWN): Mastery {
	return outcomes.reduce(observe, before);
}

/** All estimates, by name. */
function estimates(known: Mastery): readonly number[] {
	return [...CELLS.map((cell) => cellOf(known, cell).p), ...SKILLS.map((skill) => skillOf(known, skill).p)];
}

describe('an observation', () => {
	it('keeps every estimate between 0 and 1', () => {
		fc.assert(
			fc.property(history, (outcomes) => {
				for (const p of estimates(after(outcomes))) expect(p >= 0 && p <= 1).toBe(true);
			})
		);
	});

	it('changes nothing that it was given, and survives being stored as JSON', () => {
		fc.assert(
			fc.property(history, outcome, (outcomes, next) => {
				const known = after(outcomes);
				const before = JSON.stringify(known);
				const direct = observe(known, next);
				expect(JSON.stringify(known)).toBe(before);
				expect(observe(JSON.parse(before) as Mastery, next)).toEqual(direct);
			})
		);
	});

	it('does not depend on the order of the asks in it', () => {
		fc.assert(
			fc.property(history, outcome, (outcomes, next) => {
				const known = after(outcomes);
				const turned = observe(known, { ...next, credits: [...next.credits].reverse() });
				const straight = observe(known, next);
				for (const cell of CELLS) expect(cellOf(turned, cell)).toEqual(cellOf(straight, cell));
				for (const skill of SKILLS) expect(skillOf(turned, skill)).toEqual(skillOf(straight, skill));
			})
		);
	});

	it('of other cells and skills may come before or after', () => {
		fc.assert(
			fc.property(history, fc.boolean(), fc.boolean(), (outcomes, first, second) => {
				const one = { task: 'x', kind: 'x', difficulty: 'hard', day: daysAfter(START, 41), aided: false } as const;
				const a: Outcome = { ...one, credits: [{ cell: 'force', skills: ['margin'], right: first }] };
				const b: Outcome = { ...one, credits: [{ cell: 'swing', skills: ['datum'], right: second }] };
				const known = after(outcomes);
				expect(after([a, b], known)).toEqual(after([b, a], known));
			})
		);
	});

	it('never says more for a wrong answer than for a right one', () => {
		fc.assert(
			fc.property(history, outcome, fc.nat(3), (outcomes, next, place) => {
				const known = after(outcomes);
				const as = (right: boolean): Mastery =>
					observe(known, { ...next, credits: next.credits.map((one, i) => (i === place ? { ...one, right } : one)) });
				const wrong = estimates(as(false));
				estimates(as(true)).forEach((p, i) => expect(p).toBeGreaterThanOrEqual((wrong[i] ?? 0) - 1e-12));
				for (const cell of CELLS) if (isReady(as(false), cell)) expect(isReady(as(true), cell)).toBe(true);
			})
		);
	});

	it('never raises an estimate, a row or readiness when it was aided', () => {
		fc.assert(
			fc.property(history, outcome, (outcomes, next) => {
				const known = after(outcomes);
				const aided = observe(known, { ...next, aided: true });
				const before = estimates(known);
				estimates(aided).forEach((p, i) => expect(p).toBeLessThanOrEqual(before[i] ?? 0));
				for (const cell of CELLS) {
					if (!isReady(known, cell)) expect(isReady(aided, cell)).toBe(false);
					if (!isMastered(known, cell)) expect(isMastered(aided, cell)).toBe(false);
					expect(cellOf(aided, cell).tries.length).toBeLessThanOrEqual(cellOf(known, cell).tries.length);
				}
			})
		);
	});

	it('never lowers an estimate, nor ends readiness, when every ask is right', () => {
		fc.assert(
			fc.property(history, outcome, (outcomes, next) => {
				const known = after(outcomes);
				const right = observe(known, { ...next, credits: next.credits.map((one) => ({ ...one, right: true })) });
				const before = estimates(known);
				estimates(right).forEach((p, i) => expect(p).toBeGreaterThanOrEqual((before[i] ?? 0) - 1e-12));
				for (const cell of CELLS) if (isReady(known, cell)) expect(isReady(right, cell)).toBe(true);
			})
		);
	});
});

describe('the levels', () => {
	it('stand above each other: mastered is ready, and ready has a day since when', () => {
		fc.assert(
			fc.property(history, (outcomes) => {
				const known = after(outcomes);
				for (const cell of CELLS) {
					if (isMastered(known, cell)) expect(isReady(known, cell)).toBe(true);
					if (isReady(known, cell)) {
						expect(readySince(known, cell)).toBeDefined();
						expect(cellOf(known, cell).p).toBeGreaterThanOrEqual(0.98);
						const row = cellOf(known, cell).tries.slice(-3);
						expect(row.length === 3 && row.every((one) => one.right)).toBe(true);
						expect(cellOf(known, cell).rowByChance).toBeLessThanOrEqual(1e-5);
					}
				}
			}),
			{ numRuns: 300 }
		);
	});
});

describe('refreshers', () => {
	it('are due of ready cells alone, sorted, at most one of each cell, and never before the shortest rung', () => {
		fc.assert(
			fc.property(history, fc.nat(200), (outcomes, days) => {
				const known = after(outcomes);
				const today = daysAfter(START, days);
				const due = refreshersDue(known, today);
				expect(new Set(due.map((one) => one.cell)).size).toBe(due.length);
				due.forEach((one, i) => {
					expect(one.overdue).toBeLessThanOrEqual(due[i - 1]?.overdue ?? Infinity);
					expect(dayNumber(today) - dayNumber(one.since)).toBe(one.overdue);
					const since = readySince(known, one.cell);
					expect(since !== undefined && one.since >= daysAfter(since, REFRESH_DAYS[0] ?? 0)).toBe(true);
				});
			})
		);
	});
});

describe('practice', () => {
	const tasks: readonly TaskFacts[] = ['a', 'b', 'c', 'd'].flatMap((kind, k) =>
		DIFFICULTIES.map((difficulty, d) => {
			const cell = CELLS[k % 2] ?? '';
			const skills = SKILLS.slice(d, d + 2);
			return { id: `${kind}${d}`, kind, difficulty, cell, credits: [cell], skills };
		})
	);

	it('has no two neighbours of one kind, stays in focus and never repeats a seed', () => {
		fc.assert(
			fc.property(
				fc.array(fc.record({ right: fc.boolean(), aided: fc.boolean() }), { maxLength: 60 }),
				fc.subarray(CELLS.slice(0, 2), { minLength: 1 }),
				fc.integer({ min: 0, max: 2 ** 31 }),
				(answers, cells, seed) => {
					let known = NOTHING_KNOWN;
					let before: TaskFacts | undefined;
					const seeds = new Set<number>();
					answers.forEach(({ right, aided }, nth) => {
						const { task, seed: drawn } = nextTask(tasks, known, { cells }, { seed, nth });
						expect(cells).toContain(task.cell);
						expect(task.kind).not.toBe(before?.kind);
						seeds.add(drawn);
						before = task;
						const { id, kind, difficulty, cell, skills } = task;
						const credits = [{ cell, skills, right }];
						known = observe(known, { task: id, kind, difficulty, day: START, aided, credits });
					});
					expect(seeds.size).toBe(answers.length);
				}
			)
		);
	});
});
