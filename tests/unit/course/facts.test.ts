import { describe, expect, test } from 'vitest';
import { FACTS, LESSONS, factOf, lessonFacts, lessonOf, type FactId, type LessonFact } from '#lib/course/index.ts';
import { PRACTICE_TABLES, RULE_TABLES, practiceTable, ruleTable, type PracticeTable, type RuleTable } from '#lib/rules/index.ts';
import { LANGUAGES, factWords, messages } from '#lib/text/index.ts';

const IDS = Object.keys(FACTS) as FactId[];

function rules(id: string): RuleTable {
	const found = ruleTable(id);
	if (found === undefined) throw new RangeError(`no rule table ${id}`);
	return found;
}

function practice(id: string): PracticeTable {
	const found = practiceTable(id);
	if (found === undefined) throw new RangeError(`no practice table ${id}`);
	return found;
}

/** What a table prints of a fact, or its kind where it prints nothing. */
function printed(id: FactId, table: string, of = 'europe'): string {
	const fact = factOf(id, rules(table), practice(of));
	return fact.kind === 'number' ? fact.printed : fact.kind;
}

const everywhere: readonly (readonly [rules: RuleTable, practice: PracticeTable])[] = RULE_TABLES.flatMap((table) =>
	PRACTICE_TABLES.map((one) => [table, one] as const)
);

describe('facts of the lessons', () => {
	test('every fact belongs to a lesson, and every lesson has some', () => {
		const used = new Set<string>(LESSONS.flatMap((lesson) => lesson.facts));
		expect(IDS.filter((id) => !used.has(id))).toEqual([]);
		expect(LESSONS.filter((lesson) => lesson.facts.length === 0)).toEqual([]);
	});

	test('every rule and practice table resolves every lesson: a number with its clause and mark, a demand, or none', () => {
		for (const [table, one] of everywhere) {
			for (const lesson of LESSONS) {
				const facts = lessonFacts(lesson, table, one);
				expect(facts.map((fact) => fact.id)).toEqual([...lesson.facts]);
				for (const fact of facts) {
					if (fact.kind === 'none') continue;
					expect(fact.citation.clause).not.toBe('');
					expect(fact.citation.source.title).not.toBe('');
					expect(fact.decides).toBe(fact.citation.mark !== 'memory');
					if (fact.kind === 'number') expect(fact.printed).toContain(fact.unit);
				}
			}
		}
	});

	test('every number stands in the table itself', () => {
		for (const [table, one] of everywhere) {
			const stands = JSON.stringify([table, one]);
			for (const fact of IDS.map((id) => factOf(id, table, one))) {
				if (fact.kind === 'number') expect(stands).toContain(`{"value":${String(fact.value)},"unit":"${fact.unit}"`.slice(1));
			}
		}
	});

	test.each([
		// 29 CFR 1926.502(d)(16)(ii) to (iv) and its note, (d)(15).
		['us-construction', 'free-fall-limit', '6 ft (1.8 m)'],
		['us-construction', 'force-limit', '1,800 lbf (8 kN)'],
		['us-construction', 'deceleration-limit', '3.5 ft (1.07 m)'],
		['us-construction', 'mass-limit', '310 lb (140 kg)'],
		['us-construction', 'anchorage-strength', '5,000 lbf (22.2 kN)'],
		['us-construction', 'restraint-first', 'none'],
		// 29 CFR 1910.140(d)(2)(ii): the chest attachment's own limit is not this one.
		['us-general-industry', 'free-fall-limit', '6 ft (1.8 m)'],
		// Alberta's limit of the free fall is for a line without absorber (secondary).
		['ca-alberta', 'free-fall-limit', 'none'],
		['ca-alberta', 'force-limit', '6 kN'],
		['ca-alberta', 'restraint-first', 'demand'],
		// O. Reg. 213/91 s. 26.7: the support with an absorber (secondary).
		['ca-ontario', 'anchorage-strength', '6 kN (1,350 lbf)'],
		// S-2.1 r. 4 s. 2.10.12, 2.10.15.
		['ca-quebec', 'free-fall-limit', '1.8 m'],
		['ca-quebec', 'force-limit', '6 kN'],
		['ca-quebec', 'lanyard-limit', '2 m'],
		['ca-quebec', 'sideways-limit', '3 m'],
		['ca-quebec', 'one-person', 'demand'],
		// EN 363 by DGUV Regel 112-198; EN 795 for one person, from memory.
		['eu', 'force-limit', '6 kN'],
		['eu', 'anchorage-strength', '12 kN'],
		['eu', 'free-fall-limit', 'none'],
		['uk', 'edges', 'demand'],
		// Queensland s. 306I: a free fall that is not limited.
		['au', 'anchorage-strength', '15 kN']
	] as const)('%s, %s: %s', (table, id, text) => {
		expect(printed(id, table)).toBe(text);
	});

	test('practice gives the margin; what it does not count it does not state', () => {
		expect(['us-two-foot', 'europe', 'canada'].map((one) => printed('margin', 'eu', one))).toEqual(['2 ft', '1 m', '0.6 m']);
		// DGUV Regel 112-198 s. 7.3: slide and stretch lie inside the margin.
		expect(printed('slide-and-stretch', 'eu', 'europe')).toBe('none');
		expect(printed('body-height', 'eu', 'us-three-foot-full-height')).toBe('6 ft');
	});

	test('what is from memory says that it decides nothing yet', () => {
		expect(factOf('anchorage-strength', rules('eu'), practice('europe'))).toMatchObject({ decides: false, citation: { mark: 'memory' } });
		expect(factOf('force-limit', rules('us-construction'), practice('europe'))).toMatchObject({ decides: true, limit: 'us-construction.arrest-force' });
	});

	test('a table whose number changes changes what the lesson states', () => {
		const table = structuredClone(rules('us-construction'));
		const changed = { ...table, limits: table.limits.map((limit) => (limit.id === 'us-construction.free-fall' && limit.role === 'check' ? { ...limit, require: { quantity: 'freeFall' as const, max: { value: 5, unit: 'ft' as const } } } : limit)) };
		expect(lessonFacts(lessonOf('free-fall'), changed, practice('us-two-foot'))[0]).toMatchObject({ value: 5, printed: '5 ft' });
	});
});

describe.each(LANGUAGES)('facts in words, in %s', (language) => {
	test('say the number, or that the table states none', async () => {
		const m = await messages(language);
		for (const [table, one] of everywhere) {
			for (const fact of IDS.map((id) => factOf(id, table, one))) {
				const { name, text } = factWords(m, fact);
				expect(name).not.toBe('');
				expect(text.endsWith('.')).toBe(true);
				if (fact.kind === 'number') expect(text).toContain(m.lessons.printed({ value: fact.printed }));
				else expect(text).not.toMatch(/\d/);
			}
		}
	});

	test('a number that is itself too much is told as such', async () => {
		const m = await messages(language);
		const exclusive: LessonFact[] = everywhere.flatMap(([table, one]) => IDS.map((id) => factOf(id, table, one))).filter((fact) => fact.kind === 'number' && fact.exclusive);
		expect([...new Set(exclusive.map((fact) => fact.id))].sort()).toEqual(['duty-height', 'mass-limit']);
		const words = m.lessons.facts;
		for (const fact of exclusive) {
			if (fact.kind !== 'number' || (fact.id !== 'duty-height' && fact.id !== 'mass-limit')) continue;
			expect(factWords(m, fact).text).toBe(words[fact.id].beyond?.({ value: fact.printed }));
		}
	});
});
