import { describe, expect, test } from 'vitest';
import { analyse, simulate, targetKey, type Target } from '#lib/arrest/index.ts';
import {
	COURSE_CELLS,
	EVENT_OF_STAGE,
	FALL_STAGES,
	LESSON_IDS,
	LESSONS,
	NAME_SLOTS,
	NUMBER_SLOTS,
	SWING_STAGES,
	TASKS_OF,
	askFor,
	lessonNumbers,
	lessonOf,
	stageTime,
	type CaptionParts,
	type DrawnPlan,
	type Lesson,
	type LessonId,
	type Numbers
} from '#lib/course/index.ts';
import { shippedScenario } from '#lib/course/shipped.ts';
import { drawPicture } from '#lib/findings/index.ts';
import { givenSteps, walkOf } from '#lib/grading/index.ts';
import { draw, givenValue, type Problem } from '#lib/scenario/index.ts';
import { LANGUAGES, messages } from '#lib/text/index.ts';

/** The plans of a lesson's example; none for one that shows pictures. */
function plansOf(lesson: Lesson): readonly DrawnPlan[] {
	return lesson.example.kind === 'plans' ? lesson.example.plans : [];
}

function problemOf({ scenario, seed }: DrawnPlan): Problem {
	const found = shippedScenario(scenario);
	if (found === undefined) throw new RangeError(`${scenario} is not shipped`);
	const result = draw(found, seed);
	if (result.kind !== 'drawn') throw new RangeError(`${scenario} with seed ${String(seed)} gives no problem`);
	return result.problem;
}

/** The plan with a number in a lesson's example. */
function plan(id: LessonId, at = 0): Problem {
	const found = plansOf(lessonOf(id))[at];
	if (found === undefined) throw new RangeError(`${id} has no plan ${String(at)}`);
	return problemOf(found);
}

function valueOf(problem: Problem, target: Target): number {
	const outcome = analyse(problem.drawn.plan);
	const found = outcome.kind === 'refused' ? undefined : outcome.analysis.quantities.get(targetKey(target));
	return found?.known === true ? found.value : NaN;
}

function verdictOf(problem: Problem): string {
	const outcome = analyse(problem.drawn.plan);
	return outcome.kind === 'refused' ? 'refused' : outcome.analysis.verdict.result;
}

/** What a text prints of its slots: the slots themselves, in braces. */
const MARKED = Object.fromEntries([...NUMBER_SLOTS, ...NAME_SLOTS].map((slot) => [slot, `{${slot}}`])) as unknown as CaptionParts;

function slotsIn(text: string): readonly string[] {
	return [...new Set([...text.matchAll(/\{(\w+)\}/g)].map(([, slot = '']) => slot))].sort();
}

function numberSlots(numbers: Numbers): readonly string[] {
	return Object.keys(numbers).sort();
}

const isName = (slot: string): boolean => NAME_SLOTS.some((one) => one === slot);

describe('the lessons', () => {
	test('stand in their order, each for its cell', () => {
		expect(LESSONS.map((lesson) => lesson.id)).toEqual([...LESSON_IDS]);
		expect(LESSONS.map((lesson) => lesson.cell)).toEqual([...COURSE_CELLS]);
	});

	test.each(LESSON_IDS)('%s shows five to nine steps, each with a name of its own', (id) => {
		const { steps } = lessonOf(id).example;
		expect(steps.length).toBeGreaterThanOrEqual(5);
		expect(steps.length).toBeLessThanOrEqual(9);
		expect(new Set(steps.map((step) => step.id)).size).toBe(steps.length);
	});

	test('an id that is none is refused', () => {
		expect(() => lessonOf('rigging' as LessonId)).toThrow(RangeError);
	});

	test('the stages of the playback are events of the simulation', () => {
		expect(Object.keys(EVENT_OF_STAGE).sort()).toEqual([...new Set([...FALL_STAGES, ...SWING_STAGES])].sort());
	});
});

