/** One simulated person's way through the whole course on one day, counted in problems. */
import {
	LESSON_RULE,
	PASS_RULES,
	firstPage,
	isReady,
	ruleForCell,
	standing,
	type ItemOutcome,
	type PassRule,
	type Slot
} from '#lib/mastery/index.ts';
import { creditsOf, learn, practise, begin, ability, chance, type Person, type PracticeTask, type Run, type SimulatedCourse } from './practice.ts';
import type { Dice } from './learner.ts';

const DAY = '2026-03-02';
/** Rungs of the half-done examples: one step blank, two, all. */
const RUNGS = 3;
/** Errors at a rung that lead one down (learning-and-records.md 5). */
const ERRORS_DOWN = 2;
/** How much a given step helps, as a share of what is missing to a right answer. */
const GIVEN_HELPS = 0.5;
/** Of 100 wrong answers, how many err to the unsafe side or accept a failing plan. */
const UNSAFE = 50;
/** Practice in each open cell before the check is tried again. */
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
}

export function problemsIn(course: Course): number {
	return course.examples + course.halfDone + course.practice + course.lessonChecks + course.finalCheck;
}

/** The half-done examples, after a first whole problem that was wrong. @returns how many were worked. */
function halfDone(run: Run, cell: string): number {
	let worked = 0;
	let errors = 0;
	for (let rung = 0; rung < RUNGS && worked < MOST; worked += 1) {
		const alone = ability(run.person, run.worked.get(cell) ?? 0, 'middle');
		const given = rung + 1 < RUNGS ? GIVEN_HELPS : 0;
		const right = chance(run.roll, alone + (1 - alone) * given);
		learn(run, [cell]);
		errors = right ? 0 : errors + 1;
		if (right) rung += 1;
		else if (errors === ERRORS_DOWN) {
			rung = Math.max(rung - 1, 0);
			errors = 0;
		}
	}
	return worked;
}

function item(run: Run, slot: Slot, tasks: readonly PracticeTask[]): ItemOutcome {
	const { cell, from, difficulty, fails = false } = slot;
	const fitting = tasks.filter((task) => task.cell === cell);
	const nearest = fitting.filter((task) => task.difficulty === difficulty);
	const choice = nearest.length > 0 ? nearest : fitting;
	const task = choice[run.roll(choice.length)];
	if (task === undefined) throw new Error(`no check task for ${cell}`);
	const right = creditsOf(run, task).every((credit) => credit.right);
	const erred = !right && run.roll(100) < UNSAFE;
	return { cell, right, unsafe: erred && !fails, failingPlan: fails, acceptedFailingPlan: erred && fails, from };
}

/** One try at a check, from which something is learnt too. @returns how many items it had, and how it ended. */
function check(run: Run, rule: PassRule, tasks: readonly PracticeTask[]): { readonly items: number; readonly passed: boolean; readonly open: readonly string[] } {
	const outcomes: ItemOutcome[] = [];
	let slots = firstPage(rule);
	for (;;) {
		outcomes.push(...slots.map((slot) => item(run, slot, tasks)));
		const now = standing(rule, outcomes);
		if (now.kind === 'more') slots = now.slots;
		else {
			// Answers, key and diagnoses are shown when a check has ended.
			learn(run, outcomes.map(({ cell }) => cell));
			return { items: outcomes.length, passed: now.kind === 'passed', open: now.kind === 'passed' ? [] : now.cells };
		}
	}
}

/** @returns the problems of a person's whole course; undefined if it is not finished within `MOST`. */
export function orientation(course: SimulatedCourse, person: Person, roll: Dice, seed: number): { readonly counted: Course; readonly run: Run } | undefined {
	const run = begin(person, roll, seed);
	const counted: Course = { examples: 0, halfDone: 0, practice: 0, lessonChecks: 0, finalCheck: 0, firstTries: 0, finalAtOnce: false };
	for (const { cell, tasks } of course.lessons) {
		counted.examples += 1;
		learn(run, [cell]);
		counted.practice += 1;
		if (!practise(run, tasks, cell, DAY)) counted.halfDone += halfDone(run, cell);
		for (let tries = 1; ; tries += 1) {
			while (!isReady(run.mastery, cell)) {
				practise(run, tasks, cell, DAY);
				counted.practice += 1;
				if (problemsIn(counted) > MOST) return undefined;
			}
			const { items, passed } = check(run, ruleForCell(LESSON_RULE, cell), course.checks);
			counted.lessonChecks += items;
			if (passed && tries === 1) counted.firstTries += 1;
			if (passed) break;
			for (let i = 0; i < BETWEEN_TRIES; i += 1, counted.practice += 1) practise(run, tasks, cell, DAY);
		}
	}
	const [rule] = PASS_RULES;
	if (rule === undefined) throw new Error('there is no rule of the final check');
	for (let tries = 1; problemsIn(counted) <= MOST; tries += 1) {
		const { items, passed, open } = check(run, rule, course.checks);
		counted.finalCheck += items;
		if (passed) return { counted: { ...counted, finalAtOnce: tries === 1 }, run };
		for (const { cell, tasks } of course.lessons.filter((lesson) => open.length === 0 || open.includes(lesson.cell))) {
			for (let i = 0; i < BETWEEN_TRIES; i += 1, counted.practice += 1) practise(run, tasks, cell, DAY);
		}
	}
	return undefined;
}
