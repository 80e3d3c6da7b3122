import type { RequestHandler } from './$types';
import { answer, currentGuest, database, findAttempt, refusal, toldAttempt, wrongMethod } from '#lib/server/index.ts';

/** An answer that this guest or person stored. One that is not there and one of somebody else read the same. */
export const GET: RequestHandler = async ({ params, cookies, url, locals }) => {
	const db = await database();
	const guest = locals.who.kind === 'person' ? locals.who.answerer : await currentGuest(db, cookies, url.protocol === 'https:');
	const attempt = guest === null ? null : await findAttempt(db, guest, params.id);
	if (attempt === null) {
		return refusal(404, [{ field: 'id', problem: 'is not among your stored answers', remedy: 'give the id of an answer stored by this browser' }]);
	}
	return answer(200, JSON.stringify(toldAttempt(attempt)));
};

export const fallback: RequestHandler = ({ request }) => wrongMethod(request.method, 'GET');
