/**
 * Simulated learners of the course. What they can do is a curve of our own for each cell; what the program makes of
 * their answers is the program's: its tasks, its estimate, its choice of the next task, its rules of the checks.
 */
import { CHECK_TASKS, LESSONS, TASKS_OF, type CourseCell, type Lesson, type Task } from '#lib/course/index.ts';
import { FINDING_TASKS, drawPicture } from '#lib/findings/index.ts';
import {
	NOTHING_KNOWN,
	isReady,
	nextTask,
	observe,
	type Credit,
	type Difficulty,
	type Mastery,
	type Outcome,
	type TaskFacts
} from '#lib/mastery/index.ts';
import { problemsOf, shippedScenarios } from './shipped.ts';
import { tasksOf, type Dice } from './learner.ts';

/** One ask of a course task, as far as a simulated learner cares. */
export interface PracticeAsk {
	readonly cell: string;
	/** Slips that can be made in it, or what a picture asks to know. */
	readonly skills: readonly string[];
	readonly kind: 'number' | 'decision' | 'picture';
	/** Share of the draws of each right answer; empty for what is not drawn from a list. */
	readonly keys: ReadonlyMap<string, number>;
}

/** A task of the course with its asks. */
export interface PracticeTask extends TaskFacts {
	readonly asks: readonly PracticeAsk[];
}

/** A typed number is hit by chance in at most 2 of 100 tries (learning-and-records.md 6.2: 1.7 % over 2–8 m). */
const BLIND_NUMBER = 0.02;
const BLIND_DECISION = 0.5;
const NO_KEYS: ReadonlyMap<string, number> = new Map();
const PROBLEMS_EACH = 20;
const PICTURES_EACH = 400;

function siteAsks(): ReadonlyMap<string, PracticeAsk> {
	const asks = new Map<string, PracticeAsk>();
	for (const scenario of shippedScenarios()) {
		const tasks = problemsOf(scenario, PROBLEMS_EACH).flatMap((problem) => tasksOf(problem, () => true));
		for (const ask of scenario.asks) {
			const slips = tasks.filter((task) => task.ask.id === ask.id).flatMap((task) => task.mistakes.singles.flatMap((one) => one.slips));
			asks.set(`${scenario.id}.${ask.id}`, {
				cell: ask.cell,
				skills: ask.kind === 'number' ? [...new Set(slips)].sort() : ['decide'],
				kind: ask.kind === 'number' ? 'number' : 'decision',
				keys: NO_KEYS
			});
		}
	}
	return asks;
}

/** What is to be marked and chosen in a picture, as one text. */
function keyOf(picture: string, seed: number): string {
	const { key } = drawPicture(picture, seed);
	return `${key.marks.join('+')} ${key.choice}`;
}

/** How often each answer is the right one. */
function keysOf(picture: string): ReadonlyMap<string, number> {
	const keys = new Map<string, number>();
	for (let seed = 0; seed < PICTURES_EACH; seed += 1) {
		const key = keyOf(picture, seed);
		keys.set(key, (keys.get(key) ?? 0) + 1 / PICTURES_EACH);
	}
	return keys;
}

function practiceTask(task: Task, sites: ReadonlyMap<string, PracticeAsk>): PracticeTask {
	const { id, cell, difficulty } = task;
	const asks: PracticeAsk[] = [];
	if (task.kind === 'site') {
		for (const ask of task.asks) {
			const found = sites.get(`${task.scenario}.${ask}`);
			if (found === undefined) throw new Error(`${task.scenario} has no ask ${ask}`);
			asks.push(found);
		}
	} else {
		const finding = FINDING_TASKS.find((one) => one.id === task.picture);
		if (finding === undefined) throw new Error(`there is no picture ${task.picture}`);
		asks.push({ cell, skills: finding.skills, kind: 'picture', keys: keysOf(task.picture) });
	}
	const credits = [...new Set(asks.map((ask) => ask.cell))];
	const skills = [...new Set(asks.filter((ask) => ask.cell === cell).flatMap((ask) => ask.skills))];
	return { id, cell, credits, skills, kind: task.kind === 'site' ? task.scenario : task.picture, difficulty, asks };
}

/** The course as simulated learners meet it. */
export interface SimulatedCourse {
	readonly lessons: readonly { readonly lesson: Lesson | undefined; readonly cell: CourseCell; readonly tasks: readonly PracticeTask[] }[];
	readonly checks: readonly PracticeTask[];
}

/** @returns the tasks of all lessons and checks. @throws if a task names what there is not. */
export function simulatedCourse(): SimulatedCourse {
	const sites = siteAsks();
	const lessons = Object.entries(TASKS_OF).map(([id, tasks]) => {
		const [first] = tasks;
		if (first === undefined) throw new Error(`lesson ${id} has no task`);
		return {
			lesson: LESSONS.find((one) => one.id === id),
			cell: first.cell,
			tasks: tasks.map((task) => practiceTask(task, sites))
		};
	});
	return { lessons, checks: CHECK_TASKS.map((task) => practiceTask(task, sites)) };
}

