/** What was typed in from paper, as a form sends it: one field an ask, named by the problem's place and the ask's id. */
import type { Answer } from '#lib/grading/index.ts';
import { LONGEST_ENTRY } from '#lib/quantity/index.ts';
import type { Ask } from '#lib/scenario/index.ts';
import type { PlaceEntry } from '#lib/server/index.ts';

/** Name of an ask's field. */
export function fieldName(place: number, ask: string): string {
	return `p${place}.${ask}`;
}

/** Name of the box beside it: "It cannot be stated". */
export function unstatedName(place: number, ask: string): string {
	return `${fieldName(place, ask)}.not-stated`;
}

/** Name of the box at the end of a problem: what is empty here is empty on the paper. */
export function restName(place: number): string {
	return `p${place}.rest-empty`;
}

/** What stands in the form, by name of the field; what is too long is cut, so that nothing endless comes back. */
export type Typed = Readonly<Record<string, string>>;

/** What a form sent for some problems. */
export interface ReadEntries {
	readonly entries: readonly PlaceEntry[];
	readonly typed: Typed;
	/** Names of fields with more than any answer takes. */
	readonly tooLong: readonly string[];
}

type Place = { readonly place: number; readonly asks: readonly Ask[] };

/** Reads a form. Only fields of these problems are looked at. */
export function readEntries(form: FormData, places: readonly Place[]): ReadEntries {
	const typed: Record<string, string> = {};
	const tooLong: string[] = [];
	const textOf = (name: string): string => {
		const value = form.get(name);
		const text = typeof value === 'string' ? value : '';
		if (text.length > LONGEST_ENTRY) tooLong.push(name);
		if (text !== '') typed[name] = text.slice(0, LONGEST_ENTRY);
		return text.trim();
	};
	const entries = places.map(({ place, asks }): PlaceEntry => {
		const answers: Record<string, Answer> = {};
		for (const ask of asks) {
			const answer = answerIn(ask, textOf(fieldName(place, ask.id)), textOf(unstatedName(place, ask.id)) !== '');
			if (answer !== undefined) answers[ask.id] = answer;
		}
		return { place, answers, restEmpty: textOf(restName(place)) !== '' };
	});
	return { entries, typed, tooLong };
}

function answerIn(ask: Ask, text: string, unstated: boolean): Answer | undefined {
	if (ask.kind === 'decision') return text === 'tie-off' || text === 'do-not-tie-off' ? { kind: 'decision', decision: text } : undefined;
	// A number and a tick: the number is looked at, as it is on screen once the tick is taken off.
	if (text !== '') return { kind: 'number', text };
	return unstated ? { kind: 'not-stated' } : undefined;
}
