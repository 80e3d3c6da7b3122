import { fail } from '@sveltejs/kit';
import * as z from 'zod';
import { changeSettings, choices, database, listPassRules, readForm, SETTINGS_FIELDS, settingsOf, typedIn } from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import type { Actions, PageServerLoad } from './$types';

/** The pass rule has a page of its own. */
const { passRule: _chosenElsewhere, ...FIELDS } = SETTINGS_FIELDS;
const FORM = z.object(FIELDS);

export const load: PageServerLoad = async ({ locals }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const { name, passRule: _id, ...chosen } = await settingsOf(db, employer.organisation);
	const passRule = (await listPassRules(db, employer)).find((one) => one.inUse);
	return { choices: choices(), now: { ...chosen, organisation: name }, passRule: { base: passRule?.base ?? '', own: passRule?.own ?? false } };
};

export const actions: Actions = {
	async default({ request, locals }) {
		const employer = employerOf(locals.who);
		const form = await request.formData();
		const read = readForm(form, FORM);
		if (read.kind === 'refused') return fail(400, { saved: false, problems: read.problems, typed: typedIn(form, Object.keys(FIELDS)) });
		const { organisation, ...chosen } = read.value;
		await changeSettings(await database(), employer, { ...chosen, name: organisation }, new Date());
		return { saved: true, problems: {}, typed: null };
	}
};
