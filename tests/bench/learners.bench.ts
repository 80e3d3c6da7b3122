/**
 * Who becomes ready, after how many problems, and how long a newcomer's course is: simulated people, seeded, on the
 * tasks of the course. What a person can do is an assumption of ours (`PEOPLE`); no figure here is about real people.
 * Rules: learning-and-records.md 5.1, DESIGN 6.
 */
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { dice } from './simulated/learner.ts';
import { orientation, problemsIn, type Course } from './simulated/orientation.ts';
import { alwaysWrong, askedIn, begin, practiseToReady, simulatedCourse, type Person, type SimulatedCourse } from './simulated/practice.ts';

const SEED = 20_261_126;
const MOST = 200;
const PEOPLE_EACH = 200;
const CHEATS = 4000;
const NEWCOMERS = 500;
const MINUTES = 2;
const DAY = '2026-03-02';

/** Right in 6 of 10 before the shown example of a lesson, in 3 of 4 after it, in 95 of 100 after five problems. */
const FAST: Person = { start: 0.6, top: 0.96, rate: 0.5 };
/** Right in 45 of 100 before it, in 6 of 10 after it, in 95 of 100 after ten problems. */
const MIDDLING: Person = { start: 0.45, top: 0.96, rate: 0.35 };
const SLOW: Person = { start: 0.15, top: 0.92, rate: 0.08 };
const fixed = (p: number): Person => ({ start: p, top: p, rate: 0 });
const GUESSER: Person = { ...fixed(0.5), guesses: true };

const PEOPLE: readonly (readonly [name: string, person: Person])[] = [
	['fast', FAST],
	['middling', MIDDLING],
	['slow', SLOW],
	['always right in 95 of 100', fixed(0.95)],
	['always right in 70 of 100', fixed(0.7)],
	['always right in 50 of 100', fixed(0.5)],
	['leaves the margin out', { ...FAST, always: new Set(['margin-left-out']) }],
	['ignores the offset', { ...FAST, always: new Set(['offset-ignored']) }]
];

function shown(name: string, value: number, unit: string): Figure {
	return { name, value, unit, goal: '–', holds: true };
}

function atMost(name: string, value: number, goal: number, unit: string): Figure {
	return { name, value, unit, goal: goal === 0 ? '0' : `≤ ${goal} ${unit}`, holds: value <= goal };
}

function atLeast(name: string, value: number, goal: number): Figure {
	return { name, value, unit: '%', goal: `≥ ${goal} %`, holds: value >= goal };
}

/** The value below which a share of the values lies; never-endings count as infinitely many. */
function quantile(values: readonly number[], share: number): number {
	const sorted = [...values].sort((a, b) => a - b);
	return sorted[Math.min(Math.floor(share * sorted.length), sorted.length - 1)] ?? NaN;
}

/** Problems to ready of many like this one, cell by cell; Infinity where it was not ready within `MOST`. */
function toReady(course: SimulatedCourse, person: Person, stream: number): ReadonlyMap<string, readonly number[]> {
	const roll = dice(SEED + stream);
	const found = new Map<string, readonly number[]>();
	for (const lesson of course.book) {
		const counts: number[] = [];
		for (let i = 0; i < PEOPLE_EACH; i += 1) {
			counts.push(practiseToReady(begin(course, person, roll, i), lesson, MOST, DAY) ?? Infinity);
		}
		found.set(lesson.cell, counts);
	}
	return found;
}

function share(counts: readonly number[], within: number): number {
	return (100 * counts.filter((count) => count <= within).length) / counts.length;
}

/** Cells in which every task needs what this person always gets wrong. */
function closedCells(course: SimulatedCourse, { always }: Person): ReadonlySet<string> {
	const closed = course.book.filter(({ cell, tasks }) => tasks.every((task) => alwaysWrong(askedIn(course, task.id), always, cell)));
	return new Set(closed.map(({ cell }) => cell));
}

/** Cells in which some task does. */
function touchedCells(course: SimulatedCourse, { always }: Person): ReadonlySet<string> {
	const touched = course.book.filter(({ tasks }) => tasks.some((task) => alwaysWrong(askedIn(course, task.id), always)));
	return new Set(touched.map(({ cell }) => cell));
}

/** Ready within so many problems, over all cells, in percent. */
function overall(found: ReadonlyMap<string, readonly number[]>, within: number): number {
	return share([...found.values()].flat(), within);
}

function people(course: SimulatedCourse): Figure[] {
	return PEOPLE.flatMap(([name, person], stream) => {
		const closed = closedCells(course, person);
		const touched = touchedCells(course, person);
		const found = toReady(course, person, stream);
		const rows = [...found].flatMap(([cell, counts]) => {
			const ready = `${name} · ${cell}: ready within ${MOST} problems`;
			const learns = person.rate > 0 && !touched.has(cell);
			const median = quantile(counts, 0.5);
			return [
				closed.has(cell)
					? atMost(ready, share(counts, MOST), 0, '%')
					: learns
						? atLeast(ready, share(counts, MOST), 99)
						: shown(ready, share(counts, MOST), '%'),
				...(Number.isFinite(median) ? [shown(`${name} · ${cell}: problems to ready, median`, median, 'problems')] : [])
			];
		});
		if (person.rate > 0) return rows;
		return [6, 10, 20, MOST].map((within) => shown(`${name}, all cells: ready within ${within} problems`, overall(found, within), '%'));
	});
}

