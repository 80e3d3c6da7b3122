import { fail } from '@sveltejs/kit';
import * as z from 'zod';
import { changeSettings, choices, database, readForm, SETTINGS_FIELDS, settingsOf, typedIn } from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import type { Actions, PageServerLoad } from './$types';

const FORM = z.object(SETTINGS_FIELDS);

export const load: PageServerLoad = async ({ locals }) => {
	const { name, ...chosen } = await settingsOf(await database(), employerOf(locals.who).organisation);
	return { choices: choices(), now: { ...chosen, organisation: name } };
};

export const actions: Actions = {
	async default({ request, locals }) {
		const employer = employerOf(locals.who);
		const form = await request.formData();
		const read = readForm(form, FORM);
		if (read.kind === 'refused') return fail(400, { saved: false, problems: read.problems, typed: typedIn(form, Object.keys(SETTINGS_FIELDS)) });
		const { organisation, ...chosen } = read.value;
		await changeSettings(await database(), employer, { ...chosen, name: organisation }, new Date());
		return { saved: true, problems: {}, typed: null };
	}
};
