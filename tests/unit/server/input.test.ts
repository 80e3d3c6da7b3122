import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { LONGEST_BODY, readJson } from '#lib/server/input.ts';
import { problemsOf } from '#lib/server/problems.ts';

const schema = z.strictObject({
	seed: z.int().min(0),
	units: z.enum(['metric', 'us']),
	answers: z.record(z.string(), z.strictObject({ typed: z.string().max(64) }))
});

const GOOD = { seed: 7, units: 'metric', answers: { 'free-fall': { typed: '1.40 m' } } };

function request(body: BodyInit, headers: Record<string, string> = {}): Request {
	return new Request('http://localhost/', {
		method: 'POST',
		body,
		headers: { 'content-type': 'application/json', ...headers },
		...(body instanceof ReadableStream && { duplex: 'half' })
	});
}

const read = (value: unknown) => readJson(request(JSON.stringify(value)), schema);

describe('what a client sends', () => {
	it('is read when it fits', async () => {
		expect(await read(GOOD)).toEqual({ kind: 'read', value: GOOD });
	});

	it.each([
		[{ ...GOOD, seed: undefined }, 'seed', 'is missing', 'give a number'],
		[{ ...GOOD, seed: '7' }, 'seed', 'is "7"', 'give a number'],
		[{ ...GOOD, seed: -1 }, 'seed', 'is -1', 'give at least 0'],
		[{ ...GOOD, seed: null }, 'seed', 'is null', 'give a number'],
		[{ ...GOOD, seed: 0.5 }, 'seed', 'is 0.5', 'give a whole number'],
		[{ ...GOOD, units: 'yards' }, 'units', 'is "yards"', 'give one of "metric", "us"'],
		[{ ...GOOD, grade: 'right' }, 'grade', 'is not known here', 'leave it out'],
		[{ ...GOOD, answers: { a: { typed: 1 } } }, 'answers.a.typed', 'is 1', 'give a text'],
		[{ ...GOOD, answers: { a: { typed: '1', x: 1 } } }, 'answers.a.x', 'is not known here', 'leave it out'],
		[[], 'body', 'is an empty list', 'give an object'],
		[null, 'body', 'is null', 'give an object']
	])('%j is refused by field, fault and remedy', async (value, field, problem, remedy) => {
		const result = await read(value);
		expect(result).toMatchObject({ kind: 'refused', status: 400 });
		if (result.kind !== 'refused') throw new Error('It was read');
		expect(result.problems).toEqual([{ field, problem, remedy }]);
	});

	it('is told what is wrong with the form that it comes nearest to, where several are allowed', () => {
		const either = z.union([
			z.strictObject({ kind: z.literal('number'), typed: z.string().max(5) }),
			z.strictObject({ kind: z.literal('decision'), tieOff: z.boolean() })
		]);
		const input = { answer: { kind: 'number', typed: '1234567' } };
		const { error } = z.strictObject({ answer: either }).safeParse(input);
		expect(problemsOf(error?.issues ?? [], input)).toEqual([
			{ field: 'answer.typed', problem: 'is "1234567"', remedy: 'give at most 5 characters' }
		]);
	});

	it('is told every fault at once', async () => {
		const result = await read({ seed: 0.5, units: 1, answers: 2, more: 3 });
		expect(result.kind === 'refused' && result.problems.map((problem) => problem.field).sort()).toEqual([
			'answers',
			'more',
			'seed',
			'units'
		]);
	});

	it('does not get back a long wrong value at full length', async () => {
		const result = await read({ ...GOOD, units: 'x'.repeat(10_000), ['k'.repeat(10_000)]: 1 });
		expect(JSON.stringify(result).length).toBeLessThan(600);
	});

	it.each(['{', '', 'NaN', '{"seed":1,}'])('%j is refused as no JSON', async (body) => {
		expect(await readJson(request(body), schema)).toMatchObject({
			kind: 'refused',
			status: 400,
			problems: [{ field: 'body', problem: 'is not JSON' }]
		});
	});

	it('is refused when it is no UTF-8', async () => {
		const result = await readJson(request(new Uint8Array([0x22, 0xff, 0x22])), schema);
		expect(result).toMatchObject({ kind: 'refused', status: 400 });
	});

	it.each(['text/plain', 'application/x-www-form-urlencoded', 'application/jsonp'])(
		'is refused as %s',
		async (type) => {
			const result = await readJson(request(JSON.stringify(GOOD), { 'content-type': type }), schema);
			expect(result).toMatchObject({ kind: 'refused', status: 415 });
		}
	);

	it('is refused when it says that it is too long', async () => {
		const result = await readJson(request('{}', { 'content-length': String(LONGEST_BODY + 1) }), schema);
		expect(result).toMatchObject({ kind: 'refused', status: 413 });
	});

	it('is refused when it is too long without saying so, and is not read to its end', async () => {
		let given = 0;
		const endless = new ReadableStream({
			pull(controller) {
				given += 1;
				controller.enqueue(new Uint8Array(1024));
			}
		});
		const result = await readJson(request(endless), schema);
		expect(result).toMatchObject({ kind: 'refused', status: 413 });
		expect(given).toBeLessThan(70);
	});
});
