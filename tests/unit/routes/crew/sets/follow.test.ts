/** Following the states of a set: how often is asked, and what is told of it. */
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { EVERY, follow, LONGEST_WAIT, waitAfter, type Liveness, type Look } from '../../../../../src/routes/crew/sets/[set]/follow.ts';

beforeEach(() => {
	vi.useFakeTimers();
});

afterEach(() => {
	vi.useRealTimers();
});

/** A server that answers in turn; the last answer is repeated. */
function following(answers: readonly Look<string>[], took = 0) {
	const asked: string[] = [];
	const told: (readonly [Liveness, string | undefined])[] = [];
	const look = (stamp: string): Promise<Look<string>> => {
		const found = answers[Math.min(asked.length, answers.length - 1)] ?? { kind: 'same' };
		asked.push(stamp);
		return took === 0 ? Promise.resolve(found) : new Promise((done) => setTimeout(() => done(found), took));
	};
	return { asked, told, following: follow(look, 'first', (liveness, news) => told.push([liveness, news])) };
}

test('asks once a second with the stamp of what is known, and tells only what is new', async () => {
	const news = { kind: 'news', news: 'seven', stamp: 'second' } as const;
	const { asked, told, following: one } = following([{ kind: 'same' }, news, { kind: 'same' }]);
	await vi.advanceTimersByTimeAsync(10 * EVERY);
	expect(asked).toEqual([]);
	one.resume();
	await vi.advanceTimersByTimeAsync(3 * EVERY + 10);
	expect(asked).toEqual(['first', 'first', 'second', 'second']);
	expect(told).toEqual([['live', undefined], ['live', 'seven']]);
});

test('counts the second from the question on, and still rests when answers are slow', async () => {
	const { asked, following: slow } = following([{ kind: 'same' }], 2 * EVERY);
	slow.resume();
	await vi.advanceTimersByTimeAsync(9 * EVERY + 10);
	// An answer takes two seconds, and a quarter of one lies between.
	expect(asked.length).toBe(5);
	const { asked: often, following: quick } = following([{ kind: 'same' }], EVERY / 2);
	quick.resume();
	await vi.advanceTimersByTimeAsync(9 * EVERY + 10);
	expect(often.length).toBe(10);
});

test('says that it is not live when asking fails, waits longer each time, and says when it is live again', async () => {
	const failed = { kind: 'failed' } as const;
	const { asked, told, following: one } = following([{ kind: 'same' }, failed, failed, failed, { kind: 'same' }]);
	one.resume();
	await vi.advanceTimersByTimeAsync(EVERY + 1);
	expect(told.at(-1)).toEqual(['failing', undefined]);
	await vi.advanceTimersByTimeAsync(waitAfter(1) + waitAfter(2) + 1);
	expect(asked.length).toBe(4);
	await vi.advanceTimersByTimeAsync(waitAfter(3) - 10);
	expect(asked.length).toBe(4);
	await vi.advanceTimersByTimeAsync(20);
	expect(told).toEqual([['live', undefined], ['failing', undefined], ['live', undefined]]);
	expect([waitAfter(1), waitAfter(2), waitAfter(20)]).toEqual([2 * EVERY, 4 * EVERY, LONGEST_WAIT]);
});

test('asks nothing while it is paused, and at once when it is looked at again', async () => {
	const { asked, told, following: one } = following([{ kind: 'news', news: 'late', stamp: 'second' }], 100);
	one.resume();
	one.pause();
	await vi.advanceTimersByTimeAsync(20 * EVERY);
	expect(asked).toEqual(['first']);
	expect(told).toEqual([]);
	one.resume();
	one.resume();
	await vi.advanceTimersByTimeAsync(100);
	// The answer to the first of the two is not told: one round of questions goes on.
	expect(told).toEqual([['live', 'late']]);
	await vi.advanceTimersByTimeAsync(EVERY);
	expect(asked.length).toBe(4);
});

test('stops for good when there is nothing to see any more', async () => {
	const { asked, told, following: one } = following([{ kind: 'over' }]);
	one.resume();
	await vi.advanceTimersByTimeAsync(5 * EVERY);
	one.resume();
	await vi.advanceTimersByTimeAsync(5 * EVERY);
	expect(asked).toEqual(['first']);
	expect(told).toEqual([['over', undefined]]);
});
