import { beforeAll, describe, expect, test } from 'vitest';
import { analyse } from '#lib/arrest/index.ts';
import { explain, gradeAsk, gradeProblem, type Answer, type Grade } from '#lib/grading/index.ts';
import { askOf, problemOf, type Drawn, type NumberAsk, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';

/** A scenario of this test's own; the drawn values are set by hand, so that the sums can be read here. */
const document = {
	id: 'test-ledge',
	version: 1,
	backdrop: 'formwork-deck',
	units: 'metric',
	people: ['Noor'],
	words: Object.fromEntries(
		(['en', 'es'] as const).map((language) => [
			language,
			{
				title: 'Ledge',
				lead: '{name} works.',
				body: [],
				places: { surface: 'ledge', lowerLevel: 'yard', anchorage: 'beam' },
				obstacles: { skip: 'skip' }
			}
		])
	),
	base: {
		system: 'lanyard',
		rules: 'eu',
		practice: 'europe',
		worker: { stature: '1.78 m', dRingHeight: '1.43 m', mass: { body: '77 kg', clothing: '2 kg', equipment: '5 kg', tools: '4 kg' } },
		lanyard: { length: '1.85 m' },
		absorber: { elongation: '1.25 m', peakForce: '6 kN', massMin: '50 kg', massMax: '130 kg', freeFallMax: '2.5 m' },
		harness: { slide: '0.27 m', capacity: '140 kg' },
		connectors: { compatible: 'yes' },
		anchorage: { height: '2.11 m', strength: '18 kN' },
		margin: '0.9 m',
		below: { depth: '5.36 m', obstacles: [{ id: 'skip', top: '1.52 m', from: '-1 m', to: '1 m', present: 'always' }] },
		rescue: 'arranged'
	},
	draws: [{ sets: ['lowerLevelDepth'], from: 5.36, to: 5.36, step: 0.01, unit: 'm' }],
	aims: [{ fails: 'nothing', weight: 1 }],
	asks: [
		{ id: 'fall', cell: 'free-fall', kind: 'number', quantity: 'freeFall', precision: { value: 0.01, unit: 'm' } },
		{ id: 'needed', cell: 'required-clearance', kind: 'number', quantity: 'requiredClearance', datum: 'surface', precision: { value: 0.01, unit: 'm' } },
		{ id: 'there', cell: 'available-and-verdict', kind: 'number', quantity: 'availableClearance', datum: 'surface', precision: { value: 0.01, unit: 'm' } },
		{ id: 'decide', cell: 'decisions', kind: 'decision', with: ['needed', 'there'] }
	],
	difficulty: 'easy',
	drivers: { steps: 3, decoys: 0, unitChange: false, signChange: false }
};

let scenario: Scenario;
let problem: Problem;
beforeAll(() => {
	scenario = scenarioSchema.parse(document);
	problem = problemOf(scenario, { plan: scenario.base, decoys: {}, person: 'Noor' }, 1, 0);
});

// Worked by hand: rise 2.11 − 1.43 = 0.68; free fall 1.85 − 0.68 = 1.17; needed 1.17 + 1.25 + 0.27 + 0.90 = 3.59;
// there 5.36 − 1.52 = 3.84; spare 0.25.
const en = { language: 'en' } as const;
const number = (text: string): Answer => ({ kind: 'number', text });

function graded(ask: string, text: string, of: Problem = problem): Extract<Grade, { kind: 'number' }> {
	const grade = gradeAsk(of, ask, number(text), en);
	if (grade.kind !== 'number') throw new Error(`${text}: ${grade.kind}`);
	return grade;
}

function leading(ask: string, text: string): string {
	const best = graded(ask, text).diagnosis?.candidates[0];
	if (best === undefined) return 'none';
	return best.kind === 'slips' ? best.slips.join('+') : best.slip.entry;
}

describe('marks', () => {
	test.each([
		['fall', '1.17', 'right'],
		['fall', '117 cm', 'right'],
		['fall', '3 ft 10 1/16 in', 'right'],
		['needed', '3.59', 'right'],
		['needed', '3.6', 'right-by-rounding'],
		['needed', '3.62', 'right-by-rounding'],
		['there', '3.84', 'right'],
		['there', '3.8', 'wrong'],
		['there', '3.82', 'right-by-rounding']
	])('%s %s is %s', (ask, text, kind) => {
		expect(graded(ask, text).mark.kind).toBe(kind);
	});
	test('the unsafe side is marked: needed under-stated, there over-stated, never the other way round', () => {
		expect(graded('needed', '3.5').mark).toEqual({ kind: 'wrong', critical: true });
		expect(graded('needed', '4.1').mark).toEqual({ kind: 'wrong', critical: false });
		expect(graded('there', '3.9').mark).toEqual({ kind: 'wrong', critical: true });
		expect(graded('there', '3.4').mark).toEqual({ kind: 'wrong', critical: false });
	});
	test('half a place on the unsafe side is the edge', () => {
		expect(graded('needed', '3.585').mark.kind).toBe('right');
		expect(graded('needed', '3.584').mark.kind).toBe('wrong');
	});
});

describe('an entry that cannot be read is not a wrong answer', () => {
	test.each([
		['nothing', '', 'unreadable'],
		['words', 'about three', 'unreadable'],
		['two readings', '1,234', 'question'],
		['a mass', '3 kg', 'unreadable'],
		['a megabyte', 'x'.repeat(1_000_000), 'unreadable']
	])('%s', (_, text, kind) => {
		expect(gradeAsk(problem, 'needed', number(text), en).kind).toBe(kind);
	});
});

describe('the thought behind a wrong number', () => {
	test.each([
		['fall', '1.85', 'lanyard-for-free-fall'],
		['fall', '2.53', 'heights-wrong-way'],
		['fall', '2.42', 'elongation-in-free-fall'],
		['fall', '1.52', 'stature-for-d-ring'],
		['needed', '2.34', 'elongation-left-out'],
		['needed', '2.69', 'margin-left-out'],
		['needed', '3.86', 'stretch-twice'],
		['needed', '5.02', 'body-from-surface'],
		['there', '5.36', 'obstacle-overlooked']
	])('%s %s: %s', (ask, text, slip) => {
		expect(leading(ask, text)).toBe(slip);
		expect(graded(ask, text).diagnosis?.certainty).toBe('asserted');
	});
	test('two slips are offered, not asserted', () => {
		const { diagnosis } = graded('needed', '1.44');
		expect(diagnosis?.candidates[0]).toMatchObject({ slips: ['elongation-left-out', 'margin-left-out'] });
		expect(diagnosis?.certainty).toBe('could-be');
	});
	test.each([
		['needed', '-3.59', 'sign'],
		['needed', '35.9', 'decimal-shifted'],
		['needed', '3.95', 'digits-swapped'],
		['needed', '11.78', 'other-unit'],
		['needed', '1.17', 'step-handed-in'],
		['needed', '1.78', 'given-handed-in']
	])('%s %s: %s', (ask, text, entry) => {
		expect(leading(ask, text)).toBe(entry);
		expect(graded(ask, text).diagnosis?.certainty).not.toBe('asserted');
	});
	test('nothing fits: no pattern', () => {
		expect(graded('needed', '7.77').diagnosis).toEqual({ certainty: 'none', candidates: [], step: undefined });
	});
	test('the step is named', () => {
		expect(graded('needed', '4.95').diagnosis).toMatchObject({ step: 'freeFall' });
		expect(graded('needed', '2.69').diagnosis).toMatchObject({ step: 'requiredClearance' });
	});
});

describe('one error counts once', () => {
	test('a clearance worked rightly from an own wrong free fall follows it, and stays on the unsafe side', () => {
		const grades = gradeProblem(problem, new Map([['fall', number('1.07')], ['needed', number('3.49')]]), en);
		expect(grades.get('fall')).toMatchObject({ mark: { kind: 'wrong', critical: true } });
		expect(grades.get('needed')).toMatchObject({ mark: { kind: 'follows-own', ask: 'fall', critical: true } });
	});
	test('an own wrong free fall tells a slip in the clearance from its look-alikes', () => {
		const grades = gradeProblem(problem, new Map([['fall', number('1.85')], ['needed', number('3.37')]]), en);
		const grade = grades.get('needed');
		expect(grade?.kind === 'number' && grade.diagnosis?.candidates[0]).toMatchObject({
			slips: ['lanyard-for-free-fall', 'margin-left-out']
		});
	});
});

describe('decisions', () => {
	const decide = (decision: 'tie-off' | 'do-not-tie-off'): Answer => ({ kind: 'decision', decision });
	const right = new Map([['needed', number('3.59')], ['there', number('3.84')]]);
	test('right, and counting with its numbers', () => {
		const grades = gradeProblem(problem, new Map([...right, ['decide', decide('tie-off')]]), en);
		expect(grades.get('decide')).toMatchObject({ mark: { kind: 'right' }, counts: true });
	});
	test('right with a wrong number does not count', () => {
		const grades = gradeProblem(problem, new Map([...right, ['needed', number('2.69')], ['decide', decide('tie-off')]]), en);
		expect(grades.get('decide')).toMatchObject({ mark: { kind: 'right' }, counts: false });
	});
	test('accepting a plan that fails is critical; refusing one that passes is not', () => {
		const shallow: Drawn = { ...problem.drawn, plan: { ...scenario.base, below: { ...scenario.base.below, depth: 4.6 } } };
		const failing = problemOf(scenario, shallow, 1, 0);
		const outcome = analyse(failing.drawn.plan);
		expect(outcome.kind === 'analysed' && outcome.analysis.verdict.result).toBe('fails');
		expect(gradeAsk(failing, 'decide', decide('tie-off'), en)).toMatchObject({ mark: { kind: 'wrong', critical: true } });
		expect(gradeAsk(problem, 'decide', decide('do-not-tie-off'), en)).toMatchObject({ mark: { kind: 'wrong', critical: false } });
	});
	test('a decision for a number ask, and the other way round, is a mistake of the program', () => {
		expect(() => gradeAsk(problem, 'needed', decide('tie-off'), en)).toThrow(TypeError);
		expect(() => gradeAsk(problem, 'decide', number('3'), en)).toThrow(TypeError);
		expect(() => gradeAsk(problem, 'nothing', number('3'), en)).toThrow(/has no ask/);
	});
});

describe('outside the label', () => {
	let outside: Problem;
	beforeAll(() => {
		const low = { ...scenario.base, anchorage: { ...scenario.base.anchorage, height: 0.5 } };
		outside = problemOf(scenario, { plan: low, decoys: {}, person: 'Noor' }, 1, 0);
	});
	test('a number is critical: the label does not hold there', () => {
		expect(graded('needed', '5.2', outside)).toMatchObject({ mark: { kind: 'wrong', critical: true }, label: 'overlooked' });
	});
	test('"cannot be stated" is right there and wrong elsewhere', () => {
		expect(gradeAsk(outside, 'needed', { kind: 'not-stated' }, en)).toMatchObject({ mark: { kind: 'right' } });
		expect(gradeAsk(problem, 'needed', { kind: 'not-stated' }, en)).toMatchObject({ mark: { kind: 'wrong' }, label: 'misjudged' });
	});
	test('the free fall itself can still be worked out', () => {
		expect(graded('fall', '2.78', outside).mark.kind).toBe('right');
	});
});

describe('the explanation', () => {
	const ask = (): NumberAsk => {
		const found = askOf(scenario, 'needed');
		if (found.kind !== 'number') throw new Error('not a number ask');
		return found;
	};
	test('the tape adds up to the value, the own tape to the answer', () => {
		const { tape, ownTape } = explain(problem, ask(), ['elongation-left-out']);
		const total = (terms: typeof tape): number => terms.reduce((sum, term) => sum + term.sign * term.value, 0);
		expect(total(tape)).toBeCloseTo(3.59, 12);
		expect(total(ownTape ?? [])).toBeCloseTo(2.34, 12);
		expect(tape.map((term) => term.role)).toEqual(['freeFall', 'elongation', 'stretch', 'margin']);
	});
	test('the step the slip acts in is marked, with the own value beside the right one', () => {
		const { steps } = explain(problem, ask(), ['lanyard-for-free-fall']);
		const fall = steps.find((step) => step.id === 'freeFall');
		expect(fall).toMatchObject({ slip: true });
		expect(fall?.value).toBeCloseTo(1.17, 12);
		expect(fall?.own).toBeCloseTo(1.85, 12);
		expect(steps.find((step) => step.id === 'requiredClearance')).toMatchObject({ slip: false });
	});
});
