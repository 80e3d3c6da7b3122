import type { RequestHandler } from './$types';
import { answer, database, refusal, setStates, wrongMethod } from '#lib/server/index.ts';

const NOT_FOUND = { field: 'set', problem: 'is not among your practice sets', remedy: 'give the id of a set that you may see' };

/** Where everyone is in a set. With the stamp of what the page has already: 204 while nothing is new. */
export const GET: RequestHandler = async ({ params, locals: { who }, url }) => {
	const states = who.kind === 'guest' ? null : await setStates(await database(), who, params.set, new Date());
	if (states === null) return refusal(404, [NOT_FOUND]);
	if (states.stamp === url.searchParams.get('stamp')) return new Response(null, { status: 204, headers: { 'cache-control': 'no-store' } });
	return answer(200, JSON.stringify(states));
};

export const fallback: RequestHandler = ({ request }) => wrongMethod(request.method, 'GET');
