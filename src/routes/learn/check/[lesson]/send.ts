/** Sends the steps of a check; whatever goes wrong on the way is an outcome, never an error. */
import type { ToldCheck } from '#lib/server/index.ts';

/** After this long without an answer of the server, the step waits, ms. */
const PATIENCE = 10_000;

export type Sent =
	| { readonly kind: 'done'; readonly check: ToldCheck }
	/** No reply came: nothing is lost, it can be sent again. */
	| { readonly kind: 'unheard' }
	/** The server cannot take it just now, its disk is full perhaps: nothing is lost, it can be sent again. */
	| { readonly kind: 'not-now' }
	| { readonly kind: 'signed-out' }
	/** What the page shows is no longer what the check asks. */
	| { readonly kind: 'elsewhere' }
	/** An entry cannot be taken: which, and what would be right. */
	| { readonly kind: 'refused'; readonly field: string; readonly text: string };

async function post(path: string, body: unknown): Promise<Sent> {
	try {
		const response = await fetch(path, {
			method: 'POST',
			headers: { 'content-type': 'application/json' },
			body: JSON.stringify(body),
			signal: AbortSignal.timeout(PATIENCE)
		});
		if (response.ok) return { kind: 'done', check: (await response.json()) as ToldCheck };
		if (response.status === 401) return { kind: 'signed-out' };
		if (response.status >= 500 || response.status === 408 || response.status === 429) return { kind: 'not-now' };
		if (response.status === 409 || response.status === 404) return { kind: 'elsewhere' };
		return refusedIn(await response.json());
	} catch {
		return { kind: 'unheard' };
	}
}

function refusedIn(body: unknown): Sent {
	const list: unknown = typeof body === 'object' && body !== null && 'error' in body ? body.error : undefined;
	const first: unknown = Array.isArray(list) ? list[0] : undefined;
	if (typeof first !== 'object' || first === null) return { kind: 'refused', field: '', text: '' };
	const text = (key: string): string => (key in first ? String(first[key as keyof typeof first]) : '');
	return { kind: 'refused', field: text('field'), text: `${text('problem')} ${text('remedy')}`.trim() };
}

/** @param id made once for this answer, so that sending it again stores it once */
export function sendAnswer(check: string, id: string, item: string, answer: unknown): Promise<Sent> {
	return post(`/api/course/checks/${check}/answers`, { id, item, answer });
}

/** @param id made once for this page */
export function sendPage(check: string, id: string, items: readonly string[]): Promise<Sent> {
	return post(`/api/course/checks/${check}/pages`, { id, items });
}
