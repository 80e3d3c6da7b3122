import { fail } from '@sveltejs/kit';
import { askList, database, LONGEST_ASKED, MOST_LINES, settingsOf } from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals }) => {
	const { name } = await settingsOf(await database(), employerOf(locals.who).organisation);
	return { organisation: name, most: MOST_LINES };
};

export const actions: Actions = {
	/** Holds the pasted list against the records. Nothing of it is kept. */
	async ask({ request, locals }) {
		const employer = employerOf(locals.who);
		const pasted = (await request.formData()).get('list');
		const text = typeof pasted === 'string' ? pasted : '';
		const answer = await askList(await database(), employer, text, new Date());
		if (answer.kind === 'refused') return fail(400, { refused: answer.why, text: text.slice(0, LONGEST_ASKED), answer: null });
		return { refused: null, text, answer };
	}
};
