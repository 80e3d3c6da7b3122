import type { RequestHandler } from './$types';
import { answer, database, learnerOf, readBody, receiveEvent, refusal, shippedVersions, wrongMethod } from '#lib/server/index.ts';

/** Says for whom a browser kept an event that it may send much later. */
const MEANT = 'underfoot-person';

/** Judges and stores what a signed-in learner did in a lesson; the reply comes when it is on the disk. */
export const POST: RequestHandler = async ({ request, locals }) => {
	const learner = learnerOf(locals.who, request.headers.get(MEANT));
	if (learner instanceof Response) return learner;
	const body = await readBody(request);
	if (body.kind === 'refused') return refusal(body.status, body.problems);
	const receipt = await receiveEvent(await database(), learner, body.value, shippedVersions, new Date());
	if (receipt.kind === 'stored') {
		const { counts, grades, state } = receipt;
		return answer(receipt.status, JSON.stringify({ counts, grades, state }));
	}
	const { retryAfter } = receipt;
	return refusal(receipt.status, receipt.problems, retryAfter === undefined ? {} : { 'retry-after': String(retryAfter) });
};

export const fallback: RequestHandler = ({ request }) => wrongMethod(request.method, 'POST');