describe.each(LESSONS.flatMap((lesson) => (lesson.example.kind === 'plans' ? [{ id: lesson.id, example: lesson.example }] : [])))(
	'the shown example of $id',
	({ id, example }) => {
		const problems = example.plans.map(problemOf);

		test.each(example.steps.map((step) => [step.id, step] as const))('%s can be shown', (_, step) => {
			const problem = problems[step.plan];
			if (problem === undefined) throw new RangeError('no such plan');
			const numbers = lessonNumbers(problem, step.numbers);
			expect(Object.keys(numbers).sort()).toEqual(numberSlots(step.numbers));
			for (const number of Object.values(numbers)) expect(Number.isFinite(number.si)).toBe(true);
			const { show } = step;
			if (show.view === 'fall' || show.view === 'swing') expect(stageTime(problem, show.at)).toBeGreaterThanOrEqual(0);
			if (show.view === 'swing') expect(problem.drawn.plan.offset.distance).toBeGreaterThan(0);
			if (show.view === 'tape' || show.view === 'working') {
				const ask = askFor(problem, show.of);
				const steps = walkOf(problem, ask);
				expect(steps.at(-1)?.value).toBe(valueOf(problem, show.of));
				if (show.view === 'working' && show.step !== 'all') expect(show.step).toBeLessThanOrEqual(steps.length);
			}
		});

		test('its ideas have their numbers', () => {
			const [first] = problems;
			if (first === undefined) throw new RangeError('no plan');
			expect(Object.keys(lessonNumbers(first, lessonOf(id).numbers)).sort()).toEqual(numberSlots(lessonOf(id).numbers));
		});

		test('every plan of it is looked at', () => {
			expect([...new Set(example.steps.map((step) => step.plan))].sort()).toEqual(example.plans.map((_, at) => at));
		});
	}
);

test('a number that a plan does not have is refused by name', () => {
	expect(() => lessonNumbers(plan('stages'), { drop: { quantity: { quantity: 'swingDrop' } } })).toThrow('swingDrop');
	expect(() => lessonNumbers(plan('stages'), { time: { time: 'contact' } })).toThrow('contact');
});

