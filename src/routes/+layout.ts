import type { Language } from '#lib/quantity/index.ts';
import { firstMessages, messages, type Messages } from '#lib/text/index.ts';
import type { LayoutLoad } from './$types';

/** The page that is read and answered before all words are there. It brings its own; see its load. */
const FIRST_WORDS = '/learn/problem';

async function firstOnly(language: Language): Promise<Messages> {
	return (await firstMessages(language)) as Messages;
}

/**
 * The words of the page. They hold functions, so that they are loaded on both sides and never sent as data.
 * On the page of `FIRST_WORDS` they are the first ones only, for the error page in its place.
 */
export const load: LayoutLoad = async ({ data, route }) => {
	if (route.id !== FIRST_WORDS) return { ...data, m: await messages(data.language) };
	return { ...data, m: await firstOnly(data.language) };
};
