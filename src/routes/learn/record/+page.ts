import { recordMessages } from '#lib/text/index.ts';
import type { PageLoad } from './$types';

export const csr = false;

/** With the words of records, which no other page of learners loads. */
export const load: PageLoad = async ({ data, parent }) => {
	const { m, language } = await parent();
	return { ...data, m: { ...m, ...(await recordMessages(language)) } };
};
