/** Sends what somebody did in a lesson; whatever goes wrong on the way is an outcome, never an error. */
import type { CourseState } from '#lib/flow/index.ts';
import { isFields } from './store.ts';

/** After this long without an answer of the server, the event waits, ms. */
const PATIENCE = 10_000;

export type Reply =
	| { readonly kind: 'stored'; readonly counts: boolean; readonly grades: unknown; readonly state: CourseState }
	/** No signal, or the server is not well. */
	| { readonly kind: 'later' }
	/** The session is over, or somebody else's. */
	| { readonly kind: 'signed-out' }
	| { readonly kind: 'refused' };

/** @param person who did it: the server takes nothing of somebody else's who signed in meanwhile. */
export async function postEvent(event: unknown, person: string): Promise<Reply> {
	try {
		const response = await fetch('/api/course/events', {
			method: 'POST',
			headers: { 'content-type': 'application/json', 'underfoot-person': person },
			body: JSON.stringify(event),
			signal: AbortSignal.timeout(PATIENCE)
		});
		if (response.status === 401) return { kind: 'signed-out' };
		if (response.status >= 500 || response.status === 408 || response.status === 429) return { kind: 'later' };
		return response.ok ? storedIn(await response.json()) : { kind: 'refused' };
	} catch {
		return { kind: 'later' };
	}
}

/** The server is our own and steps the course by the same code: its state is taken for what it is. */
function storedIn(body: unknown): Reply {
	if (!isFields(body)) return { kind: 'later' };
	return { kind: 'stored', counts: body['counts'] === true, grades: body['grades'], state: body['state'] as CourseState };
}
