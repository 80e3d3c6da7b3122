import type { InputProblem } from './problems.ts';

/** Answers of the interface hold what one visitor did: no cache keeps them. */
const NOT_KEPT = { 'cache-control': 'no-store' };

/** @returns a refusal in the one form that refusals have: every field, what is wrong, what would be right. */
export function refusal(
	status: number,
	problems: readonly InputProblem[],
	headers: Readonly<Record<string, string>> = {}
): Response {
	return Response.json({ error: problems }, { status, headers: { ...NOT_KEPT, ...headers } });
}

/** @param json the body, written already. */
export function answer(status: number, json: string): Response {
	// With its length said, it goes out in one piece.
	const length = String(Buffer.byteLength(json));
	return new Response(json, { status, headers: { ...NOT_KEPT, 'content-type': 'application/json', 'content-length': length } });
}

/** HTTP: insufficient storage. @source RFC 4918, section 11.5 */
export const NO_ROOM = 507;

/** @returns the refusal of what could not be stored, for the disk is full. */
export function noRoom(): Response {
	return refusal(NO_ROOM, [{ field: 'disk', problem: 'of the server is full, and nothing was stored', remedy: 'send it again later' }]);
}

/** @returns the refusal of a method that an address does not have. */
export function wrongMethod(method: string, allowed: string): Response {
	return refusal(405, [{ field: 'method', problem: `is ${method}`, remedy: `use ${allowed}` }], { allow: allowed });
}
