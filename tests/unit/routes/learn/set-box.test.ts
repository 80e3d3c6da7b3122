import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { posted, setBox } from '../../../../src/routes/learn/set/box.ts';
import type { Reply } from '../../../../src/routes/learn/set/send.ts';

const ASSIGNMENT = '00000000-0000-4000-8000-00000000000a';
const BODY = { scenario: 'bridge-bearing', seed: 7 };

/** What was sent: for whom, and the body. */
interface Sent {
	readonly person: string | undefined;
	readonly body: Readonly<Record<string, unknown>>;
}

let sent: Sent[];
let replies: (() => Response)[];
let store: Map<string, string>;
let full: boolean;

beforeEach(() => {
	[sent, replies, store, full] = [[], [], new Map(), false];
	vi.stubGlobal('localStorage', {
		getItem: (key: string) => store.get(key) ?? null,
		setItem: (key: string, text: string) => {
			if (full) throw new Error('no room');
			store.set(key, text);
		}
	});
	vi.stubGlobal('fetch', (_: string, { headers, body }: { headers: Record<string, string>; body: string }) => {
		sent.push({ person: headers['underfoot-person'], body: JSON.parse(body) as Sent['body'] });
		const reply = replies.shift();
		return reply === undefined ? Promise.reject(new TypeError('no signal')) : Promise.resolve(reply());
	});
});

afterEach(() => {
	vi.unstubAllGlobals();
});

const stored = (counts?: boolean) => (): Response => Response.json({ attempt: 'a', grades: {}, ...(counts === undefined ? {} : { counts }) }, { status: 201 });
const refusedFor = (status: number, field: string) => (): Response => Response.json({ error: [{ field, problem: 'is wrong', remedy: 'mend it' }] }, { status });

async function told(person = 'ada'): Promise<readonly (readonly [string, Reply['kind'], boolean?])[]> {
	const heard: (readonly [string, Reply['kind'], boolean?])[] = [];
	await setBox(person).flush((id, reply) => heard.push(reply.kind === 'stored' ? [id, reply.kind, reply.counts] : [id, reply.kind]));
	return heard;
}

function put(id: string, place: number, person = 'ada'): void {
	setBox(person).put(posted(id, ASSIGNMENT, { place, right: true, critical: 0 }, BODY));
}

describe('the box of answers to sets', () => {
	it('keeps each person’s own, through a reload, until the server has them', async () => {
		put('a0', 0);
		put('b0', 0, 'bo');
		expect(setBox('ada').answers()).toEqual([{ id: 'a0', assignment: ASSIGNMENT, place: 0, right: true, critical: 0 }]);
		expect(await told()).toEqual([['a0', 'later']]);
		replies = [stored(true)];
		expect(await told()).toEqual([['a0', 'stored', true]]);
		expect(sent.map((one) => one.person)).toEqual(['ada', 'ada']);
		expect(sent[1]?.body).toEqual({ ...BODY, id: 'a0', set: { assignment: ASSIGNMENT, place: 0 } });
		expect([setBox('ada').waiting(), setBox('bo').waiting()]).toEqual([0, 1]);
	});

	it('sends an answer that its set does not take once more, as practice', async () => {
		put('a1', 1);
		replies = [refusedFor(409, 'set.place'), stored()];
		expect(await told()).toEqual([['a1', 'stored', false]]);
		expect(sent.map((one) => 'set' in one.body)).toEqual([true, false]);
		expect(setBox('ada').waiting()).toBe(0);
	});

	it('lets go of what the server will never take', async () => {
		put('a1', 1);
		replies = [refusedFor(409, 'seed')];
		expect(await told()).toEqual([['a1', 'refused']]);
		expect([sent.length, setBox('ada').waiting()]).toEqual([1, 0]);
	});

	it.each([
		[401, 'signed-out'],
		[429, 'later'],
		[503, 'later']
	])('keeps an answer that is told %i', async (status, kind) => {
		put('a2', 2);
		replies = [refusedFor(status, 'session')];
		expect(await told()).toEqual([['a2', kind]]);
		expect(setBox('ada').waiting()).toBe(1);
	});

	it('still sends from the page what a full device does not keep, and says so', async () => {
		full = true;
		let said = false;
		const box = setBox('ada', () => (said = true));
		box.put(posted('a3', ASSIGNMENT, { place: 3, right: false, critical: 1 }, BODY));
		expect([said, box.waiting()]).toEqual([true, 1]);
		replies = [stored(true)];
		await box.flush(() => undefined);
		expect([sent.length, box.waiting()]).toEqual([1, 0]);
	});

	it('leaves out what is broken', () => {
		store.set('underfoot.set.box.ada', JSON.stringify([{ id: 'x', body: { record: { assignment: ASSIGNMENT, place: -1, critical: 0 } } }, 7, { id: 'y', body: {} }]));
		expect(setBox('ada').answers()).toEqual([]);
		store.set('underfoot.set.box.ada', '[half');
		expect(setBox('ada').answers()).toEqual([]);
	});
});
