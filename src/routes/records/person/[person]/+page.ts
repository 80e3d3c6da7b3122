import { recordMessages } from '#lib/text/index.ts';
import type { PageLoad } from './$types';

export const csr = false;

/** With the words of certificates: a record is told as a certificate tells it. */
export const load: PageLoad = async ({ data, parent }) => {
	const { m, language } = await parent();
	return { ...data, m: { ...m, ...(await recordMessages(language)) } };
};
