import { describe, expect, test } from 'vitest';
import { LANGUAGES, messages, staffMessages } from '#lib/text/index.ts';
import { FULL_SCENARIO } from '../../../support/documents.ts';
import { mutationsOf } from '../../../support/mutations.ts';
import { shippedDocument } from '../../../support/shipped-documents.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { DRAWS, inspector } from '../../../../src/routes/crew/scenarios/[scenario]/model/inspecting.ts';
import type { Answered } from '../../../../src/routes/crew/scenarios/[scenario]/model/inspect-messages.ts';
import { put, type Json } from '../../../../src/routes/crew/scenarios/[scenario]/model/document.ts';
import { schemaProblems } from '../../../../src/routes/crew/scenarios/[scenario]/model/schema-problems.ts';
import { toldFindings } from '../../../../src/routes/crew/scenarios/[scenario]/model/told.ts';

/** A place whose clock goes on by a step each time it is looked at, and whose pauses do what a test wants. */
function place(step: number, onPause: (pauses: number) => void = () => undefined) {
	const answers: Answered[] = [];
	let time = 0;
	let pauses = 0;
	const take = inspector({
		post: (answer) => answers.push(structuredClone(answer)),
		pause: () => {
			pauses += 1;
			onPause(pauses);
			return Promise.resolve();
		},
		now: () => (time += step)
	});
	return { answers, take };
}

const SOUND = shippedDocument('deck-stripping');

describe('inspecting', () => {
	test('answers with the scenario, an example and the inspection, all of it plain data', async () => {
		const { answers, take } = place(0);
		await take({ kind: 'document', run: 1, document: SOUND, seed: 3 });
		expect(answers.map((one) => one.kind)).toEqual(['fits', 'example', 'inspected']);
		const [, example, inspected] = answers;
		expect(example).toMatchObject({ run: 1, seed: 3, problem: { drawn: { person: expect.any(String) } } });
		expect(inspected).toMatchObject({ inspection: { draws: DRAWS, drawn: DRAWS } });
	});

	test('tells how far it is while it takes long', async () => {
		const { answers, take } = place(50);
		await take({ kind: 'document', run: 1, document: SOUND, seed: 1 });
		const done = answers.flatMap((one) => (one.kind === 'progress' ? [one.done] : []));
		expect(done.length).toBeGreaterThan(3);
		expect(done).toEqual(done.toSorted((a, b) => a - b));
		expect(answers.at(-1)).toMatchObject({ kind: 'inspected', inspection: { draws: DRAWS } });
	});

	test('gives an older document up when a newer one comes', async () => {
		const newer: Promise<void>[] = [];
		const { answers, take } = place(50, (pauses) => {
			if (pauses === 3) newer.push(take({ kind: 'document', run: 2, document: put(SOUND, ['difficulty'], 'hard'), seed: 1 }));
		});
		await take({ kind: 'document', run: 1, document: SOUND, seed: 1 });
		await Promise.all(newer);
		expect(answers.filter((one) => one.run === 1).map((one) => one.kind)).not.toContain('inspected');
		expect(answers.filter((one) => one.run === 2).at(-1)?.kind).toBe('inspected');
	});

	test('tells what does not fit, and draws no example of it', async () => {
		const { answers, take } = place(0);
		await take({ kind: 'document', run: 1, document: put(SOUND, ['base', 'lanyard', 'length'], '2'), seed: 1 });
		await take({ kind: 'example', run: 1, seed: 2 });
		expect(answers).toEqual([{ kind: 'problems', run: 1, problems: [{ kind: 'no-unit', path: ['base', 'lanyard', 'length'], message: expect.any(String) }] }]);
	});

	test('draws further examples of the document at hand', async () => {
		const { answers, take } = place(0);
		await take({ kind: 'document', run: 1, document: SOUND, seed: 1 });
		await take({ kind: 'example', run: 1, seed: 2 });
		expect(answers.at(-1)).toMatchObject({ kind: 'example', seed: 2, problem: { seed: 2 } });
	});
});

describe('what does not fit', () => {
	const told = [...mutationsOf(FULL_SCENARIO)].flatMap(({ document, path, how }) => {
		const parsed = scenarioSchema.safeParse(document);
		return parsed.success ? [] : [{ document: document as Json, path, how, problems: schemaProblems(parsed.error.issues, document as Json) }];
	});

	test('is told by a kind, whatever is wrong with whichever field', () => {
		expect(told.length).toBeGreaterThan(500);
		const without = told.filter(({ problems }) => problems.length === 0 || problems.some((one) => one.kind === 'other'));
		expect(without.map(({ path, how, problems }) => `${path.join('.').slice(0, 60)} ${how}: ${problems.map((one) => one.message).join(' | ').slice(0, 200)}`)).toEqual([]);
	});

	test.each(LANGUAGES)('has words for every kind in %s', async (language) => {
		const m = { ...(await messages(language)), ...(await staffMessages(language)) };
		const kinds = new Map(told.flatMap(({ document, problems }) => problems.map((one) => [one.kind, { document, problem: one }] as const)));
		expect(kinds.size).toBeGreaterThan(20);
		for (const [kind, { document, problem }] of kinds) {
			expect(m.authoring.problems, kind).toHaveProperty(kind);
			const [finding] = toldFindings({ document, m, language }, [problem], []);
			expect(finding?.what, kind).not.toMatch(/undefined|\[object|^$/);
			expect(finding?.place, kind).not.toBe('');
		}
	});
});
