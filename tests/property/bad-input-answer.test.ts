/** Nothing that is wrong with a posted answer is passed over: 4xx, the field by its name, nothing stored. */
import { randomUUID } from 'node:crypto';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { receiveAnswers, type Receipt } from '#lib/server/attempts/receive.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { LONGEST_BODY, readBody } from '#lib/server/input.ts';
import { shippedVersions } from '#lib/server/index.ts';
import { answered, problemOf, type SentBody } from '../support/answered.ts';
import { fieldOf, MEGABYTE, mutationsOf, withValue } from '../support/mutations.ts';

const NOW = new Date('2026-11-25T09:00:00.000Z');

describe('a posted answer', () => {
	let db: Database;
	beforeAll(async () => {
		db = await openDatabase('file::memory:');
	});
	afterAll(() => db.destroy());

	const nobody = { cookies: { get: () => undefined, set: () => undefined }, secure: true, answerer: null };

	/** Posts what must be refused; whatever comes, nothing may be stored. */
	async function refused(body: unknown, what: string): Promise<Extract<Receipt, { kind: 'refused' }>> {
		const receipt = await receiveAnswers(db, nobody, body, shippedVersions, NOW);
		if (receipt.kind !== 'refused') throw new Error(`stored: ${what}`);
		expect(receipt.status, what).toBeGreaterThanOrEqual(400);
		expect(receipt.status, what).toBeLessThan(500);
		for (const problem of receipt.problems) {
			expect(problem.problem.length, what).toBeGreaterThan(3);
			expect(problem.remedy.length, what).toBeGreaterThan(3);
			expect(JSON.stringify(problem).length, what).toBeLessThan(600);
			expect(JSON.stringify(problem), what).not.toMatch(/Invalid|undefined|\[object|Error|\.ts:/);
		}
		return receipt;
	}

	async function isEmpty(): Promise<boolean> {
		const attempts = await db.selectFrom('attempt').select('id').execute();
		const guests = await db.selectFrom('guest').select('id').execute();
		return attempts.length === 0 && guests.length === 0;
	}

	it('is refused for every wrong field of every shipped scenario, by its name, and leaves nothing behind', async () => {
		let seen = 0;
		for (const scenario of shippedScenarios()) {
			const body = answered(problemOf(scenario.id, 5));
			for (const mutation of mutationsOf(body)) {
				const field = mutation.path.length === 0 ? 'body' : fieldOf(mutation.path);
				const what = `${scenario.id} ${field}: ${mutation.how}`;
				const { problems } = await refused(mutation.document, what);
				const named = problems.map((problem) => problem.field);
				// An answer that has lost the kind it is told by is at fault itself.
				expect(named, what).toContain(field);
				seen += 1;
			}
		}
		expect(seen).toBeGreaterThan(1000);
		expect(await isEmpty()).toBe(true);
	});

	it.each<[string, Partial<Record<keyof SentBody, unknown>>]>([
		['id', { id: randomUUID().toUpperCase() }],
		['id', { id: 'not-a-uuid' }],
		['id', { id: `${randomUUID()} ` }],
		['scenario', { scenario: '' }],
		['scenario', { scenario: 'constructor' }],
		['scenario', { scenario: '../../etc/passwd' }],
		['version', { version: 0 }],
		['version', { version: 1.5 }],
		['version', { version: -1 }],
		['drawVersion', { drawVersion: 0 }],
		['slipSetVersion', { slipSetVersion: -1 }],
		['seed', { seed: -1 }],
		['seed', { seed: 0.5 }],
		['seed', { seed: 2 ** 53 }],
		['acceptedTry', { acceptedTry: -1 }],
		['acceptedTry', { acceptedTry: 1e9 }],
		['language', { language: 'fr' }],
		['answers', { answers: [] }],
		['answers.decision.decision', { answers: { ...answered(problemOf('bridge-bearing', 5)).answers, decision: { kind: 'decision', decision: 'maybe' } } }],
		['answers.decision.kind', { answers: { ...answered(problemOf('bridge-bearing', 5)).answers, decision: { kind: 'number', text: '1.4 m' } } }],
		['answers.free-fall.kind', { answers: { ...answered(problemOf('bridge-bearing', 5)).answers, 'free-fall': { kind: 'decision', decision: 'tie-off' } } }],
		['answers.__proto__', { answers: JSON.parse('{"__proto__":{"kind":"not-stated"}}') }]
	])('names %s where it is absurd', async (field, change) => {
		const body = { ...answered(problemOf('bridge-bearing', 5)), ...change };
		const { problems } = await refused(body, field);
		expect(problems.map((problem) => problem.field)).toContain(field);
		expect(await isEmpty()).toBe(true);
	});

	it.each(['', ' ', 'NaN', 'Infinity', '1e999 m', '1.4 kg', '2 cubits', '1,234', '1.2 + 0.2', 'DROP TABLE attempt', '\u0000', '😀'])(
		'with the entry %j is asked for again, not marked wrong',
		async (text) => {
			const body = withValue(answered(problemOf('bridge-bearing', 5)), ['answers', 'free-fall', 'text'], text);
			const receipt = await refused(body, text);
			expect(receipt).toMatchObject({ status: 422, problems: [{ field: 'answers.free-fall' }] });
			expect(await isEmpty()).toBe(true);
		}
	);

	it('with thousands of wrong fields is told the first of them', async () => {
		const many = Object.fromEntries(Array.from({ length: 5000 }, (_, i) => [`ask-${i}`, { kind: 'number', text: 1 }]));
		const { problems } = await refused({ ...answered(problemOf('bridge-bearing', 5)), answers: many }, 'many');
		expect(problems.length).toBeLessThanOrEqual(20);
	});

	it.each([
		['a megabyte of text', MEGABYTE, 413],
		['text that is not JSON', '{"id":', 400],
		['NaN', '{"seed":NaN}', 400],
		['nothing', '', 400]
	])('whose body is %s is not read further', async (_, text, status) => {
		const request = new Request('http://127.0.0.1/', { method: 'POST', body: text, headers: { 'content-type': 'application/json' } });
		expect(await readBody(request)).toMatchObject({ kind: 'refused', status, problems: [{ field: 'body' }] });
		expect(LONGEST_BODY).toBeLessThan(MEGABYTE.length);
	});
});
