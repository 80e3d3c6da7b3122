import { redirect, error } from '@sveltejs/kit';
import type { RequestHandler } from './$types';

/** How long a choice is remembered, seconds: 400 days, the longest that browsers keep a cookie. */
const REMEMBERED = 400 * 24 * 60 * 60;

/** What can be chosen: the names of the fields, and their values. */
const CHOICES: Readonly<Record<string, readonly string[]>> = {
	language: ['en', 'es'],
	theme: ['system', 'light', 'dark']
};

/** A path of this site, and nothing that a browser could take for another one. */
const OWN_PATH = /^\/(?![/\\])[^\\\s]*$/;

/** Remembers the visitor's language and colours, and goes back to where they were chosen. Works without scripts. */
export const POST: RequestHandler = async ({ request, cookies, url }) => {
	const form = await request.formData();
	for (const [name, values] of Object.entries(CHOICES)) {
		const chosen = form.get(name);
		if (chosen === null) continue;
		const value = values.find((one) => one === chosen);
		if (value === undefined) error(400, `${name} must be one of ${values.join(', ')}`);
		cookies.set(name, value, { path: '/', httpOnly: true, sameSite: 'lax', secure: url.protocol === 'https:', maxAge: REMEMBERED });
	}
	const to = form.get('to');
	redirect(303, typeof to === 'string' && OWN_PATH.test(to) ? to : '/');
};
