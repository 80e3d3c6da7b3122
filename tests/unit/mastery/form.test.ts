import { describe, expect, it } from 'vitest';
import { BAND, fillSlots, firstPage, hardnessOf, itemKey, passRule, tasksFor, type CheckTask, type FormOptions, type Slot } from '#lib/mastery/index.ts';

function task(id: string, change: Partial<CheckTask> = {}): CheckTask {
	return { id, cell: 'free-fall', difficulty: 'middle', hardness: 0.5, source: id, ...change };
}

function slot(change: Partial<Slot> = {}): Slot {
	return { cell: 'free-fall', difficulty: 'middle', from: 'blueprint', ...change };
}

const CELLS = ['stages', 'label-and-mass', 'free-fall', 'required-clearance', 'available-and-verdict', 'force-and-limits', 'swing-and-path', 'decisions'];
const TASKS: readonly CheckTask[] = CELLS.flatMap((cell) => [
	task(`${cell}-1`, { cell, ...(cell === 'decisions' ? { failsShare: 0.5 } : {}) }),
	task(`${cell}-2`, { cell, source: 'shared', ...(cell === 'decisions' ? { failsShare: 0.5 } : {}) }),
	task(`${cell}-3`, { cell, difficulty: 'hard', hardness: 1, source: 'shared', ...(cell === 'decisions' ? { failsShare: 0.5 } : {}) })
]);

function options(change: Partial<FormOptions> = {}): FormOptions {
	return { seed: 'a', asked: [], used: new Set(), fits: () => true, ...change };
}

function page(seed: string): readonly Slot[] {
	const rule = passRule('staged');
	if (rule === undefined) throw new Error(`no default rule for ${seed}`);
	return firstPage(rule);
}

describe('hardness', () => {
	it('grows with every driver', () => {
		const base = { steps: 3, decoys: 1, unitChange: false, signChange: false };
		for (const more of [{ steps: 4 }, { decoys: 2 }, { unitChange: true }, { signChange: true }]) {
			expect(hardnessOf({ ...base, ...more })).toBeGreaterThan(hardnessOf(base));
		}
	});
});

describe('tasks for a place', () => {
	it('are of its cell and difficulty', () => {
		expect(tasksFor(slot(), TASKS).map((one) => one.id)).toEqual(['free-fall-1', 'free-fall-2']);
		expect(tasksFor(slot({ difficulty: 'hard' }), TASKS).map((one) => one.id)).toEqual(['free-fall-3']);
	});

	it('are of the nearest difficulty where the cell has none of it, the harder of two', () => {
		const some = [task('low', { difficulty: 'easy' }), task('high', { difficulty: 'hard' })];
		expect(tasksFor(slot(), some).map((one) => one.id)).toEqual(['high']);
		expect(tasksFor(slot({ difficulty: 'easy' }), [task('mid'), task('high', { difficulty: 'hard' })]).map((one) => one.id)).toEqual(['mid']);
	});

	// learning-and-records.md 6.4: at most .3 logit inside one cell.
	it('lie within one band of hardness, the one that holds most', () => {
		const spread = [0.1, 0.6, 0.8, 0.9, 1.3].map((hardness) => task(`h${hardness}`, { hardness }));
		expect(BAND).toBe(0.3);
		expect(tasksFor(slot(), spread).map((one) => one.hardness)).toEqual([0.6, 0.8, 0.9]);
	});

	it('decide on a plan where the place wants one that fails or passes', () => {
		const some = [task('number'), task('never', { failsShare: 0 }), task('always', { failsShare: 1 }), task('both', { failsShare: 0.5 })];
		expect(tasksFor(slot({ fails: true }), some).map((one) => one.id)).toEqual(['always', 'both']);
		expect(tasksFor(slot({ fails: false }), some).map((one) => one.id)).toEqual(['never', 'both']);
	});
});

describe('a filled page', () => {
	it('is the same for the same seed, and another for another', () => {
		const one = fillSlots(page('a'), TASKS, options());
		expect(fillSlots(page('a'), TASKS, options())).toEqual(one);
		expect(fillSlots(page('b'), TASKS, options({ seed: 'b' })).map(itemKey)).not.toEqual(one.map(itemKey));
	});

	it('fills every place once, neighbours of different cells, no item twice', () => {
		for (let i = 0; i < 200; i += 1) {
			const items = fillSlots(page('n'), TASKS, options({ seed: `form ${i}` }));
			expect(items.map((item) => JSON.stringify(item.slot)).sort()).toEqual(page('n').map((one) => JSON.stringify(one)).sort());
			expect(new Set(items.map(itemKey)).size).toBe(items.length);
			items.forEach((item, k) => {
				expect(item.task.cell).toBe(item.slot.cell);
				if (k > 0) expect(item.slot.cell).not.toBe(items[k - 1]?.slot.cell);
			});
		}
	});

	it('asks each task of a place before one comes again', () => {
		const items = fillSlots([slot(), slot(), slot(), slot()], TASKS, options());
		expect(items.map((item) => item.task.id).sort()).toEqual(['free-fall-1', 'free-fall-1', 'free-fall-2', 'free-fall-2']);
	});

	it('asks nothing that an earlier try asked, and nothing that does not fit', () => {
		const first = fillSlots(page('a'), TASKS, options());
		const used = new Set(first.map(itemKey));
		const second = fillSlots(page('a'), TASKS, options({ used }));
		expect(second.some((item) => used.has(itemKey(item)))).toBe(false);
		const even = fillSlots(page('a'), TASKS, options({ fits: (item) => item.seed % 2 === 0 }));
		expect(even.every((item) => item.seed % 2 === 0)).toBe(true);
	});

	it('goes on from earlier pages with items of its own', () => {
		const first = fillSlots(page('a'), TASKS, options());
		const next = fillSlots(page('a'), TASKS, options({ asked: first }));
		const keys = new Set(first.map(itemKey));
		expect(next.some((item) => keys.has(itemKey(item)))).toBe(false);
	});

	it('tells whoever draws what came before in the form', () => {
		const seen: number[] = [];
		fillSlots([slot(), slot(), slot()], TASKS, options({ fits: (_, before) => seen.push(before.length) > 0 }));
		expect(seen).toEqual([0, 1, 2]);
	});

	it('takes another task when one never fits, and says so when none does', () => {
		const [item] = fillSlots([slot()], TASKS, options({ fits: (one) => one.task.id === 'free-fall-2' }));
		expect(item?.task.id).toBe('free-fall-2');
		expect(() => fillSlots([slot({ cell: 'decisions', fails: true })], TASKS, options({ fits: () => false }))).toThrow(
			'no task of the cell "decisions" on a plan that fails fits'
		);
		expect(() => fillSlots([slot({ cell: 'elsewhere' })], TASKS, options())).toThrow('"elsewhere"');
	});
});
