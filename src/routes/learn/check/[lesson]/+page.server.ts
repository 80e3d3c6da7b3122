import { error, redirect } from '@sveltejs/kit';
import type { Actions, PageServerLoad } from './$types';
import type { CoursePlace } from '#lib/course/index.ts';
import { beginCheck, courseBook, checkDesk, database, findOrganisation, findPerson, isLesson, toldCheck, type CheckView, type Person } from '#lib/server/index.ts';
import { messages } from '#lib/text/index.ts';
import { unitsOf } from './units.ts';
import { shownPage, toldItem } from './shown.server.ts';

/** A check as its learner may see it: what it asks while it runs, everything after its end. */
export const load: PageServerLoad = async ({ params, locals: { who } }) => {
	const lesson = placeOf(params.lesson);
	if (who.kind !== 'person') error(404, 'no-such-lesson');
	const db = await database();
	const desk = await checkDesk(db, who, lesson, new Date());
	const { view, rule } = desk;
	return {
		lesson,
		shut: desk.shut ?? null,
		supervisedAt: desk.supervised?.place ?? null,
		rule,
		tries: desk.tries,
		check: view === undefined ? null : await toldView(view, who)
	};
};

/** Begins the check, or goes on with the one that runs: a form, so that the button works before the page's scripts do. */
export const actions: Actions = {
	begin: async ({ params, locals: { who, language } }) => {
		const lesson = placeOf(params.lesson);
		if (who.kind !== 'person') error(404, 'no-such-lesson');
		await beginCheck(await database(), who, lesson, language, new Date());
		redirect(303, `/learn/check/${lesson}`);
	}
};

/** @returns the place in the course that an address names. */
function placeOf(id: string): CoursePlace {
	if (id === 'final' || isLesson(id)) return id;
	error(404, 'no-such-lesson');
}

async function toldView(view: CheckView, who: Person) {
	const db = await database();
	const organisation = await findOrganisation(db, who.organisation);
	const units = unitsOf(organisation?.units);
	const m = await messages(view.language);
	const trainer = view.supervision === null ? null : await findPerson(db, who.organisation, view.supervision.trainer);
	const { end } = view;
	return {
		told: toldCheck(view),
		language: view.language,
		page: end === undefined ? shownPage(view, units, m) : [],
		supervision: view.supervision === null ? null : { place: view.supervision.place, trainer: trainer?.name ?? '' },
		end:
			end === undefined || end.kind === 'more'
				? null
				: {
						kind: end.kind,
						why: end.kind === 'failed' ? end.why : [],
						lessons: end.kind === 'passed' ? [] : courseBook().filter((one) => end.cells.includes(one.cell)).map((one) => one.id),
						items: view.results.map((result) => toldItem(result, view.language, units, m))
					}
	};
}
