import { credentialFile } from '../../../../handing-out/credential-file.ts';
import { learnerSelf } from '../../../../handing-out/learner-self.ts';
import type { RequestHandler } from './$types';

/** The open credential of one's own record, as a signed token. */
export const GET: RequestHandler = ({ locals, params, url }) => {
	const who = learnerSelf(locals.who);
	return credentialFile(who, { person: who.id, record: params.record }, url);
};
