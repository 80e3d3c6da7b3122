import { checkNow, checkpointNow, database, keepingPage, settingsOf } from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import type { Actions, PageServerLoad } from './$types';

/** How long a page waits for a check that was asked for, ms. @reason nobody thinks that the page is broken; a longer check goes on by itself */
const PATIENCE = 3000;

export const load: PageServerLoad = async ({ locals }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const { zone } = await settingsOf(db, employer.organisation);
	return { zone, ...(await keepingPage(db, employer)) };
};

export const actions: Actions = {
	async check({ locals }) {
		await checkNow(await database(), employerOf(locals.who), () => new Date(), PATIENCE);
	},
	async checkpoint({ locals }) {
		return { checkpoint: (await checkpointNow(await database(), employerOf(locals.who), new Date())).kind };
	}
};
