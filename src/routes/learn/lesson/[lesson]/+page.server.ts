import { error } from '@sveltejs/kit';
import { LESSONS, TASKS_OF, lessonFacts, lessonOf, type Task } from '#lib/course/index.ts';
import { shippedScenario } from '#lib/course/shipped.ts';
import { openLessons } from '#lib/flow/index.ts';
import { RULE_TABLES } from '#lib/rules/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { courseBook, courseOf, database, dayIn, factTables, findOrganisation, findTask, isLesson, type Person } from '#lib/server/index.ts';
import { messages } from '#lib/text/index.ts';
import type { PageServerLoad } from './$types';
import { captionParts, shownPlan } from './model/example.ts';

/**
 * A lesson: what it shows and asks, the scenarios that this is drawn from, the facts of the rule table, and where
 * the person stands. A guest's own place is on the device.
 */
export const load: PageServerLoad = async ({ params, locals: { who, language }, url }) => {
	if (!isLesson(params.lesson)) error(404, 'no-such-lesson');
	const lesson = lessonOf(params.lesson);
	const own = who.kind === 'guest' ? null : await ownOf(who);
	const tables = factTables(own?.rules ?? url.searchParams.get('rules'));
	const tasks = new Map<string, Task>(TASKS_OF[lesson.id].map((task) => [task.id, task]));
	for (const { task: id } of lesson.halfDone) {
		const task = findTask(id);
		if (task !== undefined) tasks.set(id, task);
	}
	const scenarios = scenariosFor([
		...[...tasks.values()].flatMap((task) => (task.kind === 'site' ? [task.scenario] : [])),
		...(lesson.example.kind === 'plans' ? lesson.example.plans.map((plan) => plan.scenario) : [])
	]);
	const first = lesson.example.kind === 'plans' ? shownPlan(scenarios, lesson.example.plans[0], language, await messages(language)) : undefined;
	return {
		lesson,
		/** The numbers that the lesson's ideas speak of. */
		ideaParts: captionParts(first, lesson.numbers),
		/** The lesson's place in the course, from 1. */
		nth: LESSONS.indexOf(lesson) + 1,
		book: courseBook(),
		tasks: Object.fromEntries(tasks),
		scenarios,
		facts: lessonFacts(lesson, tables.rules, tables.practice),
		rules: { id: tables.rules.id, jurisdiction: tables.rules.jurisdiction, scope: tables.rules.scope },
		/** A guest may look up another place's rules. */
		otherRules: own === null ? RULE_TABLES.map(({ id, jurisdiction, scope }) => ({ id, jurisdiction, scope })) : [],
		units: own === null ? unitsAt(tables.rules.jurisdiction) : own.units,
		own:
			own === null
				? null
				: {
						person: own.person,
						state: own.state,
						day: own.day,
						open: openLessons(courseBook(), own.state).includes(lesson.id),
						mayCheck: own.mayCheck
					}
	};
};

function scenariosFor(ids: readonly string[]): Readonly<Record<string, Scenario>> {
	return Object.fromEntries(
		[...new Set(ids)].map((id): [string, Scenario] => {
			const scenario = shippedScenario(id);
			if (scenario === undefined) throw new Error(`The course names the scenario "${id}", which is not shipped`);
			return [id, scenario];
		})
	);
}

/** The units that people use where a rule table holds. */
function unitsAt(jurisdiction: string): 'metric' | 'us' {
	return jurisdiction === 'us' ? 'us' : 'metric';
}

async function ownOf(who: Person) {
	const db = await database();
	const now = new Date();
	const organisation = await findOrganisation(db, who.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	const { state } = await courseOf(db, who.id, now);
	return {
		person: who.id,
		state,
		day: dayIn(organisation.zone, now),
		rules: organisation.rules,
		units: organisation.units === 'us' ? ('us' as const) : ('metric' as const),
		mayCheck: who.role === 'learner'
	};
}
