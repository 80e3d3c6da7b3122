import { fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import {
	choices,
	codeField,
	database,
	emailField,
	field,
	newPasswordField,
	passwordProblem,
	readForm,
	SETTINGS_FIELDS,
	setUpOrganisation,
	startSession,
	typedIn,
	type FieldProblems
} from '#lib/server/index.ts';
import type { Actions, PageServerLoad } from './$types';

const FORM = z.object({ code: codeField, ...SETTINGS_FIELDS, name: field.name, email: emailField, password: newPasswordField });

/** What stands in the form again after a refusal: all but the password. */
const KEPT = ['code', ...Object.keys(SETTINGS_FIELDS), 'name', 'email'];

export const load: PageServerLoad = ({ locals }) => {
	const offered = choices();
	return {
		choices: offered,
		first: { language: locals.language, zone: 'UTC', units: 'metric', rules: offered.rules[0]?.id ?? '', passRule: offered.passRules[0] ?? '' }
	};
};

export const actions: Actions = {
	async default({ request, cookies, url, getClientAddress }) {
		const form = await request.formData();
		const typed = typedIn(form, KEPT);
		const refuse = (problems: FieldProblems, wait: number | null = null) => fail(wait === null ? 400 : 429, { problems, typed, wait });
		const read = readForm(form, FORM);
		if (read.kind === 'refused') return refuse(read.problems);
		const { code, name, email, password, organisation, ...chosen } = read.value;
		const weak = passwordProblem(password, [name, email, organisation]);
		if (weak !== null) return refuse({ password: weak });
		const db = await database();
		const now = new Date();
		const result = await setUpOrganisation(
			db,
			{ code, settings: { ...chosen, name: organisation }, person: { name, email, password } },
			getClientAddress(),
			now
		);
		if (result.kind === 'refused') {
			if (result.why === 'wait') return refuse({}, result.retryAfter);
			return refuse(result.why === 'code' ? { code: 'code' } : { email: 'email-taken' });
		}
		await startSession(db, cookies, url.protocol === 'https:', result.person, now);
		redirect(303, '/records');
	}
};
