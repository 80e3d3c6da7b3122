import { database, recentEvents, settingsOf } from '#lib/server/index.ts';
import { employerOf } from './asking.ts';
import type { PageServerLoad } from './$types';

/** How many events the start page shows. */
const SHOWN = 20;

export const load: PageServerLoad = async ({ locals }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const { name, zone } = await settingsOf(db, employer.organisation);
	return { organisation: name, zone, events: await recentEvents(db, employer, SHOWN) };
};