/** What a simulated person can do. */
export interface Person {
	/** How likely an ask of middle difficulty is right at first. */
	readonly start: number;
	/** How likely it is after much practice. */
	readonly top: number;
	/** Share of what is missing that one problem teaches. */
	readonly rate: number;
	/** Slips, or what a picture asks to know, that are got wrong every time. */
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
	readonly person: Person;
	readonly roll: Dice;
	readonly seed: number;
	mastery: Mastery;
	/** Problems given. */
	given: number;
	/** Problems worked, by cell. */
	readonly worked: Map<string, number>;
	/** Neighbours of one kind. */
	alike: number;
	readonly seeds: Set<number>;
}

export function begin(person: Person, roll: Dice, seed: number): Run {
	return { person, roll, seed, mastery: NOTHING_KNOWN, given: 0, worked: new Map(), alike: 0, seeds: new Set() };
}

/** One draw of an ask: how likely chance gives its answer, and whether a guesser does. */
function drawnAsk(run: Run, ask: PracticeAsk): { readonly guess: number; readonly guessed: boolean } {
	if (ask.kind === 'number') return { guess: BLIND_NUMBER, guessed: chance(run.roll, BLIND_NUMBER) };
	if (ask.kind === 'decision') return { guess: BLIND_DECISION, guessed: chance(run.roll, BLIND_DECISION) };
	const keys = [...ask.keys];
	let left = run.roll(PICTURES_EACH) / PICTURES_EACH;
	const drawn = keys.find(([, share]) => (left -= share) < 0) ?? keys[0];
	const commonest = keys.reduce((most, key) => (key[1] > most[1] ? key : most), ['', 0] as const);
	return { guess: drawn?.[1] ?? 1, guessed: drawn?.[0] === commonest[0] };
}

/** @returns what each ask of a task says. A decision is left out when a number of the task was wrong. */
export function creditsOf(run: Run, task: PracticeTask): readonly Credit[] {
	const { person, roll, worked } = run;
	const credits: Credit[] = [];
	for (const ask of task.asks) {
		if (ask.kind === 'decision' && credits.some((credit) => !credit.right)) continue;
		const { guess, guessed } = drawnAsk(run, ask);
		const able = (): boolean => chance(roll, ability(person, worked.get(ask.cell) ?? 0, task.difficulty));
		const never = ask.skills.some((skill) => person.always?.has(skill));
		const right = !never && (person.guesses ? guessed : able());
		// The decision rests on numbers that would have had to be guessed as well.
		const byChance = ask.kind === 'decision' ? guess * credits.reduce((product, one) => product * (one.guess ?? 1), 1) : guess;
		credits.push({ cell: ask.cell, skills: ask.skills, right, guess: byChance });
	}
	return credits;
}

/** Counts a problem as worked: something is learnt from it whether it was right or not. */
export function learn(run: Run, cells: readonly string[]): void {
	for (const cell of cells) run.worked.set(cell, (run.worked.get(cell) ?? 0) + 1);
}

/** One problem of practice, and the second try after a wrong one. @returns whether all of it was right at once, alone. */
export function practise(run: Run, tasks: readonly PracticeTask[], cell: string, day: string): boolean {
	const before = run.mastery.last?.kind;
	const next = nextTask(tasks, run.mastery, { cells: [cell] }, { seed: run.seed, nth: run.given });
	const task = tasks.find((one) => one.id === next.task.id);
	if (task === undefined) throw new Error(`${next.task.id} is none of the tasks`);
	run.given += 1;
	run.seeds.add(next.seed);
	if (task.kind === before) run.alike += 1;

	const helped = run.roll(100) < (run.person.helped ?? 0);
	const about: Omit<Outcome, 'aided' | 'credits'> = { task: task.id, kind: task.kind, difficulty: task.difficulty, day };
	const withHelp = (): readonly Credit[] =>
		task.asks.map(({ cell: of, skills }) => ({ cell: of, skills, right: run.roll(100) < RIGHT_WITH_HELP }));
	const credits = helped ? withHelp() : creditsOf(run, task);
	run.mastery = observe(run.mastery, { ...about, aided: helped, credits });
	learn(run, task.credits);
	const right = credits.every((credit) => credit.right);
	if (!right && !helped) run.mastery = observe(run.mastery, { ...about, aided: true, credits: withHelp() });
	return right && !helped;
}

/** Practises a cell until it is ready. @returns how many problems it took, or undefined if not within `most`. */
export function practiseToReady(run: Run, tasks: readonly PracticeTask[], cell: string, most: number, day: string): number | undefined {
	for (let count = 1; count <= most; count += 1) {
		practise(run, tasks, cell, day);
		if (isReady(run.mastery, cell)) return count;
	}
	return undefined;
}
