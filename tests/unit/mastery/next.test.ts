import { describe, expect, it } from 'vitest';
import {
	DIFFICULTIES,
	NOTHING_KNOWN,
	isReady,
	nextTask,
	observe,
	type Difficulty,
	type Mastery,
	type TaskFacts
} from '#lib/mastery/index.ts';
import { hashOf, seedOf } from '#lib/mastery/seed.ts';
import { CELL, after, tries } from '../../support/outcomes.ts';

// Source of the rules: learning-and-records.md 5 (interleaving), or common practice, no source.

function task(id: string, of: Partial<TaskFacts> = {}): TaskFacts {
	return { id, cell: CELL, credits: [CELL], skills: ['subtract-heights'], kind: id, difficulty: 'easy', ...of };
}

/** Four kinds at three difficulties each. */
const TASKS = ['roof', 'bridge', 'tank', 'mast'].flatMap((kind) =>
	DIFFICULTIES.map((difficulty) => task(`${kind}-${difficulty}`, { kind, difficulty, skills: [`at-${kind}`] }))
);
const FOCUS = { cells: [CELL] };

/** The task that comes, answered as told, and what is known then. */
function step(known: Mastery, right: boolean, nth: number, tasks = TASKS, seed = 7): { known: Mastery; task: TaskFacts } {
	const { task: chosen } = nextTask(tasks, known, FOCUS, { seed, nth });
	const { id, kind, difficulty, cell, skills } = chosen;
	const credits = [{ cell, skills, right }];
	return { known: observe(known, { task: id, kind, difficulty, day: '2026-03-02', aided: false, credits }), task: chosen };
}

function difficulties(answers: string, tasks = TASKS): readonly Difficulty[] {
	let known = NOTHING_KNOWN;
	return [...answers].map((answer, nth) => {
		const next = step(known, answer === '+', nth, tasks);
		known = next.known;
		return next.task.difficulty;
	});
}

describe('the next task', () => {
	it('climbs in difficulty, and goes down after a wrong answer', () => {
		expect(difficulties('+++')).toEqual(['easy', 'middle', 'hard']);
		expect(difficulties('----')).toEqual(['easy', 'easy', 'easy', 'easy']);
		expect(difficulties('++--+++')).toEqual(['easy', 'middle', 'hard', 'middle', 'easy', 'middle', 'hard']);
	});

	it('leaves the difficulty where two right answers were alike, so that the third can make ready', () => {
		expect(difficulties('+++-++')).toEqual(['easy', 'middle', 'hard', 'hard', 'middle', 'hard']);
		expect(difficulties('++++++')).toEqual(['easy', 'middle', 'hard', 'hard', 'middle', 'hard']);
	});

	it('makes ready by the third right answer in a row, whatever went before', () => {
		for (let before = 0; before < 2 ** 8; before += 1) {
			let known = NOTHING_KNOWN;
			let nth = 0;
			for (let bit = 0; bit < 8; bit += 1, nth += 1) known = step(known, ((before >> bit) & 1) === 1, nth).known;
			known = step(known, false, nth).known;
			for (let i = 1; i <= 3; i += 1) known = step(known, true, nth + i).known;
			expect(isReady(known, CELL)).toBe(true);
		}
	});

	it('makes ready with two difficulties too', () => {
		for (const left of [['easy', 'hard'], ['easy', 'middle'], ['middle', 'hard']]) {
			const tasks = TASKS.filter((one) => left.includes(one.difficulty));
			let known = NOTHING_KNOWN;
			for (let nth = 0; nth < 3; nth += 1) known = step(known, true, nth, tasks).known;
			expect(isReady(known, CELL)).toBe(true);
		}
	});

	it('is never of the kind before when there are two', () => {
		const two = TASKS.filter((one) => one.kind === 'roof' || one.kind === 'tank');
		for (const tasks of [TASKS, two]) {
			let known = NOTHING_KNOWN;
			let kind = '';
			for (let nth = 0; nth < 100; nth += 1) {
				const next = step(known, nth % 3 !== 0, nth, tasks);
				expect(next.task.kind).not.toBe(kind);
				kind = next.task.kind;
				known = next.known;
			}
		}
	});

	it('is another task when there is but one kind, and the same when there is but one task', () => {
		const one = [task('a', { kind: 'k' }), task('b', { kind: 'k' })];
		const known = step(NOTHING_KNOWN, true, 0, one);
		expect(nextTask(one, known.known, FOCUS, { seed: 7, nth: 1 }).task.id).not.toBe(known.task.id);
		const only = [task('a')];
		expect(nextTask(only, step(NOTHING_KNOWN, true, 0, only).known, FOCUS, { seed: 7, nth: 1 }).task.id).toBe('a');
	});

	it('goes to the weakest finer skill', () => {
		const tasks = [task('a'), task('b', { skills: ['subtract-heights', 'connector'] }), task('c')];
		const known = after([...tries('e', { task: 'x', kind: 'x' })]);
		// One is known well by now, the other not at all.
		for (let seed = 0; seed < 20; seed += 1) expect(nextTask(tasks, known, FOCUS, { seed, nth: 3 }).task.id).toBe('b');
	});

	it('differs from learner to learner where nothing tells tasks apart', () => {
		const first = Array.from({ length: 40 }, (_, seed) => nextTask(TASKS, NOTHING_KNOWN, FOCUS, { seed, nth: 0 }).task.kind);
		expect(new Set(first).size).toBe(4);
	});

	it('belongs to a cell in focus, or else credits one', () => {
		const tasks = [...TASKS, task('s', { cell: 'swing', credits: ['swing', 'force'] })];
		expect(nextTask(tasks, NOTHING_KNOWN, { cells: ['swing'] }, { seed: 1, nth: 0 }).task.id).toBe('s');
		expect(nextTask(tasks, NOTHING_KNOWN, { cells: ['force'] }, { seed: 1, nth: 0 }).task.id).toBe('s');
		expect(() => nextTask(tasks, NOTHING_KNOWN, { cells: ['label'] }, { seed: 1, nth: 0 })).toThrow('no task for label');
		expect(() => nextTask([], NOTHING_KNOWN, FOCUS, { seed: 1, nth: 0 })).toThrow(RangeError);
	});
});

describe('seeds', () => {
	it('are all different for a learner', () => {
		const seeds = new Set(Array.from({ length: 50_000 }, (_, nth) => seedOf(123, nth)));
		expect(seeds.size).toBe(50_000);
	});

	it('are hardly ever shared by two learners', () => {
		const seeds = new Set([1, 11, 111].flatMap((learner) => Array.from({ length: 200 }, (_, nth) => seedOf(learner, nth))));
		expect(seeds.size).toBe(600);
	});

	it('are spread over all that fits', () => {
		const seeds = Array.from({ length: 4000 }, (_, nth) => seedOf(5, nth));
		const quarters = [0, 0, 0, 0];
		for (const seed of seeds) {
			expect(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 30).toBe(true);
			const quarter = Math.floor(seed / 2 ** 28);
			quarters[quarter] = (quarters[quarter] ?? 0) + 1;
		}
		for (const count of quarters) expect(Math.abs(count - 1000)).toBeLessThan(120);
	});

	it('stay what they are, since stored problems hang on them', () => {
		expect([0, 1, 2].map((nth) => seedOf(7, nth))).toEqual([347_971_571, 843_647_271, 146_977_752]);
	});

	it('keep parts apart', () => {
		expect(hashOf(['a', 1, 2])).not.toBe(hashOf(['a', 12]));
		expect(hashOf(['a', 11, 1])).not.toBe(hashOf(['a', 1, 11]));
	});
});
