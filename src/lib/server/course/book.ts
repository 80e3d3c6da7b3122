/** The course as server and browser see it, joined from lessons, tasks and shipped scenarios. */
import { FINDING_TASKS } from '#lib/findings/index.ts';
import { CHECK_TASKS, LESSONS, TASKS_OF, type LessonId, type Task } from '#lib/course/index.ts';
import { shippedScenario } from '#lib/course/shipped.ts';
import { skillOf, type CourseBook } from '#lib/flow/index.ts';
import { hardnessOf, type CheckTask, type TaskFacts } from '#lib/mastery/index.ts';
import type { Ask, Scenario } from '#lib/scenario/index.ts';

/** @returns the scenario of a task. @throws RangeError if it is not shipped: the course names only shipped ones. */
export function scenarioOf(task: Extract<Task, { kind: 'site' }>): Scenario {
	const scenario = shippedScenario(task.scenario);
	if (scenario === undefined) throw new RangeError(`task "${task.id}" names the scenario "${task.scenario}", which is not shipped`);
	return scenario;
}

/** @returns the asks of a task, in the scenario's order. @param scenario a version of it; the newest if nothing is said */
export function asksOf(task: Extract<Task, { kind: 'site' }>, scenario: Scenario = scenarioOf(task)): readonly Ask[] {
	return scenario.asks.filter((ask) => task.asks.includes(ask.id));
}

function skillsOf(task: Task): readonly string[] {
	if (task.kind === 'site') return [...new Set(asksOf(task).map(skillOf))];
	return FINDING_TASKS.find((one) => one.id === task.picture)?.skills ?? [];
}

function factsOf(task: Task): TaskFacts {
	return {
		id: task.id,
		cell: task.cell,
		credits: task.kind === 'site' ? [...new Set(asksOf(task).map((ask) => ask.cell))] : [task.cell],
		skills: skillsOf(task),
		kind: task.kind === 'site' ? task.scenario : task.picture,
		difficulty: task.difficulty
	};
}

let made: CourseBook | undefined;

/** @returns the course's book, made once: lessons in their order, with what their practice draws from. */
export function courseBook(): CourseBook {
	made ??= LESSONS.map(({ id, cell, example, halfDone }) => ({
		id,
		cell,
		steps: example.steps.length,
		halfDone: halfDone.map((one) => one.task),
		tasks: TASKS_OF[id].map(factsOf)
	}));
	return made;
}

let tasks: ReadonlyMap<string, Task> | undefined;

/** @returns the task of an id, of practice or of checks, or undefined. */
export function findTask(id: string): Task | undefined {
	tasks ??= new Map([...Object.values(TASKS_OF).flat(), ...CHECK_TASKS].map((task) => [task.id, task]));
	return tasks.get(id);
}

/** @returns true if the text is the id of a lesson. */
export function isLesson(id: string): id is LessonId {
	return LESSONS.some((lesson) => lesson.id === id);
}

/** Steps that a check's task counts as in the measure of hardness, by the difficulty of what it asks. @reason author's guess: a check asks one ask alone, of which a scenario's own count of steps says little */
const STEPS: Readonly<Record<TaskFacts['difficulty'], number>> = { easy: 2, middle: 4, hard: 7 };

/** About what share of a scenario's draws fails: by the weights of its aims. */
function failsShareOf(scenario: Scenario): number {
	const all = scenario.aims.reduce((sum, aim) => sum + aim.weight, 0);
	const passing = scenario.aims.filter((aim) => aim.fails === 'nothing').reduce((sum, aim) => sum + aim.weight, 0);
	return 1 - passing / all;
}

function checkFactsOf(task: Task): CheckTask {
	const common = { id: task.id, cell: task.cell, difficulty: task.difficulty };
	if (task.kind === 'finding') {
		const drivers = { steps: STEPS[task.difficulty], decoys: 0, unitChange: false, signChange: false };
		return { ...common, hardness: hardnessOf(drivers), source: task.picture };
	}
	const scenario = scenarioOf(task);
	const decides = asksOf(task).some((ask) => ask.kind === 'decision');
	return {
		...common,
		hardness: hardnessOf({ ...scenario.drivers, steps: STEPS[task.difficulty] }),
		source: scenario.id,
		...(decides ? { failsShare: failsShareOf(scenario) } : {})
	};
}

let checkTasks: readonly CheckTask[] | undefined;

/** @returns what checks are put together from, made once. */
export function checkBook(): readonly CheckTask[] {
	checkTasks ??= CHECK_TASKS.map(checkFactsOf);
	return checkTasks;
}
