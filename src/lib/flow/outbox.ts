/**
 * Answers that wait on the device until the server has them. Each has an id of its own, so that sending one
 * twice stores it once; it leaves the box only when the server said that it is stored, or that it never will be.
 */
import type { Grades } from './context.ts';

/** An answer as it is sent. */
export interface Posted {
	readonly id: string;
	/** The body of the request. */
	readonly body: Readonly<Record<string, unknown>>;
}

export type SendOutcome =
	| { readonly kind: 'stored'; readonly grades: Grades }
	/** No signal, or the server is not well: try again later. */
	| { readonly kind: 'later' }
	/** The server will not take it, now or later. */
	| { readonly kind: 'refused' };

/** Where the box is kept: the text of the whole box. */
export interface Shelf {
	readonly read: () => string | null;
	readonly write: (text: string) => void;
}

export interface Outbox {
	/** How many answers wait. */
	readonly waiting: () => number;
	readonly ids: () => readonly string[];
	/** Puts an answer into the box; one that is in it already stays as it was. */
	readonly put: (posted: Posted) => void;
	/**
	 * Sends what waits, oldest first, and stops at the first that has to wait longer.
	 * While one call is at work, another one joins it.
	 */
	readonly flush: (told: (id: string, outcome: SendOutcome) => void) => Promise<void>;
}

/** @reason an answer is about 1 kB; a phone's store holds 5 MB. */
const MOST_WAITING = 1000;

/** @param send how one answer is sent; it must not throw. */
export function createOutbox(shelf: Shelf, send: (posted: Posted) => Promise<SendOutcome>): Outbox {
	let atWork: Promise<void> | undefined;

	const drop = (id: string): void => shelf.write(JSON.stringify(waitingIn(shelf.read()).filter((one) => one.id !== id)));

	const sendAll = async (told: (id: string, outcome: SendOutcome) => void): Promise<void> => {
		const tried = new Set<string>();
		for (;;) {
			const next = waitingIn(shelf.read()).find((one) => !tried.has(one.id));
			if (next === undefined) return;
			tried.add(next.id);
			const outcome = await send(next);
			if (outcome.kind !== 'later') drop(next.id);
			told(next.id, outcome);
			if (outcome.kind === 'later') return;
		}
	};

	return {
		waiting: () => waitingIn(shelf.read()).length,
		ids: () => waitingIn(shelf.read()).map((one) => one.id),
		put: (posted) => {
			const waiting = waitingIn(shelf.read());
			if (waiting.some((one) => one.id === posted.id)) return;
			shelf.write(JSON.stringify([...waiting, posted].slice(-MOST_WAITING)));
		},
		flush: (told) => {
			atWork ??= sendAll(told).finally(() => {
				atWork = undefined;
			});
			return atWork;
		}
	};
}

/** @returns the answers of a kept box; what is no answer is left out. Never throws. */
function waitingIn(text: string | null): readonly Posted[] {
	if (text === null) return [];
	try {
		const value: unknown = JSON.parse(text);
		return Array.isArray(value) ? value.filter(isPosted) : [];
	} catch {
		return [];
	}
}

function isPosted(value: unknown): value is Posted {
	return (
		typeof value === 'object' &&
		value !== null &&
		'id' in value &&
		typeof value.id === 'string' &&
		'body' in value &&
		typeof value.body === 'object' &&
		value.body !== null
	);
}
