/** What is said at a field whose entry was not taken. */
import type { EntryFault } from '#lib/server/index.ts';
import type { StaffMessages } from '#lib/text/index.ts';
import { queryFor } from '../../learn/problem/model/entry.ts';
import type { Speech } from '../../learn/problem/model/names.ts';
import { fieldName } from './entry.ts';

/** @param speech in the language of the sheet, for numbers are typed as they stand on it */
function faultText(fault: EntryFault, words: StaffMessages['paper'], speech: Speech, alone: boolean): string {
	if (fault.kind === 'empty') return alone ? words.decisionAlone : fault.ask.kind === 'decision' ? words.emptyDecision : words.empty;
	const { reading } = fault;
	const grade = reading.kind === 'unreadable' ? ({ kind: 'unreadable', reading } as const) : ({ kind: 'question', reading } as const);
	return queryFor(speech, fault.ask, grade)?.text ?? words.empty;
}

/**
 * @param speechOf the problem of a place, with the words of the page
 * @param restEmpty whether the rest of a problem was ticked as empty
 * @returns what is wrong, by the name of the field
 */
export function faultTexts(
	faults: readonly EntryFault[],
	words: StaffMessages['paper'],
	speechOf: (place: number) => Speech | undefined,
	restEmpty: (place: number) => boolean
): Readonly<Record<string, string>> {
	return Object.fromEntries(
		faults.flatMap((fault) => {
			const speech = speechOf(fault.place);
			// The rest was ticked as empty, and yet it is asked for: only a decision was typed.
			return speech === undefined ? [] : [[fieldName(fault.place, fault.ask.id), faultText(fault, words, speech, restEmpty(fault.place))]];
		})
	);
}
