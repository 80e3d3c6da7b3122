/** What an entry of the chain says of a check's rows: one digest over all that was asked and answered. */
import type { CheckEvent, CheckTry } from '../db/checks.ts';
import { sha256 } from './chain.ts';

/**
 * @param events all of the try, in order
 * @returns SHA-256, hexadecimal, of the canonical JSON of `{ try, events }`: the columns that are named here, as they
 * are stored. A column that is added later is not in it, so that digests made before still hold.
 */
export function evidenceDigest(of: CheckTry, events: readonly CheckEvent[]): string {
	// Texts and whole numbers alone, with their names in the order that RFC 8785 gives them: that is canonical JSON
	// already, and many times quicker to write. A test holds the two together.
	return sha256(JSON.stringify({ events: events.map(eventColumns), try: tryColumns(of) }));
}

function tryColumns({ id, person_id, lesson, nth, rule, seed, language, supervision, day, at }: CheckTry): CheckTry {
	return { at, day, id, language, lesson, nth, person_id, rule, seed, supervision };
}

function eventColumns({ id, check_id, seq, kind, sent, payload, at }: CheckEvent): CheckEvent {
	return { at, check_id, id, kind, payload, sent, seq };
}
