import { describe, expect, test } from 'vitest';
import { CHECK_TASKS, COURSE, LESSONS, LESSON_IDS, NOT_COVERED, TASKS_OF, type SiteTask, type Task } from '#lib/course/index.ts';
import { shippedScenario, shippedScenarios } from '#lib/course/shipped.ts';
import { FINDING_TASKS } from '#lib/findings/index.ts';
import { DIFFICULTIES } from '#lib/mastery/index.ts';
import type { Ask } from '#lib/scenario/index.ts';
import { LANGUAGES, messages } from '#lib/text/index.ts';

const all: readonly Task[] = [...Object.values(TASKS_OF).flat(), ...CHECK_TASKS];
const sites = (tasks: readonly Task[]): readonly SiteTask[] => tasks.filter((task) => task.kind === 'site');

function asksOf(task: SiteTask): readonly Ask[] {
	const scenario = shippedScenario(task.scenario);
	if (scenario === undefined) throw new RangeError(`${task.scenario} is not shipped`);
	return task.asks.map((id) => {
		const ask = scenario.asks.find((one) => one.id === id);
		if (ask === undefined) throw new RangeError(`${task.scenario} has no ask ${id}`);
		return ask;
	});
}

describe('tasks', () => {
	test('have ids of their own', () => {
		expect(new Set(all.map((task) => task.id)).size).toBe(all.length);
	});

	test('ask what their scenario asks, in its order, and a decision only with its numbers', () => {
		for (const task of sites(all)) {
			const asks = asksOf(task);
			const order = shippedScenario(task.scenario)?.asks.map((ask) => ask.id).filter((id) => task.asks.includes(id));
			expect([task.id, order]).toEqual([task.id, [...task.asks]]);
			for (const ask of asks) if (ask.kind === 'decision') expect(task.asks).toEqual(expect.arrayContaining([...ask.with]));
		}
	});

	test('credit the cell that they are for', () => {
		for (const task of sites(all)) expect([task.id, asksOf(task).map((ask) => ask.cell)]).toEqual([task.id, expect.arrayContaining([task.cell])]);
	});

	test('are no harder than their whole site', () => {
		for (const task of sites(all)) {
			const whole = shippedScenario(task.scenario)?.difficulty ?? 'easy';
			expect([task.id, DIFFICULTIES.indexOf(task.difficulty) <= DIFFICULTIES.indexOf(whole)]).toEqual([task.id, true]);
		}
	});

	test('of pictures take the picture’s own difficulty', () => {
		for (const task of all) {
			if (task.kind === 'finding') expect(FINDING_TASKS.find((one) => one.id === task.picture)?.difficulty).toBe(task.difficulty);
		}
	});
});

describe('practice', () => {
	test.each(LESSON_IDS)('of %s is for its cell, of three kinds or as many as there are, and of two difficulties', (id) => {
		const tasks = TASKS_OF[id];
		const cell = LESSONS.find((lesson) => lesson.id === id)?.cell;
		expect(tasks.every((task) => task.cell === cell)).toBe(true);
		const there = tasks.some((task) => task.kind === 'finding') ? 3 : shippedScenarios().filter(({ asks }) => asks.some((ask) => ask.cell === cell)).length;
		expect(new Set(tasks.map((task) => (task.kind === 'site' ? task.scenario : task.picture))).size).toBeGreaterThanOrEqual(Math.min(3, there));
		expect(new Set(tasks.map((task) => task.difficulty)).size).toBeGreaterThanOrEqual(2);
	});

	test('comes to every shipped scenario and every picture', () => {
		const practised = Object.values(TASKS_OF).flat();
		expect(shippedScenarios().filter(({ id }) => !sites(practised).some((task) => task.scenario === id)).map(({ id }) => id)).toEqual([]);
		const pictures = practised.flatMap((task) => (task.kind === 'finding' ? [task.picture] : []));
		expect(pictures.toSorted()).toEqual(FINDING_TASKS.map((task) => task.id).toSorted());
	});
});

describe('checks', () => {
	test('ask each number alone, each decision with its numbers, each picture but one that can be guessed: once', () => {
		const wanted = [
			...shippedScenarios().flatMap(({ id, asks }) =>
				asks.map((ask) => `${id}: ${(ask.kind === 'decision' ? [...ask.with, ask.id] : [ask.id]).join('+')} for ${ask.cell}`).filter((one) => one !== 'deck-stripping: force for force-and-limits')
			),
			...FINDING_TASKS.filter((task) => task.id !== 'moment-now').map((task) => `${task.id} for ${task.kind === 'moment' ? 'stages' : 'decisions'}`)
		];
		const asked = CHECK_TASKS.map((task) =>
			task.kind === 'site' ? `${task.scenario}: ${task.asks.join('+')} for ${task.cell}` : `${task.picture} for ${task.cell}`
		);
		expect(asked.toSorted()).toEqual(wanted.toSorted());
	});

	test('take decisions as hard as their whole site', () => {
		for (const task of sites(CHECK_TASKS)) {
			if (task.cell === 'decisions') expect([task.id, task.difficulty]).toEqual([task.id, shippedScenario(task.scenario)?.difficulty]);
		}
	});
});

describe('the course', () => {
	test('is named by its scope and says what it does not treat, in every language', async () => {
		expect(COURSE).toMatchObject({ id: 'lanyard-orientation', version: 1, scope: 'lanyard-with-energy-absorber' });
		for (const language of LANGUAGES) {
			const { course } = (await messages(language)).lessons;
			expect(course.title.toLowerCase()).toContain(course.scope.toLowerCase());
			expect(Object.keys(course.notCovered).toSorted()).toEqual([...NOT_COVERED].toSorted());
		}
	});
});
