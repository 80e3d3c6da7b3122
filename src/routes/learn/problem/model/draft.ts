/** Where tapes hang, and the learner's own before anything is typed. */
import type { Datum } from '#lib/arrest/index.ts';
import type { NumberAsk, Problem } from '#lib/scenario/index.ts';
import type { DraftTape, TapeDatum } from '#lib/scene/index.ts';
import { placeLabel, type FirstSpeech } from './names.ts';

/** Where an ask's tape hangs, above the walking surface, m. A free fall hangs from the D-ring. */
export function datumOf(problem: Problem, ask: NumberAsk): Datum {
	return 'datum' in ask ? ask.datum : 'd-ring';
}

export function heightOf(problem: Problem, datum: Datum): number {
	const { worker, anchorage } = problem.drawn.plan;
	switch (datum) {
		case 'surface':
			return 0;
		case 'anchorage':
			return anchorage.height;
		case 'connector':
			return anchorage.height - (anchorage.connector?.length ?? 0);
		case 'd-ring':
			return worker.standingHeight + (worker.posture === 'standing' ? worker.dRingHeight : (worker.dRingNow ?? worker.dRingHeight));
	}
}

function datumName(speech: FirstSpeech, datum: Datum): string {
	if (datum === 'surface') return placeLabel(speech, 'surface');
	if (datum === 'anchorage') return placeLabel(speech, 'anchorage');
	return datum === 'connector' ? speech.m.terms.connector : speech.m.terms.dRing;
}

export function tapeDatum(speech: FirstSpeech, datum: Datum): TapeDatum {
	return { z: heightOf(speech.problem, datum), name: datumName(speech, datum) };
}

/** @returns true for an ask that is told as a chain of lengths. */
export function hasTape(ask: NumberAsk): boolean {
	return ask.quantity === 'freeFall' || ask.quantity === 'requiredClearance' || ask.quantity === 'availableClearance';
}

/** The ask that the learner's tape follows while working: the first clearance asked for, else the free fall. */
function mainAsk(among: readonly NumberAsk[]): NumberAsk | undefined {
	const asks = among.filter(hasTape);
	return asks.find((ask) => ask.quantity === 'requiredClearance') ?? asks.find((ask) => ask.quantity === 'freeFall') ?? asks[0];
}

/** @returns the ask of a tape, and the tape while nothing is typed; undefined where no ask is a chain of lengths. */
export function emptyTape(speech: FirstSpeech, asks: readonly NumberAsk[]): { readonly main: NumberAsk; readonly tape: DraftTape } | undefined {
	const { problem, m } = speech;
	const main = mainAsk(asks);
	if (main === undefined) return undefined;
	const datum = tapeDatum(speech, datumOf(problem, main));
	const zeroLabel = m.tape.zero({ place: datum.name });
	return { main, tape: { datum, title: m.tape.own, zeroLabel, terms: [], end: null, reach: datum.z + problem.drawn.plan.below.depth } };
}
