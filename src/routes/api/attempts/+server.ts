import type { RequestHandler } from '@sveltejs/kit';
import { answer, database, readBody, receiveAnswers, refusal, shippedVersions, wrongMethod } from '#lib/server/index.ts';

/** Marks and stores an answered problem; the reply comes when it is on the disk. */
export const POST: RequestHandler = async ({ request, cookies, url, locals }) => {
	const body = await readBody(request);
	if (body.kind === 'refused') return refusal(body.status, body.problems);
	const answerer = locals.who.kind === 'person' ? locals.who.answerer : null;
	const visitor = { cookies, secure: url.protocol === 'https:', answerer };
	const receipt = await receiveAnswers(await database(), visitor, body.value, shippedVersions, new Date());
	if (receipt.kind === 'stored') {
		return answer(receipt.status, `{"attempt":${JSON.stringify(receipt.attempt)},"grades":${receipt.grades}}`);
	}
	const { retryAfter } = receipt;
	return refusal(receipt.status, receipt.problems, retryAfter === undefined ? {} : { 'retry-after': String(retryAfter) });
};

export const fallback: RequestHandler = ({ request }) => wrongMethod(request.method, 'POST');
