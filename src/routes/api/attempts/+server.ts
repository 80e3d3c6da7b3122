import type { RequestHandler } from '@sveltejs/kit';
import { answer, database, learnerOf, readBody, receiveAnswers, refusal, scenariosFor, wrongMethod } from '#lib/server/index.ts';

/** Says for whom a browser kept an answer that it may send much later. */
const MEANT = 'underfoot-person';

/** The scenario that a body names, and its version; where it names none, there is none of that name. */
function scenarioIn(body: unknown): { readonly id: string; readonly version: number } {
	if (typeof body !== 'object' || body === null) return { id: '', version: 0 };
	const id = 'scenario' in body && typeof body.scenario === 'string' ? body.scenario : '';
	return { id, version: 'version' in body && typeof body.version === 'number' ? body.version : 0 };
}

/** Marks and stores an answered problem; the reply comes when it is on the disk. */
export const POST: RequestHandler = async ({ request, cookies, url, locals }) => {
	const body = await readBody(request);
	if (body.kind === 'refused') return refusal(body.status, body.problems);
	const { who } = locals;
	const meant = request.headers.get(MEANT);
	if (meant !== null) {
		const learner = learnerOf(who, meant);
		if (learner instanceof Response) return learner;
	}
	const db = await database();
	const person = who.kind === 'person' ? who : null;
	const visitor = { cookies, secure: url.protocol === 'https:', answerer: person?.answerer ?? null, who };
	const { id, version } = scenarioIn(body.value);
	const scenarios = await scenariosFor(db, person?.organisation ?? null, id, version);
	const receipt = await receiveAnswers(db, visitor, body.value, scenarios, new Date());
	if (receipt.kind === 'stored') {
		const counts = receipt.counts === undefined ? '' : `,"counts":${receipt.counts}`;
		return answer(receipt.status, `{"attempt":${JSON.stringify(receipt.attempt)},"grades":${receipt.grades}${counts}}`);
	}
	const { retryAfter } = receipt;
	return refusal(receipt.status, receipt.problems, retryAfter === undefined ? {} : { 'retry-after': String(retryAfter) });
};

export const fallback: RequestHandler = ({ request }) => wrongMethod(request.method, 'POST');
