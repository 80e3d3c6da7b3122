import type { RequestHandler } from './$types';
import { answerItem, database, learnerOf, readBody, refusal, tellCheck, wrongMethod } from '#lib/server/index.ts';

/** Stores the answer to an item of the page at hand. */
export const POST: RequestHandler = async ({ request, locals, params }) => {
	const learner = learnerOf(locals.who);
	if (learner instanceof Response) return learner;
	const body = await readBody(request);
	if (body.kind === 'refused') return refusal(body.status, body.problems);
	return tellCheck(await answerItem(await database(), learner, params.check, body.value, new Date()));
};

export const fallback: RequestHandler = ({ request }) => wrongMethod(request.method, 'POST');
