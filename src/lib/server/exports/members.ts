/** Rows as they stand in JSON documents: texts that hold JSON as what they hold, and nothing that signs in or can be drawn from. */
import type { RecordEntryRow } from '../db/records.ts';
import type { EndedCheck } from './ended-checks.ts';

/** Our own, written by this program alone. */
function held(json: string): unknown {
	return JSON.parse(json);
}

/** The payload as JSON again: its canonical form (RFC 8785) is what was hashed. */
export function entryMember({ seq, prev, hash, payload }: RecordEntryRow): unknown {
	return { seq, prev, hash, payload: held(payload) };
}

/** Something that happened in a course or check, with what was sent and what came of it. */
export function eventMember<Of extends { readonly sent: string; readonly payload: string }>({ sent, payload, ...rest }: Of): unknown {
	return { ...rest, sent: held(sent), payload: held(payload) };
}

/** An answered site problem. */
export function attemptMember<Of extends { readonly plan: string; readonly answers: string; readonly result: string }>({ plan, answers, result, ...rest }: Of): unknown {
	return { ...rest, plan: held(plan), answers: held(answers), result: held(result) };
}

/** A check with all that happened in it, as its rows are stored: their texts are what the digest of the chain is of (`evidenceDigest`), in any language. */
export function checkRows({ of, events }: EndedCheck): unknown {
	return { ...of, events };
}

/** The same with what its texts hold, for people. */
export function checkMember({ of, events }: EndedCheck): unknown {
	const { rule, supervision, ...rest } = of;
	return {
		...rest,
		rule: held(rule),
		supervision: supervision === null ? null : held(supervision),
		events: events.map(eventMember)
	};
}

/** A sign-off, with what was signed. */
export function signOffMember<Of extends { readonly record: string; readonly signed: string }>({ record, signed, ...rest }: Of): unknown {
	return { ...rest, record: held(record), signed: held(signed) };
}

/** A deed or a report, with what is known of it. */
export function detailMember<Of extends { readonly detail: string }>({ detail, ...rest }: Of): unknown {
	return { ...rest, detail: held(detail) };
}

/** @returns a row without some of its members. */
export function without<Of extends object, Name extends keyof Of & string>(row: Of, names: readonly Name[]): Omit<Of, Name> {
	const kept = Object.entries(row).filter(([name]) => !names.some((one) => one === name));
	return Object.fromEntries(kept) as Omit<Of, Name>;
}

/** @returns pages of rows, each row as it stands in the document. */
export async function* eachAs<One>(rowPages: AsyncIterable<readonly One[]>, as: (row: One) => unknown = (row) => row): AsyncGenerator<readonly unknown[], void, undefined> {
	for await (const rows of rowPages) yield rows.map(as);
}
