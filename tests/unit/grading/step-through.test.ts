import { describe, expect, test } from 'vitest';
import { gradeStep, gradeWalk, walkOf } from '#lib/grading/index.ts';
import { numberAsks, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { problemOf } from '../../support/answered.ts';

const problem = problemOf('bridge-bearing', 1);

function askOf(id: string, of: Problem = problem): NumberAsk {
	const found = numberAsks(of.scenario).find((ask) => ask.id === id);
	if (found === undefined) throw new Error(`no ask ${id}`);
	return found;
}

const required = askOf('required');
const steps = walkOf(problem, required);
const written = (value: number): string => value.toFixed(2);

describe('the steps of a required clearance', () => {
	test('what must be worked out comes first, then what is read off, then the whole', () => {
		expect(steps.map((step) => step.id)).toEqual(['rise', 'freeFall', 'elongation', 'dRingSlide', 'margin', 'requiredClearance']);
	});

	test('the values add up by hand: (anchorage − D-ring), lanyard − rise, and the sum of the terms', () => {
		const { worker, anchorage, lanyard, absorber, harness, margin } = problem.drawn.plan;
		const rise = anchorage.height - worker.dRingHeight;
		const freeFall = lanyard.length - rise;
		const whole = freeFall + (absorber?.elongation ?? NaN) + (harness.slide ?? NaN) + (margin ?? NaN);
		expect(steps[0]?.value).toBeCloseTo(rise, 9);
		expect(steps[1]?.value).toBeCloseTo(freeFall, 9);
		expect(steps.at(-1)?.value).toBeCloseTo(whole, 9);
	});

	test('all of them right is right', () => {
		const grades = gradeWalk(problem, required, steps.map((step) => written(step.value)), 'en');
		expect(grades.map((grade) => grade?.kind === 'step' && grade.mark)).toEqual(steps.map(() => 'right'));
	});

	test('a wrong step counts once: what follows from it is marked as following', () => {
		const off = 0.3;
		const texts = steps.map((step) => written(step.value));
		texts[0] = written((steps[0]?.value ?? 0) + off);
		texts[1] = written((steps[1]?.value ?? 0) - off);
		texts[5] = written((steps[5]?.value ?? 0) - off);
		const marks = gradeWalk(problem, required, texts, 'en').map((grade) => (grade?.kind === 'step' ? grade.mark : undefined));
		expect(marks).toEqual(['wrong', 'follows-own', 'right', 'right', 'right', 'follows-own']);
	});

	test('going on with the right value after a wrong step is right as well', () => {
		const texts = steps.map((step) => written(step.value));
		texts[0] = written((steps[0]?.value ?? 0) + 0.3);
		const marks = gradeWalk(problem, required, texts, 'en').map((grade) => (grade?.kind === 'step' ? grade.mark : undefined));
		expect(marks.slice(1)).toEqual(['right', 'right', 'right', 'right', 'right']);
	});

	test('the whole may lie a little on the cautious side, never on the unsafe one', () => {
		const whole = steps[5];
		if (whole === undefined) throw new Error('no last step');
		const mark = (value: number): string | undefined => {
			const grade = gradeStep(problem, required, whole, value.toFixed(3), new Map(), 'en');
			return grade.kind === 'step' ? grade.mark : undefined;
		};
		expect(mark(whole.value + 0.012)).toBe('right');
		expect(mark(whole.value - 0.012)).toBe('wrong');
	});

	test('a number typed more coarsely than asked is not right by being coarse', () => {
		const elongation = steps.find((step) => step.id === 'elongation');
		if (elongation === undefined) throw new Error('no such step');
		expect(elongation.value).toBeCloseTo(0.95, 9);
		expect(gradeStep(problem, required, elongation, '0.9', new Map(), 'en')).toMatchObject({ mark: 'wrong' });
	});

	test('what cannot be read is asked about', () => {
		const [first] = steps;
		if (first === undefined) throw new Error('no step');
		expect(gradeStep(problem, required, first, 'about one', new Map(), 'en').kind).toBe('unreadable');
		expect(gradeStep(problem, required, first, '1,234', new Map(), 'en').kind).toBe('question');
		expect(gradeWalk(problem, required, ['', ''], 'en')).toEqual(steps.map(() => undefined));
	});
});

test('every number ask of every shipped scenario can be stepped through to its own value', () => {
	for (const scenario of shippedScenarios()) {
		const drawn = problemOf(scenario.id, 1);
		for (const ask of numberAsks(scenario)) {
			const walk = walkOf(drawn, ask);
			expect(walk.at(-1)?.id, `${scenario.id} ${ask.id}`).toBe(ask.quantity);
			expect(new Set(walk.map((step) => step.id)).size).toBe(walk.length);
		}
	}
});
