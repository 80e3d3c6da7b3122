import { error } from '@sveltejs/kit';
import { database, findCheck, findOrganisation, personPage } from '#lib/server/index.ts';
import { messages } from '#lib/text/index.ts';
import { employerOf } from '../../../../asking.ts';
import { unitsOf } from '../../../../../learn/check/[lesson]/units.ts';
import { evidenceOf } from './evidence.server.ts';
import type { PageServerLoad } from './$types';

/** A try at a check: every question as it was drawn, what was answered, what is right; slips only where they are asked for. */
export const load: PageServerLoad = async ({ locals, params, url }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const page = await personPage(db, employer, params.person, new Date());
	const check = page === null ? null : await findCheck(db, params.person, params.check);
	if (page === null || check === null) error(404, 'Not Found');
	const units = unitsOf((await findOrganisation(db, employer.organisation))?.units);
	const m = await messages(locals.language);
	const why = url.searchParams.get('why') === '1';
	return {
		person: { id: page.id, name: page.name },
		id: check.id,
		check: { lesson: check.lesson, nth: check.nth, day: check.day, ended: check.end !== undefined, passed: check.end?.kind === 'passed' },
		why,
		items: check.results.map((result) => evidenceOf(result, { language: locals.language, units, m, why }))
	};
};
