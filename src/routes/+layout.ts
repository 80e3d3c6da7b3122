import { messages } from '#lib/text/index.ts';
import type { LayoutLoad } from './$types';

/** The words of the page. They hold functions, so that they are loaded on both sides and never sent as data. */
export const load: LayoutLoad = async ({ data }) => ({ ...data, m: await messages(data.language) });
