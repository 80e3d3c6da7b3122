import type { ZodType } from 'zod';
import { problemsOf, type InputProblem } from './problems.ts';

/** What came of reading: the value, or an HTTP status and every problem found. */
export type InputResult<Value> =
	| { readonly kind: 'read'; readonly value: Value }
	| { readonly kind: 'refused'; readonly status: number; readonly problems: readonly InputProblem[] };

/** Refuses what is not UTF-8. */
const utf8 = new TextDecoder('utf-8', { fatal: true });

/** The longest body that is read, bytes. Answers are far shorter; a longer one is no answer. */
export const LONGEST_BODY = 64 * 1024;

function refused(status: number, problem: string, remedy: string): InputResult<never> {
	return { kind: 'refused', status, problems: [{ field: 'body', problem, remedy }] };
}

/** The bytes of a body, or null when there are more than allowed: the rest is not read. */
async function limitedBytes(request: Request, most: number): Promise<Uint8Array | null> {
	const declared = request.headers.get('content-length');
	// HTTP itself ends a body where its declared length ends.
	if (declared !== null) return Number(declared) > most ? null : new Uint8Array(await request.arrayBuffer());
	const parts: Uint8Array[] = [];
	let length = 0;
	for await (const part of request.body ?? []) {
		length += part.length;
		if (length > most) return null;
		parts.push(part);
	}
	return Buffer.concat(parts);
}

/**
 * Reads a request's JSON, whatever it holds.
 * Refused are: another content type (415), more than LONGEST_BODY (413), what is not JSON (400).
 */
export async function readBody(request: Request): Promise<InputResult<unknown>> {
	const type = request.headers.get('content-type') ?? '';
	if (!/^application\/json\s*(;|$)/i.test(type)) {
		return refused(415, 'is not declared as JSON', 'send it with content-type: application/json');
	}
	const bytes = await limitedBytes(request, LONGEST_BODY);
	if (bytes === null) {
		return refused(413, `is longer than ${LONGEST_BODY} bytes`, 'send one answer at a time');
	}
	try {
		return { kind: 'read', value: JSON.parse(utf8.decode(bytes)) };
	} catch {
		return refused(400, 'is not JSON', 'send one JSON object in UTF-8');
	}
}

/** Checks what a client sent against a schema: 400 for what does not fit it. */
export function fitJson<Value>(input: unknown, schema: ZodType<Value>): InputResult<Value> {
	const parsed = schema.safeParse(input);
	if (parsed.success) return { kind: 'read', value: parsed.data };
	return { kind: 'refused', status: 400, problems: problemsOf(parsed.error.issues, input) };
}

/** Reads a request's JSON and checks it against a schema; refused as by `readBody` and `fitJson`. */
export async function readJson<Value>(
	request: Request,
	schema: ZodType<Value>
): Promise<InputResult<Value>> {
	const body = await readBody(request);
	return body.kind === 'read' ? fitJson(body.value, schema) : body;
}
