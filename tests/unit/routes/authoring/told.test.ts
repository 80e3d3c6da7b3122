/** Findings as an author reads them: every one has words, a field with a name, and nothing unfilled. */
import { beforeAll, describe, expect, test } from 'vitest';
import { inspect, type InspectFinding } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { messages, staffMessages, type Messages, type StaffMessages } from '#lib/text/index.ts';
import { MUTATIONS, mutated } from '../../scenario/mutations.ts';
import { shippedDocument } from '../../../support/shipped-documents.ts';
import { isBelow, type Json } from '../../../../src/routes/crew/scenarios/[scenario]/model/document.ts';
import { schemaProblems } from '../../../../src/routes/crew/scenarios/[scenario]/model/schema-problems.ts';
import { shareText, toldFindings, toldRefusal } from '../../../../src/routes/crew/scenarios/[scenario]/model/told.ts';

const DRAWS = 8;
const all: Record<'en' | 'es', Messages & StaffMessages> = {} as Record<'en' | 'es', Messages & StaffMessages>;

beforeAll(async () => {
	for (const language of ['en', 'es'] as const) all[language] = { ...(await messages(language)), ...(await staffMessages(language)) };
});

describe('what inspecting finds in a scenario in which', () => {
	test.each(MUTATIONS.map((one) => [one.name, one] as const))('%s is told in words', (_, mutation) => {
		const document = mutated(shippedDocument(mutation.of), mutation) as Json;
		const { findings } = inspect(scenarioSchema.parse(document), { draws: DRAWS });
		expect(findings.length).toBeGreaterThan(0);
		for (const language of ['en', 'es'] as const) {
			const told = toldFindings({ document, m: all[language], language }, [], findings);
			for (const one of told) {
				expect(`${one.what} ${one.fix} ${one.place}`, one.key).not.toMatch(/undefined|null|NaN|\[object|:\s*\.|\.\./);
				expect(one.place, one.key).not.toBe('');
			}
		}
	});
});

const FINDING: InspectFinding = { code: 'lopsided', severity: 'warning', path: ['aims'], detail: { passing: 0.9 } };

describe('findings', () => {
	const document = shippedDocument('bridge-bearing');

	test('stand in order of their weight, each once, with what does not fit among the faults', () => {
		const naming = { document, m: all.en, language: 'en' as const };
		const note: InspectFinding = { code: 'slip-without-effect', severity: 'note', path: ['asks'], detail: { which: 'elongation-left-out' } };
		const problem = { kind: 'missing' as const, path: ['words', 'es', 'title'], message: 'x' };
		const told = toldFindings(naming, [problem], [note, FINDING, FINDING]);
		expect(told.map((one) => one.severity)).toEqual(['fault', 'warning', 'note']);
		expect(told[0]).toMatchObject({ what: 'Something is missing here.', place: 'the title, Spanish' });
		expect(told[1]).toMatchObject({ what: 'In 90\u00a0% of the draws the plan passes. So the decision can be guessed.', path: ['aims'] });
		expect(told[2]?.what).toBe('This slip never changes the number: Elongation left out.');
	});

	test('on a rule call it as the form does, and an amount that cannot be read by its name', () => {
		const rules = { ...(document as Readonly<Record<string, Json>>), constraints: [{ of: 'freeFall', atLeast: 'lots', atMost: { value: 2, unit: 'm' } }] };
		const parsed = scenarioSchema.safeParse(rules);
		const problems = schemaProblems(parsed.error?.issues ?? [], rules);
		const told = toldFindings({ document: rules, m: all.en, language: 'en' }, problems, [{ ...FINDING, path: ['constraints', 0] }]);
		expect(told.map(({ place, what }) => [place, what])).toEqual([
			['The free fall is at least', 'The amount cannot be read.'],
			['The free fall is at least; The free fall is at most', expect.stringContaining('the plan passes')]
		]);
	});

	test('of the server lead to their field too', () => {
		const told = toldRefusal({ document, m: all.en, language: 'en' }, { field: 'draws.0.to', problem: 'is 1', remedy: 'give more' });
		expect(told.what).toContain('is 1; give more');
		expect(isBelow(told.path, ['draws', 0])).toBe(true);
		expect(toldRefusal({ document, m: all.en, language: 'en' }, { field: 'document', problem: 'is empty', remedy: 'fill it' }).path).toEqual([]);
	});

	test('write a small share as more than none', () => {
		expect(shareText(0.002)).toBe('< 1\u00a0%');
		expect(shareText(0)).toBe('0\u00a0%');
		expect(shareText(1 / 3)).toBe('33\u00a0%');
	});
});