describe('what the captions claim is so', () => {
	test('stages: the fall is arrested with the margin free', () => {
		const problem = plan('stages');
		expect(verdictOf(problem)).toBe('passes');
		expect(stageTime(problem, 'contact')).toBeUndefined();
		expect(valueOf(problem, { quantity: 'spare' })).toBeGreaterThan(0.1);
	});

	test('label: wet or frozen counts more, the absorber has the lower capacity, the mass lies in the range', () => {
		const problem = plan('label');
		const given = (id: Parameters<typeof givenValue>[1]): number => givenValue(problem, id) ?? NaN;
		const mass = valueOf(problem, { quantity: 'massAttached' });
		expect(verdictOf(problem)).toBe('passes');
		expect(given('conditionedForce')).toBeGreaterThan(given('peakForce'));
		expect(valueOf(problem, { quantity: 'lowestCapacity' })).toBe(given('labelMassMax'));
		expect(given('harnessCapacity')).toBeGreaterThan(given('labelMassMax'));
		expect(mass).toBeGreaterThan(given('labelMassMin'));
		expect(mass).toBeCloseTo(given('bodyMass') + given('clothingMass') + given('equipmentMass') + given('toolsMass'), 9);
	});

	test('free fall: above, hardly above, below; the last over the limit of its rule', () => {
		const [above, level, below] = [plan('free-fall', 0), plan('free-fall', 1), plan('free-fall', 2)];
		const rise = (problem: Problem): number => valueOf(problem, { quantity: 'rise' });
		expect(rise(above)).toBeGreaterThan(0.8);
		expect(rise(level)).toBeGreaterThan(0);
		expect(rise(level)).toBeLessThan(0.12);
		expect(rise(below)).toBeLessThan(-0.5);
		// 29 CFR 1926.502(d)(16)(iii), by way of the plan's rule table.
		expect([verdictOf(above), verdictOf(level), verdictOf(below)]).toEqual(['passes', 'passes', 'fails']);
		expect(below.drawn.plan.anchorage.connector?.lies).toBe('slack');
		// The line less the rise is the free fall: physics.md 1.1.
		expect(valueOf(above, { quantity: 'freeFall' })).toBeCloseTo(above.drawn.plan.lanyard.length - rise(above), 9);
	});

	test('required clearance: two datums differ by the height of the anchorage', () => {
		const problem = plan('required-clearance');
		const from = (datum: 'surface' | 'anchorage'): number => valueOf(problem, { quantity: 'requiredClearance', datum });
		// physics.md section 8, proof.
		expect(from('anchorage') - from('surface')).toBeCloseTo(problem.drawn.plan.anchorage.height, 9);
		expect(walkOf(problem, askFor(problem, { quantity: 'requiredClearance', datum: 'surface' })).map((step) => step.id)).toEqual([
			'rise',
			'freeFall',
			'elongation',
			'dRingSlide',
			'margin',
			'requiredClearance'
		]);
	});

	test('available clearance: a trailer that can come is too much, one that stands there is met, without one it fits', () => {
		const [comes, stands, fits] = [plan('available-clearance', 0), plan('available-clearance', 1), plan('available-clearance', 2)];
		const trailer = (problem: Problem) => problem.drawn.plan.below.obstacles.find((one) => one.id === 'vehicle');
		expect(trailer(comes)).toMatchObject({ there: false, present: 'sometimes' });
		expect(valueOf(comes, { quantity: 'availableClearance', datum: 'surface' })).toBeCloseTo(
			comes.drawn.plan.below.depth - (trailer(comes)?.top ?? NaN),
			9
		);
		// The ground alone would have been low enough.
		expect(comes.drawn.plan.below.depth).toBeGreaterThan(valueOf(comes, { quantity: 'requiredClearance', datum: 'surface' }));
		expect([verdictOf(comes), verdictOf(stands), verdictOf(fits)]).toEqual(['fails', 'fails', 'passes']);
		const outcome = analyse(stands.drawn.plan);
		const fall = outcome.kind === 'refused' ? undefined : simulate(outcome.analysis);
		expect(fall).toMatchObject({ kind: 'played', outcome: { ends: 'contact', with: 'vehicle' } });
	});

	test('force: the same force, two masses; the heavy one opens more, the light one is stopped harder', () => {
		const [heavy, light, wet] = [plan('force', 0), plan('force', 1), plan('force', 2)];
		expect(valueOf(heavy, { quantity: 'arrestForce' })).toBeCloseTo(valueOf(light, { quantity: 'arrestForce' }), 6);
		expect(valueOf(heavy, { quantity: 'bodyWeights' })).toBeLessThan(valueOf(light, { quantity: 'bodyWeights' }));
		expect(valueOf(heavy, { quantity: 'expectedElongation' })).toBeGreaterThan(valueOf(light, { quantity: 'expectedElongation' }));
		expect(wet.drawn.plan.absorber?.condition).toBe('wet-or-frozen');
		expect(valueOf(wet, { quantity: 'arrestForce' })).toBe(givenValue(wet, 'conditionedForce'));
	});

	test('swing: the first plan passes, the second meets something on the far side, after its low point', () => {
		const [free, met] = [plan('swing', 0), plan('swing', 1)];
		expect(verdictOf(free)).toBe('passes');
		const outcome = analyse(met.drawn.plan);
		const fall = outcome.kind === 'refused' ? undefined : simulate(outcome.analysis);
		if (fall?.kind !== 'played') throw new RangeError('no fall');
		const at = (id: string): number => fall.events.find((event) => event.id === id)?.t ?? NaN;
		expect(at('contact')).toBeGreaterThan(at('lowest'));
		expect(fall.at(at('contact')).dRing.x).toBeLessThan(0);
	});

	test.each([
		['restraint', []],
		['place', ['anchorage-rail', 'edge-line', 'two-persons']],
		['inspection', ['cut', 'stitch-pulled']],
		['donning', ['lanyard-on-belt', 'leg-loose', 'leg-loose']],
		['connectors', ['gate-loaded', 'hook-to-hook', 'tip-loaded']],
		['legs-wrong', ['low-clip', 'parked-ring']],
		['legs-right', []],
		['steel', ['absorbers-in-series', 'tie-back-unrated']],
		['rescue', ['rescue-blocked', 'works-alone']]
	])('before and after: the picture of %s shows what its caption names', (id, notes) => {
		const { example } = lessonOf('before-and-after');
		const step = example.kind === 'pictures' ? example.steps.find((one) => one.id === id) : undefined;
		if (step === undefined) throw new RangeError(`no picture ${id}`);
		const { key } = drawPicture(step.picture, step.seed);
		expect(key.marks.map((part) => key.notes[part]).sort()).toEqual(notes);
	});
});

