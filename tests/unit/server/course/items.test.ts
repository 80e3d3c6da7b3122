import { describe, expect, it } from 'vitest';
import { PASS_RULES, firstPage } from '#lib/mastery/index.ts';
import { findTask, scenarioOf } from '#lib/server/course/book.ts';
import { drawItem, pageItems } from '#lib/server/course/items.ts';

/** Rules of this program; common practice, no source. */
describe('the items of a check', () => {
	const [rule] = PASS_RULES;
	const items = rule === undefined ? [] : pageItems(firstPage(rule), '0123456789abcdef0123456789abcdef', [], []);
	const sites = items.filter(({ task }) => findTask(task)?.kind === 'site');

	it('keep the version of the scenario that they are drawn from; pictures have none', () => {
		expect(sites.length).toBeGreaterThan(0);
		for (const item of items) {
			const task = findTask(item.task);
			expect(item.version).toBe(task?.kind === 'site' ? scenarioOf(task).version : undefined);
		}
	});

	it('are drawn from that version; one from before, without a version, from the first', () => {
		for (const item of sites) {
			const { version, ...before } = item;
			const drawn = drawItem(item);
			expect(drawn.kind === 'site' ? drawn.problem.scenario.version : undefined).toBe(version);
			expect(drawItem(before)).toEqual({ ...drawItem({ ...before, version: 1 }), item: before });
			expect(() => drawItem({ ...before, version: 1000 })).toThrow(RangeError);
		}
	});
});
