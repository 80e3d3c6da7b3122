import { loadBackdrop } from '#lib/scene/index.ts';
import { firstMessages } from '#lib/text/index.ts';
import type { PageLoad } from './$types';

/** The words of the problem, in the language of the set, and its backdrop. */
export const load: PageLoad = async ({ data }) => {
	const { shown } = data;
	const [words, backdrop] = await Promise.all([firstMessages(data.inLanguage), shown === null ? undefined : loadBackdrop(shown.scenario.backdrop)]);
	return { ...data, words, backdrop };
};
