import { describe, expect, it } from 'vitest';
import type { LanyardPlan } from '#lib/arrest/index.ts';
import { factStatesOf, problemOf, storyOf, type Problem } from '#lib/scenario/index.ts';
import { scenarioWith, type Document } from './document.ts';

/** A problem of the changed document whose plan is the base plan, changed as well. */
function problemWith(change: (document: Document) => object | undefined, plan: (base: LanyardPlan) => Partial<LanyardPlan> = () => ({})): Problem {
	const scenario = scenarioWith(change);
	return problemOf(scenario, { plan: { ...scenario.base, ...plan(scenario.base) }, decoys: {}, person: 'Ada' }, 1, 0);
}

const stack = (there: boolean) => (base: LanyardPlan) => ({
	below: { ...base.below, obstacles: base.below.obstacles.map((one) => ({ ...one, there })) }
});

describe('a story', () => {
	it('names the person in title, lead and body', () => {
		const { title, lead, paragraphs } = storyOf(
			problemWith((document) => {
				document.words.en.title = 'Shelf of {name}';
				return undefined;
			}),
			'en'
		);
		expect(title).toBe('Shelf of Ada');
		expect(lead).toBe('Ada greases the bearing with both heels at the edge. The rail is out.');
		expect(paragraphs[1]).toContain('can bring Ada back');
	});

	it.each([
		[stack(true), 'Form panels lie stacked below.', 'Abajo hay paneles de encofrado apilados.'],
		[stack(false), 'Form panels will be stacked below during this shift.', 'Durante este turno se apilarán paneles de encofrado abajo.']
	])('ends with what was drawn, told in the language asked for', (plan, en, es) => {
		const problem = problemWith(() => undefined, plan);
		expect(storyOf(problem, 'en').paragraphs.at(-1)).toBe(en);
		expect(storyOf(problem, 'es').paragraphs.at(-1)).toBe(es);
	});

	it('has no last paragraph if what was drawn needs no word', () => {
		const problem = problemWith(() => undefined, (base) => ({ below: { ...base.below, obstacles: [] } }));
		expect(storyOf(problem, 'en').paragraphs).toHaveLength(2);
	});

	it('joins the facts in the order of the document', () => {
		const problem = problemWith((document) => ({
			...document,
			words: {
				...document.words,
				en: { ...document.words.en, facts: { rescue: { arranged: 'A rescue is set up.' }, ...document.words.en.facts, persons: { '1': '{name} is alone on it.' } } }
			}
		}));
		expect(storyOf(problem, 'en').paragraphs.at(-1)).toBe('A rescue is set up. Form panels lie stacked below. Ada is alone on it.');
	});

	it.each([
		['metric', 'en', '1.90\u00a0m, 84\u00a0kg, 6.0\u00a0kN'],
		['metric', 'es', '1,90\u00a0m, 84\u00a0kg, 6,0\u00a0kN'],
		['us-decimal', 'en', '6.23\u00a0ft, 185\u00a0lb, 1349\u00a0lbf'],
		['us-inch', 'en', '6′\u00a03″, 185\u00a0lb, 1349\u00a0lbf']
	] as const)('writes numbers in the units of the scenario: %s, %s', (units, language, text) => {
		const problem = problemWith((document) => {
			document.units = units;
			document.words[language].lead = '{lanyardLength}, {bodyMass}, {peakForce}';
			return undefined;
		});
		expect(storyOf(problem, language).lead).toBe(text);
	});

	it('leaves a gap for a slot that the problem has nothing for', () => {
		const problem = problemWith((document) => {
			document.words.en.lead = 'The strap is {connectorLength} long.';
			return undefined;
		});
		expect(storyOf(problem, 'en').lead).toBe('The strap is … long.');
	});
});

describe('the facts of a plan', () => {
	it('have a state each, also for what the plan does not have', () => {
		const { base } = scenarioWith();
		expect(Object.fromEntries(factStatesOf({ ...base, absorber: null }, ['stack', 'crane']))).toEqual({
			rescue: 'arranged',
			connectors: 'yes',
			condition: 'dry',
			posture: 'standing',
			persons: '1',
			engineered: 'unknown',
			'longer-fall': 'unknown',
			'obstacle:stack': 'there',
			'obstacle:crane': 'none'
		});
	});
});
