import type { Handle } from '@sveltejs/kit/hooks';

/** Sets the language of the page before anything is rendered. */
export const handle: Handle = ({ event, resolve }) => {
	event.locals.language = 'en';
	return resolve(event, {
		transformPageChunk: ({ html }) => html.replace('%underfoot.lang%', event.locals.language)
	});
};
