import { randomUUID } from 'node:crypto';
import type { Handle, HandleServerError, ServerInit } from '@sveltejs/kit/hooks';
import {
	chooseLanguage,
	closeDatabase,
	compressPage,
	database,
	giveGuestToken
} from '#lib/server/index.ts';

/** The languages that pages are written in; the first is for visitors who want none of them. */
const LANGUAGES = ['en', 'es'] as const;

/** How pages are coloured; the first follows the visitor's system. */
const THEMES = ['system', 'light', 'dark'] as const;

/** Where visitors answer site problems. */
const LEARN = /^\/learn(\/|$)/;

/** A server whose database cannot be opened does not start. */
export const init: ServerInit = async () => {
	await database();
	process.once('sveltekit:shutdown', () => void closeDatabase());
};

/** Chooses the language, makes the visitor known before the first answer, and compresses the page. */
export const handle: Handle = async ({ event, resolve }) => {
	const { cookies, locals, request, url } = event;
	locals.language = chooseLanguage(
		LANGUAGES,
		cookies.get('language'),
		request.headers.get('accept-language')
	);
	locals.theme = THEMES.find((theme) => theme === cookies.get('theme')) ?? THEMES[0];
	locals.who = { kind: 'guest' };
	if (LEARN.test(url.pathname)) giveGuestToken(cookies, url.protocol === 'https:');
	const response = await resolve(event, {
		transformPageChunk: ({ html }) => html.replace('%underfoot.lang%', locals.language).replace('%underfoot.theme%', locals.theme)
	});
	return compressPage(response, request.headers.get('accept-encoding'));
};

/** An error nobody foresaw is logged under an id; the visitor is told the id and nothing else. */
export const handleError: HandleServerError = ({ kind, error, event }) => {
	if (kind !== 'unknown') return;
	const id = randomUUID();
	console.error(id, event.request.method, event.url.pathname, error);
	return { message: id };
};
