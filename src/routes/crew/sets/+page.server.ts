import { database, setsOverview } from '#lib/server/index.ts';
import { staffOnly } from '../staff.ts';
import type { PageServerLoad } from './$types';

/** The sets that this person may see, with to whom they are assigned and how far these are. */
export const load: PageServerLoad = async ({ locals }) => {
	const who = staffOnly(locals.who);
	const sets = await setsOverview(await database(), who, new Date());
	return {
		sets: sets.map(({ id, name, content, archivedAt, assigned, counts, madeBy }) => ({
			id,
			name,
			count: content.count,
			scenarios: content.scenarios.length,
			away: archivedAt !== null,
			assigned,
			counts,
			/** Of a colleague; null for the own ones. */
			maker: madeBy.id === who.id ? null : madeBy.name
		}))
	};
};
