import { error, fail, redirect } from '@sveltejs/kit';
import { acknowledgeTraining, courseBegun, database, ownRecordOf, type Person, type Who } from '#lib/server/index.ts';
import type { Actions, PageServerLoad } from './$types';

/** @returns the learner who asks. The table of who may do what has let nobody else come here; else nothing is found. */
function learnerIn(who: Who): Person {
	if (who.kind !== 'person' || who.role !== 'learner') error(404, 'Not Found');
	return who;
}

/** The learner's own copy, as it stands now. */
export const load: PageServerLoad = async ({ locals, url }) => {
	const who = learnerIn(locals.who);
	const db = await database();
	const record = await ownRecordOf(db, who, await courseBegun(db, who.id), new Date());
	return { record, did: url.searchParams.get('did') === 'acknowledged' };
};

export const actions: Actions = {
	async acknowledge({ request, locals }) {
		const who = learnerIn(locals.who);
		const record = String((await request.formData()).get('record') ?? '').slice(0, 64);
		const told = await acknowledgeTraining(await database(), who, record, locals.language, new Date());
		if (told.kind === 'not-found') return fail(400, { notThere: true });
		redirect(303, '/learn/record?did=acknowledged');
	}
};
