import { messages } from '#lib/text/index.ts';
import type { PageLoad } from './$types';

/** The words of the set's language, where it has one of its own. */
export const load: PageLoad = async ({ data }) => ({ ...data, m: await messages(data.language) });
