import { database, readAskedList, trainingList } from '#lib/server/index.ts';
import { employerOf } from './asking.ts';
import type { PageServerLoad } from './$types';

/** Who is trained today: searched, filtered, sorted and paged on the server. */
export const load: PageServerLoad = async ({ locals, url }) => ({
	list: await trainingList(await database(), employerOf(locals.who), readAskedList(url.searchParams), new Date())
});
