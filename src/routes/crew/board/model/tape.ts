/** The tape beside the drawing at each stop: growing with the steps, whole with the answer, paired with a number called. */
import type { Explanation, Grade } from '#lib/grading/index.ts';
import type { NumberAsk } from '#lib/scenario/index.ts';
import type { TapeView } from '#lib/scene/index.ts';
import { hasTape } from '../../../learn/problem/model/draft.ts';
import { tapePair, walkTape } from '../../../learn/problem/model/tapes.ts';
import type { Writer } from '../../../learn/problem/model/writing.ts';
import type { BoardSpeech } from './speech.ts';
import type { Stop } from './stops.ts';

export const NO_TAPE: TapeView = Object.freeze({ kind: 'none' });

/** What is told at a stop. */
export interface Telling {
	readonly ask: NumberAsk;
	readonly stop: Stop;
	/** With the slips of the number called, where one is explained. */
	readonly explanation: Explanation;
	readonly grade: Grade | undefined;
}

/** @returns the tape of a stop; none for an ask that is no chain of lengths. */
export function boardTape(speech: BoardSpeech, writer: Writer, { ask, stop, explanation, grade }: Telling): TapeView {
	if (!hasTape(ask)) return NO_TAPE;
	switch (stop.kind) {
		case 'step': {
			const worked = new Set(explanation.tape.slice(0, stop.n).flatMap((term) => (term.of === undefined ? [] : [term.of])));
			const draft = walkTape(speech, writer, ask, worked);
			if (draft === undefined) return NO_TAPE;
			// A rise goes up from the datum, where the title would stand: the question says what it is.
			const title = ask.quantity === 'freeFall' ? '' : speech.m.quantities[ask.quantity].short;
			return { kind: 'draft', draft: { ...draft, title } };
		}
		case 'answer':
			return { kind: 'pair', pair: tapePair(speech, writer, ask, undefined, explanation) };
		case 'called': {
			const own = grade?.kind === 'number' && grade.mark.kind === 'wrong' ? grade.answer : undefined;
			return { kind: 'pair', pair: tapePair(speech, writer, ask, own, explanation) };
		}
		default:
			return NO_TAPE;
	}
}
