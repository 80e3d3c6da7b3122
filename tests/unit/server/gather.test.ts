import { describe, expect, it } from 'vitest';
import { Gathering } from '#lib/server/db/gather.ts';

/** Does batches when it is told to, and notes them. */
function workshop() {
	const batches: number[][] = [];
	const gathering = new Gathering<number, string>(async (items) => {
		batches.push([...items]);
		await Promise.resolve();
		if (items.some((item) => item < 0)) throw new Error(`cannot do ${items.join(', ')}`);
		return items.map((item) => `done ${item}`);
	}, 3);
	return { gathering, batches };
}

describe('what is asked for at the same time', () => {
	it('is done together, at most so many at once, each with its own result', async () => {
		const { gathering, batches } = workshop();
		expect(await Promise.all([1, 2, 3, 4].map((item) => gathering.add(item)))).toEqual(['done 1', 'done 2', 'done 3', 'done 4']);
		expect(batches).toEqual([[1, 2, 3], [4]]);
	});

	it('goes with the next when it comes while others are being done', async () => {
		const { gathering, batches } = workshop();
		const late: Promise<string>[] = [];
		const first = gathering.add(1).then(() => late.push(gathering.add(3)));
		await Promise.all([first, gathering.add(2)]);
		expect(await Promise.all(late)).toEqual(['done 3']);
		expect(await gathering.add(4)).toBe('done 4');
		expect(batches).toEqual([[1, 2], [3], [4]]);
	});

	it('does not suffer from another that cannot be done', async () => {
		const { gathering } = workshop();
		const outcomes = await Promise.allSettled([1, -2, 3].map((item) => gathering.add(item)));
		expect(outcomes).toMatchObject([
			{ status: 'fulfilled', value: 'done 1' },
			{ status: 'rejected', reason: { message: 'cannot do -2' } },
			{ status: 'fulfilled', value: 'done 3' }
		]);
	});

	it('fails where no result is given for it', async () => {
		const gathering = new Gathering<number, string>(() => Promise.resolve([]), 3);
		await expect(gathering.add(1)).rejects.toThrow('No result was given');
	});
});
