import { loadBackdrop } from '#lib/scene/index.ts';
import { firstMessages } from '#lib/text/index.ts';
import type { PageLoad } from './$types';

/** The words for reading and answering, and the one backdrop; all others come behind the first paint. */
export const load: PageLoad = async ({ data, parent }) => {
	const { language } = await parent();
	const [m, backdrop] = await Promise.all([firstMessages(language), loadBackdrop(data.scenario.backdrop)]);
	return { ...data, m, backdrop };
};
