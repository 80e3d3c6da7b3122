/**
 * Simulated learners of the course. What they can do is a curve of our own for each cell; what the program makes of
 * their answers is the program's: its tasks, its estimate, its choice of the next task, its rules of the checks.
 */
import { answerKey, drawPicture, type Picture } from '#lib/findings/index.ts';
import { allRight, creditsOf, pictureCredits, type BookLesson, type CourseBook } from '#lib/flow/index.ts';
import type { Grade } from '#lib/grading/index.ts';
import {
	NOTHING_KNOWN,
	isReady,
	nextTask,
	observe,
	type CheckTask,
	type Credit,
	type Difficulty,
	type Mastery,
	type TaskFacts
} from '#lib/mastery/index.ts';
import type { Ask } from '#lib/scenario/index.ts';
import { asksOf, checkBook, courseBook, findTask } from '#lib/server/course/book.ts';
import { problemsOf, shippedScenarios } from './shipped.ts';
import { tasksOf, type Dice } from './learner.ts';

/** One ask of a course task, as far as a simulated learner cares. */
export interface PracticeAsk {
	readonly ask: Ask;
	readonly cell: string;
	/** Slips that can be made in it. */
	readonly slips: readonly string[];
	/** How likely somebody who knows nothing is right; a decision's own, whatever its numbers are. */
	readonly hit: number;
}

/** What a task asks: numbers and decisions of a site problem, or a picture, of which some were drawn. */
export type Asked =
	| { readonly kind: 'site'; readonly asks: readonly PracticeAsk[] }
	| { readonly kind: 'picture'; readonly drawn: readonly Picture[]; readonly commonest: string };

const BLIND_DECISION = 0.5;
const PROBLEMS_EACH = 20;
const PICTURES_EACH = 400;

/** Slips that can be made in each ask of each scenario, worked out by hand. */
function slipsOfAsks(): ReadonlyMap<string, readonly string[]> {
	const found = new Map<string, readonly string[]>();
	for (const scenario of shippedScenarios()) {
		const tasks = problemsOf(scenario, PROBLEMS_EACH).flatMap((problem) => tasksOf(problem, () => true));
		for (const ask of scenario.asks) {
			const slips = tasks.filter((task) => task.ask.id === ask.id).flatMap((task) => task.mistakes.singles.flatMap((one) => one.slips));
			found.set(`${scenario.id}.${ask.id}`, [...new Set(slips)].sort());
		}
	}
	return found;
}

const RIGHT: Grade = { kind: 'number', mark: { kind: 'right' }, answer: undefined, read: undefined, right: undefined, diagnosis: undefined, label: undefined };
const WRONG: Grade = { ...RIGHT, mark: { kind: 'wrong', critical: false } };

function decided(right: boolean, counts: boolean): Grade {
	return { kind: 'decision', mark: right ? { kind: 'right' } : { kind: 'wrong', critical: false }, decision: 'tie-off', right: right ? 'tie-off' : 'do-not-tie-off', counts };
}

/** What the program takes a guess at an ask to be worth. */
function hitOf(ask: Ask): number {
	if (ask.kind === 'decision') return BLIND_DECISION;
	const [credit] = creditsOf([ask], { [ask.id]: RIGHT });
	if (credit?.guess === undefined) throw new Error(`${ask.id} is no evidence`);
	return credit.guess;
}

function askedBy(id: string, slips: ReadonlyMap<string, readonly string[]>): Asked {
	const task = findTask(id);
	if (task === undefined) throw new Error(`the course has no task ${id}`);
	if (task.kind === 'site') {
		const asks = asksOf(task).map((ask) => ({ ask, cell: ask.cell, slips: slips.get(`${task.scenario}.${ask.id}`) ?? [], hit: hitOf(ask) }));
		return { kind: 'site', asks };
	}
	const drawn = Array.from({ length: PICTURES_EACH }, (_, seed) => drawPicture(task.picture, seed));
	const times = new Map<string, number>();
	for (const { key } of drawn) times.set(answerKey(key), (times.get(answerKey(key)) ?? 0) + 1);
	const [commonest] = [...times].reduce((most, one) => (one[1] > most[1] ? one : most), ['', 0] as const);
	return { kind: 'picture', drawn, commonest };
}

/** The course as simulated learners meet it: its book, and what each of its tasks asks. */
export interface SimulatedCourse {
	readonly book: CourseBook;
	readonly checks: readonly CheckTask[];
	readonly asked: ReadonlyMap<string, Asked>;
}

/** @returns the tasks of all lessons and checks. @throws if a task names what there is not. */
export function simulatedCourse(): SimulatedCourse {
	const slips = slipsOfAsks();
	const book = courseBook();
	const checks = checkBook();
	const ids = [...book.flatMap((lesson) => lesson.tasks), ...checks].map((task) => task.id);
	return { book, checks, asked: new Map(ids.map((id) => [id, askedBy(id, slips)])) };
}

/** @returns what a task asks. @throws if the course has no such task */
export function askedIn(course: SimulatedCourse, task: string): Asked {
	const asked = course.asked.get(task);
	if (asked === undefined) throw new Error(`the course has no task ${task}`);
	return asked;
}

