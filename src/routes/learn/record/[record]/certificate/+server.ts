import { certificatePdf } from '../../../../handing-out/certificate-pdf.ts';
import { learnerSelf } from '../../../../handing-out/learner-self.ts';
import type { RequestHandler } from './$types';

/** The certificate of one's own record, as PDF. */
export const GET: RequestHandler = ({ locals, params, url }) => {
	const who = learnerSelf(locals.who);
	return certificatePdf(who, { person: who.id, record: params.record }, url, locals.language);
};
