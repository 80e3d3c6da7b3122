import { redirect, error } from '@sveltejs/kit';
import { database, ownPath, rememberLanguage } from '#lib/server/index.ts';
import type { RequestHandler } from './$types';

/** How long a choice is remembered, seconds: 400 days, the longest that browsers keep a cookie. */
const REMEMBERED = 400 * 24 * 60 * 60;

const LANGUAGES = ['en', 'es'] as const;

/** What can be chosen: the names of the fields, and their values. */
const CHOICES: Readonly<Record<string, readonly string[]>> = {
	language: LANGUAGES,
	theme: ['system', 'light', 'dark']
};

/** Remembers the visitor's language and colours, of a person the language on all devices, and goes back to where they were chosen. Works without scripts. */
export const POST: RequestHandler = async ({ request, cookies, url, locals }) => {
	const form = await request.formData();
	for (const [name, values] of Object.entries(CHOICES)) {
		const chosen = form.get(name);
		if (chosen === null) continue;
		const value = values.find((one) => one === chosen);
		if (value === undefined) error(400, `${name} must be one of ${values.join(', ')}`);
		cookies.set(name, value, { path: '/', httpOnly: true, sameSite: 'lax', secure: url.protocol === 'https:', maxAge: REMEMBERED });
	}
	const language = LANGUAGES.find((one) => one === form.get('language'));
	if (locals.who.kind === 'person' && language !== undefined) await rememberLanguage(await database(), locals.who.id, language);
	redirect(303, ownPath(form.get('to'), '/'));
};
