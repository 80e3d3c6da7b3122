/**
 * One simulated person's way through the whole course on one day, counted in problems. Lessons, their half-done
 * examples, practice and what opens what are stepped by the program's own flow; checks are judged by its rules.
 */
import { lessonState, startCourse, stepCourse, type BookLesson, type CourseRecord, type CourseState } from '#lib/flow/index.ts';
import { LESSON_RULE, PASS_RULES, firstPage, ruleForCell, standing, tasksFor, type ItemOutcome, type PassRule, type Slot } from '#lib/mastery/index.ts';
import { ability, answered, begin, chance, learn, outcomeOf, type Person, type Run, type SimulatedCourse } from './practice.ts';
import type { Dice } from './learner.ts';

const DAY = '2026-03-02';
/** How much given steps help in a half-done example, as a share of what is missing to a right answer. */
const GIVEN_HELPS = 0.5;
/** Of 100 wrong answers, how many err to the unsafe side or accept a failing plan. */
const UNSAFE = 50;
/** Practice in each lesson before the final check is tried again. */
const BETWEEN_TRIES = 3;
/** Who needs more problems than this in one course has not finished it. */
const MOST = 2000;

/** Problems of one course, by what they were for. */
export interface Course {
	examples: number;
	halfDone: number;
	practice: number;
	lessonChecks: number;
	finalCheck: number;
	/** Lesson checks that were passed at the first try. */
	firstTries: number;
	/** Whether the final check was passed at the first try. */
	finalAtOnce: boolean;
	/** Neighbours of one kind in practice: within a lesson, and where another lesson was gone on with, whose problem stood ready. */
	alike: number;
	alikeAcross: number;
	/** Problems given a second time. */
	repeated: number;
}

export function problemsIn(course: Course): number {
	return course.halfDone + course.practice + course.lessonChecks + course.finalCheck;
}

/** A course while it is gone through. */
interface Way {
	readonly run: Run;
	readonly counted: Course;
	readonly given: Set<string>;
	/** The lesson of the last problem. */
	last: string;
	state: CourseState;
}

function step(way: Way, record: CourseRecord): void {
	way.state = stepCourse(way.run.course.book, way.state, record);
}

function watchExample(way: Way, { id, cell, steps }: BookLesson): void {
	for (let at = 0; at < steps; at += 1) step(way, { kind: 'shown', lesson: id, step: at });
	step(way, { kind: 'went-on', lesson: id });
	way.counted.examples += 1;
	learn(way.run, [cell]);
}

/** Answers the problem at hand: a half-done example, or a whole one. */
function answerNext(way: Way, lesson: BookLesson): void {
	const { run, counted } = way;
	const { next } = lessonState(way.state, lesson.id);
	const task = lesson.tasks.find((one) => one.id === next?.task);
	if (next === undefined || task === undefined) throw new Error(`${lesson.id} asks nothing`);
	const problem = `${task.id} ${String(next.seed)}`;
	if (way.given.has(problem)) counted.repeated += 1;
	way.given.add(problem);
	if (next.halfDone !== undefined) {
		const alone = ability(run.person, run.worked.get(lesson.cell) ?? 0, 'middle');
		const help = next.halfDone + 1 < lesson.halfDone.length ? GIVEN_HELPS : 0;
		const right = chance(run.roll, alone + (1 - alone) * help);
		counted.halfDone += 1;
		way.last = lesson.id;
		learn(run, [lesson.cell]);
		step(way, { kind: 'answered', lesson: lesson.id, right, outcome: outcomeOf(task, DAY, false, [{ cell: lesson.cell, skills: [], right }]) });
		return;
	}
	if (way.state.mastery.last?.kind === task.kind) counted[way.last === lesson.id ? 'alike' : 'alikeAcross'] += 1;
	way.last = lesson.id;
	const { right, credits } = answered(run, task, false);
	counted.practice += 1;
	learn(run, task.credits);
	step(way, { kind: 'answered', lesson: lesson.id, right, outcome: outcomeOf(task, DAY, false, credits) });
}

function item(run: Run, slot: Slot): ItemOutcome {
	const { cell, from, fails = false } = slot;
	const choice = tasksFor(slot, run.course.checks);
	const task = choice[run.roll(choice.length)];
	if (task === undefined) throw new Error(`no check task for ${cell}`);
	const { right } = answered(run, task, false);
	const erred = !right && run.roll(100) < UNSAFE;
	return { cell, right, unsafe: erred && !fails, failingPlan: fails, acceptedFailingPlan: erred && fails, from };
}

/** One try at a check, from which something is learnt too. @returns how many items it had, and how it ended. */
function check(run: Run, rule: PassRule): { readonly items: number; readonly passed: boolean; readonly open: readonly string[] } {
	const outcomes: ItemOutcome[] = [];
	let slots = firstPage(rule);
	for (;;) {
		outcomes.push(...slots.map((slot) => item(run, slot)));
		const now = standing(rule, outcomes);
		if (now.kind === 'more') slots = now.slots;
		else {
			// Answers, key and diagnoses are shown when a check has ended.
			learn(run, outcomes.map(({ cell }) => cell));
			return { items: outcomes.length, passed: now.kind === 'passed', open: now.kind === 'passed' ? [] : now.cells };
		}
	}
}

/** Does a lesson until its check is passed. @returns false if that takes too long. */
function doLesson(way: Way, lesson: BookLesson): boolean {
	const { run, counted } = way;
	for (;;) {
		if (problemsIn(counted) > MOST) return false;
		const { place, context } = lessonState(way.state, lesson.id);
		if (place === 'passed') return true;
		if (place === 'showing') watchExample(way, lesson);
		else if (place !== 'ready') answerNext(way, lesson);
		else {
			step(way, { kind: 'check-started', lesson: lesson.id });
			const { items, passed } = check(run, ruleForCell(LESSON_RULE, lesson.cell));
			counted.lessonChecks += items;
			if (passed && context.checks === 0) counted.firstTries += 1;
			step(way, { kind: 'check-ended', lesson: lesson.id, passed });
		}
	}
}

/** @returns the problems of a person's whole course; undefined if it is not finished within `MOST`. */
export function orientation(course: SimulatedCourse, person: Person, roll: Dice, seed: number): Course | undefined {
	const counted: Course = { examples: 0, halfDone: 0, practice: 0, lessonChecks: 0, finalCheck: 0, firstTries: 0, finalAtOnce: false, alike: 0, alikeAcross: 0, repeated: 0 };
	const way: Way = { run: begin(course, person, roll, seed), counted, given: new Set(), last: '', state: startCourse(course.book, seed) };
	const [rule] = PASS_RULES;
	if (rule === undefined) throw new Error('there is no rule of the final check');
	for (let tries = 1; problemsIn(counted) <= MOST; tries += 1) {
		if (!course.book.every((lesson) => doLesson(way, lesson))) return undefined;
		const { items, passed, open } = check(way.run, rule);
		counted.finalCheck += items;
		if (passed) return { ...counted, finalAtOnce: tries === 1 };
		for (const lesson of course.book) {
			if (open.includes(lesson.cell)) step(way, { kind: 'reopened', lesson: lesson.id });
			else if (open.length === 0) for (let i = 0; i < BETWEEN_TRIES; i += 1) answerNext(way, lesson);
		}
	}
	return undefined;
}
