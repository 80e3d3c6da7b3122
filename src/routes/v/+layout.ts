import { recordMessages } from '#lib/text/index.ts';
import type { LayoutLoad } from './$types';

/** Read, and have forms only: they come without scripts. */
export const csr = false;

/** The words of the public pages beside those of all pages: the page for a code that leads nowhere has them too. */
export const load: LayoutLoad = async ({ parent }) => {
	const { m, language } = await parent();
	const { verifying, certificate } = await recordMessages(language);
	return { words: verifying, cautions: [verifying.caution, certificate.noProof, m.verdict.caution] };
};
