/** Sends an answer of a practice set; whatever goes wrong on the way is an outcome, never an error. */
import type { Grades } from '#lib/flow/index.ts';
import { isFields } from '../course/store.ts';

/** After this long without an answer of the server, the answer waits, ms. */
const PATIENCE = 10_000;

export type Reply =
	/** `counts`: false if it is kept as practice alone. */
	| { readonly kind: 'stored'; readonly counts: boolean; readonly grades: Grades }
	/** No signal, or the server is not well. */
	| { readonly kind: 'later' }
	/** The session is over, or somebody else's. */
	| { readonly kind: 'signed-out' }
	| { readonly kind: 'refused' };

type Body = Readonly<Record<string, unknown>>;

/**
 * @param body of `POST /api/attempts`, its place in the set with it. If the set does not take it any more, it is sent
 * once more without: as practice it is never lost.
 * @param person who answered: the server takes nothing of somebody else's who signed in meanwhile
 */
export async function postSetAnswer(body: Body, person: string): Promise<Reply> {
	try {
		const response = await post(body, person);
		if (response.status === 409 && isAboutSet(await response.clone().json())) {
			const practice = Object.fromEntries(Object.entries(body).filter(([key]) => key !== 'set'));
			return await replyOf(await post(practice, person));
		}
		return await replyOf(response);
	} catch {
		return { kind: 'later' };
	}
}

function post(body: Body, person: string): Promise<Response> {
	return fetch('/api/attempts', {
		method: 'POST',
		headers: { 'content-type': 'application/json', 'underfoot-person': person },
		body: JSON.stringify(body),
		signal: AbortSignal.timeout(PATIENCE)
	});
}

async function replyOf(response: Response): Promise<Reply> {
	if (response.status === 401) return { kind: 'signed-out' };
	if (response.status >= 500 || response.status === 408 || response.status === 429) return { kind: 'later' };
	if (!response.ok) return { kind: 'refused' };
	const body: unknown = await response.json();
	if (!isFields(body)) return { kind: 'later' };
	// The server is our own and grades with the same code: its grades are taken for what they are.
	return { kind: 'stored', counts: body['counts'] === true, grades: (isFields(body['grades']) ? body['grades'] : {}) as Grades };
}

/** Whether a refusal is about the place in the set, and not about the answer itself. */
function isAboutSet(body: unknown): boolean {
	if (!isFields(body) || !Array.isArray(body['error'])) return false;
	return body['error'].some((one: unknown) => isFields(one) && String(one['field']).startsWith('set.'));
}
