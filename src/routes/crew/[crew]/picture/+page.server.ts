import { error, fail, redirect, type RequestEvent } from '@sveltejs/kit';
import {
	aimedSlips,
	AIMED_PROBLEMS,
	database,
	findOrganisation,
	LAST_ANSWERS,
	makeAimedSet,
	picturePage,
	readFilter,
	scenariosToChoose,
	scenarioVersion,
	setsOfCrew
} from '#lib/server/index.ts';
import { messages, staffMessages } from '#lib/text/index.ts';
import { titleOf } from '../../sets/choosing.ts';
import { staffOnly } from '../../staff.ts';
import type { Actions, PageServerLoad } from './$types';

/** What a crew gets wrong, for those who teach it. */
export const load: PageServerLoad = async ({ locals, params, url }) => {
	const who = staffOnly(locals.who);
	const db = await database();
	const toChoose = await scenariosToChoose(db, who);
	const shown = await picturePage(db, who, params.crew, url.searchParams, {
		toChoose,
		versionOf: (id, version) => scenarioVersion(db, who.organisation, id, version)
	});
	if (shown === null) error(404, 'Not Found');
	return {
		...shown,
		scenarios: toChoose.map((one) => ({ id: one.id, title: titleOf(one, locals.language) })),
		aim: { slips: aimedSlips(shown.picture.slips), problems: AIMED_PROBLEMS },
		last: LAST_ANSWERS
	};
};

/** Makes a set aimed at the slips that stand first, and shows it: there it is assigned. */
async function aim({ locals, params, url }: RequestEvent<{ crew: string }>) {
	const who = staffOnly(locals.who);
	const db = await database();
	const organisation = await findOrganisation(db, who.organisation);
	if (organisation === null) error(404, 'Not Found');
	const scenarios = await scenariosToChoose(db, who);
	const sets = await setsOfCrew(db, who, params.crew);
	const { filter } = readFilter(url.searchParams, { scenarios: scenarios.map(({ id }) => id), sets: sets.map(({ id }) => id), zone: organisation.zone });
	const [m, staff] = await Promise.all([messages(locals.language), staffMessages(locals.language)]);
	const done = await makeAimedSet(
		db,
		who,
		params.crew,
		filter,
		{ scenarios, units: organisation.units },
		(slips) => staff.crewPicture.aimName({ slips: m.common.list(slips.map((slip) => m.slips[slip].label)) }),
		new Date()
	);
	if (done.kind === 'not-found') error(404, 'Not Found');
	if (done.kind === 'made') redirect(303, `/crew/sets/${done.id}`);
	return fail(400, { aim: done.kind });
}

export const actions: Actions = { aim };
