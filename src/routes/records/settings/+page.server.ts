import { fail } from '@sveltejs/kit';
import * as z from 'zod';
import { CHANGED_FIELDS, changeSettings, choices, database, listPassRules, readForm, settingsOf, typedIn } from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import type { Actions, PageServerLoad } from './$types';

const FORM = z.object(CHANGED_FIELDS);

export const load: PageServerLoad = async ({ locals }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const { name, rules, units, language, zone } = await settingsOf(db, employer.organisation);
	const passRule = (await listPassRules(db, employer)).find((one) => one.inUse);
	return { choices: choices(), now: { organisation: name, rules, units, language, zone }, passRule: { base: passRule?.base ?? '', own: passRule?.own ?? false } };
};

export const actions: Actions = {
	async default({ request, locals }) {
		const employer = employerOf(locals.who);
		const form = await request.formData();
		const read = readForm(form, FORM);
		if (read.kind === 'refused') return fail(400, { saved: false, problems: read.problems, typed: typedIn(form, Object.keys(CHANGED_FIELDS)) });
		const { organisation, ...chosen } = read.value;
		await changeSettings(await database(), employer, { ...chosen, name: organisation }, new Date());
		return { saved: true, problems: {}, typed: null };
	}
};
