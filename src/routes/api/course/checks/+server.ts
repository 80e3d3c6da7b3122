import type { RequestHandler } from './$types';
import { beginCheck, checkStart, database, learnerOf, readJson, refusal, tellCheck, wrongMethod } from '#lib/server/index.ts';

/** Begins a check, or goes on with the one that runs. */
export const POST: RequestHandler = async ({ request, locals }) => {
	const learner = learnerOf(locals.who);
	if (learner instanceof Response) return learner;
	const body = await readJson(request, checkStart);
	if (body.kind === 'refused') return refusal(body.status, body.problems);
	const { lesson, language } = body.value;
	return tellCheck(await beginCheck(await database(), learner, lesson, language, new Date()));
};

export const fallback: RequestHandler = ({ request }) => wrongMethod(request.method, 'POST');