/** Of so many with one cell to practise, the share that is ever ready, in percent. */
function everReady(course: SimulatedCourse, person: Person, many: number, stream: number, cell: string): number {
	const roll = dice(SEED + stream);
	const lesson = course.book.find((one) => one.cell === cell);
	if (lesson === undefined) throw new Error(`no lesson teaches ${cell}`);
	let ready = 0;
	for (let i = 0; i < many; i += 1) {
		if (practiseToReady(begin(course, person, roll, i), lesson, MOST, DAY) !== undefined) ready += 1;
	}
	return (100 * ready) / many;
}

/**
 * A learner has 200 problems for the whole course, so that a guesser spends them in the first cell; here each cell has
 * its own guessers. Of the cells whose answers are typed, one stands for all.
 */
function cheats(course: SimulatedCourse): Figure[] {
	const abuser: Person = { ...GUESSER, helped: 80 };
	const tried: readonly (readonly [string, Person, string])[] = [
		['guesser', GUESSER, 'stages'],
		['guesser', GUESSER, 'required-clearance'],
		['guesser', GUESSER, 'decisions'],
		['help-abuser (4 of 5 with the working shown, else a guess)', abuser, 'stages'],
		['help-abuser (4 of 5 with the working shown, else a guess)', abuser, 'required-clearance'],
		['help-abuser (4 of 5 with the working shown, else a guess)', abuser, 'decisions']
	];
	return [
		...tried.map(([name, person, cell], i) =>
			atMost(`${name} · ${cell}: ready within ${MOST} problems`, everReady(course, person, CHEATS, 100 + i, cell), 0.1, '%')
		),
		atMost('help on every problem, half-skilled: ready', everReady(course, { ...fixed(0.5), helped: 100 }, PEOPLE_EACH, 200, 'free-fall'), 0, '%')
	];
}

function newcomers(course: SimulatedCourse, name: string, person: Person, stream: number, goal?: number): Figure[] {
	const roll = dice(SEED + stream);
	const courses: Course[] = [];
	let alike = 0;
	let across = 0;
	let repeated = 0;
	for (let i = 0; i < NEWCOMERS; i += 1) {
		const done = orientation(course, person, roll, i);
		if (done === undefined) continue;
		courses.push(done);
		alike += done.alike;
		across += done.alikeAcross;
		repeated += done.repeated;
	}
	const minutes = courses.map((one) => MINUTES * problemsIn(one));
	const median = (of: (one: Course) => number): number => quantile(courses.map(of), 0.5);
	const lessons = course.book.length * courses.length;
	const whole = `${name}: whole course at two minutes a problem, median`;
	return [
		goal === undefined ? shown(whole, quantile(minutes, 0.5), 'minutes') : atMost(whole, quantile(minutes, 0.5), goal, 'minutes'),
		shown(`${name}: the same with two minutes for each shown example, median`, quantile(courses.map((one) => MINUTES * (problemsIn(one) + one.examples)), 0.5), 'minutes'),
		shown(`${name}: whole course, 9 of 10 within`, quantile(minutes, 0.9), 'minutes'),
		atLeast(`${name}: course finished`, (100 * courses.length) / NEWCOMERS, 99),
		shown(`${name}: shown examples, median`, median((one) => one.examples), 'examples'),
		shown(`${name}: half-done examples, median`, median((one) => one.halfDone), 'problems'),
		shown(`${name}: practice, median`, median((one) => one.practice), 'problems'),
		shown(`${name}: lesson checks, median`, median((one) => one.lessonChecks), 'problems'),
		shown(`${name}: final check, median`, median((one) => one.finalCheck), 'problems'),
		shown(`${name}: lesson checks passed at the first try`, (100 * courses.reduce((sum, one) => sum + one.firstTries, 0)) / lessons, '%'),
		shown(`${name}: final check passed at the first try`, (100 * courses.filter((one) => one.finalAtOnce).length) / courses.length, '%'),
		atMost(`${name}: neighbours of one kind in a lesson's practice`, alike, 0, 'pairs'),
		shown(`${name}: neighbours of one kind where another lesson was gone on with, all ${NEWCOMERS} courses`, across, 'pairs'),
		atMost(`${name}: problems given twice to one learner`, repeated, 0, 'problems')
	];
}

const bench: Bench = {
	name: 'learners',
	run() {
		const course = simulatedCourse();
		return Promise.resolve([
			...newcomers(course, 'competent newcomer', FAST, 300, 180),
			...newcomers(course, 'middling newcomer', MIDDLING, 301),
			...newcomers(course, 'slow newcomer', SLOW, 302),
			...cheats(course),
			...people(course)
		]);
	}
};

export default bench;