/** @returns whether somebody who always makes certain slips always gets a task wrong; `cell`: in what it asks of that cell. */
export function alwaysWrong(asked: Asked, always: ReadonlySet<string> | undefined, cell?: string): boolean {
	return asked.kind === 'site' && asked.asks.some((one) => (cell === undefined || one.cell === cell) && one.slips.some((slip) => always?.has(slip)));
}

/** What a simulated person can do. */
export interface Person {
	/** How likely an ask of middle difficulty is right at first. */
	readonly start: number;
	/** How likely it is after much practice. */
	readonly top: number;
	/** Share of what is missing that one problem teaches. */
	readonly rate: number;
	/** Slips that are made every time. */
	readonly always?: ReadonlySet<string>;
	/** Knows nothing, and answers every picture with what is most often right in it. */
	readonly guesses?: boolean;
	/** Of 100 problems, how many are answered with the help that shows the working. */
	readonly helped?: number;
}

/** How much likelier a right answer is at a difficulty, as odds. */
const ODDS: Readonly<Record<Difficulty, number>> = { easy: 1.6, middle: 1, hard: 0.6 };
/** An answer after help or the explanation is right in so many of 100. */
const RIGHT_WITH_HELP = 95;
const FINE = 1_000_000;

export function chance(roll: Dice, p: number): boolean {
	return roll(FINE) < p * FINE;
}

/** @returns how likely a person who worked so many problems of a cell answers one of its asks right. */
export function ability(person: Person, worked: number, difficulty: Difficulty): number {
	const p = person.top - (person.top - person.start) * (1 - person.rate) ** worked;
	const odds = (ODDS[difficulty] * p) / (1 - p);
	return odds / (1 + odds);
}

/** What a person has done so far. */
export interface Run {
	readonly course: SimulatedCourse;
	readonly person: Person;
	readonly roll: Dice;
	readonly seed: number;
	mastery: Mastery;
	/** Problems given. */
	given: number;
	/** Problems worked, by cell. */
	readonly worked: Map<string, number>;
}

export function begin(course: SimulatedCourse, person: Person, roll: Dice, seed: number): Run {
	return { course, person, roll, seed, mastery: NOTHING_KNOWN, given: 0, worked: new Map() };
}

/** How a problem was answered, and what the program takes it to say. */
export interface Answered {
	readonly right: boolean;
	readonly credits: readonly Credit[];
}

/** @returns how a person answers a task of a cell. @param helped with the help that shows the working */
export function answered(run: Run, task: { readonly id: string; readonly cell: string; readonly difficulty: Difficulty }, helped: boolean): Answered {
	const { person, roll, worked } = run;
	const asked = askedIn(run.course, task.id);
	const able = (cell: string): boolean => (helped ? roll(100) < RIGHT_WITH_HELP : chance(roll, ability(person, worked.get(cell) ?? 0, task.difficulty)));
	if (asked.kind === 'picture') {
		const picture = asked.drawn[roll(asked.drawn.length)];
		if (picture === undefined) throw new Error(`${task.id} draws nothing`);
		const right = person.guesses && !helped ? answerKey(picture.key) === asked.commonest : able(task.cell);
		return { right, credits: pictureCredits(task.cell, picture, right) };
	}
	const grades: Record<string, Grade> = {};
	for (const { ask, cell, slips, hit } of asked.asks) {
		const never = !helped && slips.some((slip) => person.always?.has(slip));
		const right = !never && (person.guesses && !helped ? chance(roll, hit) : able(cell));
		if (ask.kind === 'decision') grades[ask.id] = decided(right, ask.with.every((id) => grades[id] === undefined || grades[id] === RIGHT));
		else grades[ask.id] = right ? RIGHT : WRONG;
	}
	const asks = asked.asks.map((one) => one.ask);
	return { right: allRight(asks, grades), credits: creditsOf(asks, grades) };
}

/** Counts a problem as worked: something is learnt from it whether it was right or not. */
export function learn(run: Run, cells: readonly string[]): void {
	for (const cell of cells) run.worked.set(cell, (run.worked.get(cell) ?? 0) + 1);
}

/** One problem of practice of a lesson. */
function practise(run: Run, lesson: BookLesson, day: string): void {
	const { task } = nextTask(lesson.tasks, run.mastery, { cells: [lesson.cell] }, { seed: run.seed, nth: run.given });
	run.given += 1;
	const aided = run.roll(100) < (run.person.helped ?? 0);
	const { credits } = answered(run, task, aided);
	run.mastery = observe(run.mastery, outcomeOf(task, day, aided, credits));
	learn(run, task.credits);
}

/** @returns what the estimate is told of an answer. */
export function outcomeOf(task: TaskFacts, day: string, aided: boolean, credits: readonly Credit[]) {
	return { task: task.id, kind: task.kind, difficulty: task.difficulty, day, aided, credits };
}

/** Practises a cell until it is ready. @returns how many problems it took, or undefined if not within `most`. */
export function practiseToReady(run: Run, lesson: BookLesson, most: number, day: string): number | undefined {
	for (let count = 1; count <= most; count += 1) {
		practise(run, lesson, day);
		if (isReady(run.mastery, lesson.cell)) return count;
	}
	return undefined;
}
