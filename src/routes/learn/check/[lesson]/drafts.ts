/** What was entered in a check and is not on the server yet: kept on the device until it is. */
import { fieldsOf, isFields, readStore, writeStore } from '../../course/store.ts';

const KEY = 'underfoot.check.';

/** What stands in the fields of an item. */
export interface Draft {
	/** By ask: text, or a decision, or "cannot be stated". */
	readonly texts: Readonly<Record<string, string>>;
	readonly unstated: readonly string[];
	readonly decisions: Readonly<Record<string, 'tie-off' | 'do-not-tie-off'>>;
	/** Of a picture: null while nothing was said. */
	readonly marked: readonly string[] | null;
	readonly choice: string | null;
}

export const EMPTY_DRAFT: Draft = Object.freeze({ texts: {}, unstated: [], decisions: {}, marked: null, choice: null });

function strings(value: unknown): readonly string[] | null {
	return Array.isArray(value) && value.every((one) => typeof one === 'string') ? value : null;
}

function textsIn(value: unknown): Readonly<Record<string, string>> {
	if (!isFields(value)) return {};
	return Object.fromEntries(Object.entries(value).filter((one): one is [string, string] => typeof one[1] === 'string'));
}

/** @returns the draft of an item, or undefined. What is broken is dropped. */
export function readDraft(check: string, item: string): Draft | undefined {
	const kept = fieldsOf(readStore(`${KEY}${check}.${item}`));
	if (kept === undefined) return undefined;
	const decisions = Object.entries(textsIn(kept['decisions'])).flatMap(([ask, one]): [string, 'tie-off' | 'do-not-tie-off'][] =>
		one === 'tie-off' || one === 'do-not-tie-off' ? [[ask, one]] : []
	);
	const { choice } = kept;
	return {
		texts: textsIn(kept['texts']),
		unstated: strings(kept['unstated']) ?? [],
		decisions: Object.fromEntries(decisions),
		marked: strings(kept['marked']),
		choice: typeof choice === 'string' ? choice : null
	};
}

/** Keeps what was entered. */
export function keepDraft(check: string, item: string, draft: Draft): void {
	writeStore(`${KEY}${check}.${item}`, JSON.stringify(draft));
}

/** Lets go of a draft that the server has. */
export function dropDraft(check: string, item: string): void {
	try {
		localStorage.removeItem(`${KEY}${check}.${item}`);
	} catch {
		// A closed store held nothing.
	}
}