describe.each(LESSON_IDS)('half-done examples of %s', (id) => {
	const { halfDone } = lessonOf(id);
	const order = [1, 2, 'all'];

	test('leave more and more blank, and are tasks of the lesson', () => {
		expect(halfDone.length).toBeGreaterThan(0);
		const blanks = halfDone.map((one) => order.indexOf(one.blank));
		const own = TASKS_OF[id].map((task) => task.id);
		expect(halfDone.filter((one) => !own.includes(one.task))).toEqual([]);
		if (id !== 'available-clearance') expect(blanks).toEqual(blanks.toSorted((a, b) => a - b));
		expect(halfDone.at(-1)?.blank).toBe('all');
	});

	test('give at least one step where they leave only some blank', () => {
		for (const half of halfDone) {
			const task = TASKS_OF[id].find((one) => one.id === half.task);
			if (half.kind === 'finding') {
				expect(task?.kind).toBe('finding');
				continue;
			}
			if (task?.kind !== 'site') throw new RangeError(`${half.task} is no site problem`);
			expect(task.asks).toContain(half.ask);
			for (const seed of [1, 2, 3]) {
				const problem = problemOf({ scenario: task.scenario, seed });
				const ask = problem.scenario.asks.find((one) => one.id === half.ask);
				if (ask?.kind !== 'number') throw new RangeError(`${half.ask} is no number`);
				expect(givenSteps(problem, ask, half.blank) > 0).toBe(half.blank !== 'all');
			}
		}
	});
});

describe.each(LANGUAGES)('the words of the lessons in %s', (language) => {
	test.each(LESSON_IDS)('%s has a caption for each step, with the numbers that the step names', async (id) => {
		const { captions } = (await messages(language)).lessons.of[id];
		const { example } = lessonOf(id);
		expect(Object.keys(captions)).toEqual(example.steps.map((step) => step.id));
		for (const step of example.steps) {
			const read = slotsIn(captions[step.id]?.(MARKED) ?? '').filter((slot) => !isName(slot));
			expect([step.id, read]).toEqual([step.id, 'numbers' in step ? numberSlots(step.numbers) : []]);
		}
	});

	test.each(LESSON_IDS)('%s speaks of its numbers in its ideas, two to seven of them', async (id) => {
		const { ideas, cautions } = (await messages(language)).lessons.of[id];
		expect(ideas.length).toBeGreaterThanOrEqual(2);
		expect(ideas.length).toBeLessThanOrEqual(7);
		expect(cautions.length).toBeGreaterThanOrEqual(3);
		const read = slotsIn(ideas.map((idea) => idea(MARKED)).join(' ')).filter((slot) => !isName(slot));
		expect(read).toEqual(numberSlots(lessonOf(id).numbers));
	});

	test('no number is typed by hand, in digits or in words with a unit', async () => {
		const { lessons } = await messages(language);
		const texts: string[] = [];
		const visit = (value: unknown): void => {
			if (typeof value === 'string') texts.push(value);
			else if (typeof value === 'function') {
				texts.push(String(Reflect.apply(value, undefined, [{ ...MARKED, value: '{value}', n: '{n}', of: '{of}' }])));
			} else if (typeof value === 'object' && value !== null) Object.values(value).forEach(visit);
		};
		visit(lessons);
		expect(texts.length).toBeGreaterThan(150);
		const counted = /\b(?:two|three|four|five|six|ten|twelve|dos|tres|cuatro|cinco|seis|diez|doce)\s+(?:feet|foot|met(?:re|er)s?|pounds?|kilo\w*|pies?|metros?|libras?)\b/i;
		expect(texts.filter((text) => /\d/.test(text) || counted.test(text))).toEqual([]);
	});
});
