/** The learner's tape while numbers are typed. */
import { QUANTITIES } from '#lib/arrest/index.ts';
import { LENGTH, readQuantity, sameDimension } from '#lib/quantity/index.ts';
import type { NumberAsk } from '#lib/scenario/index.ts';
import type { DraftTape, TapeTerm } from '#lib/scene/index.ts';
import { datumOf, emptyTape } from './draft.ts';
import { readOptions } from './entry.ts';
import type { FirstSpeech } from './names.ts';
import type { Writer } from './writing.ts';

/** What was typed so far, as a length; undefined for what is no single length yet. */
function typedLength(speech: FirstSpeech, ask: NumberAsk, text: string): number | undefined {
	const reading = readQuantity(text, readOptions(speech, ask));
	return reading.kind === 'read' && reading.si > 0 ? reading.si : undefined;
}

/** The name of what a tape ends with, by what is asked. */
function endName({ m }: FirstSpeech, ask: NumberAsk): string {
	if (ask.quantity === 'requiredClearance') return m.terms.required;
	return ask.quantity === 'availableClearance' ? m.terms.available : m.terms.freeFall;
}

/**
 * @param asks what is asked for. @param texts what stands in the fields, by ask.
 * @returns the learner's tape while working. It grows with what is typed and says nothing of right or wrong.
 */
export function draftTape(
	speech: FirstSpeech,
	writer: Writer,
	asks: readonly NumberAsk[],
	texts: ReadonlyMap<string, string>
): DraftTape | undefined {
	const empty = emptyTape(speech, asks);
	if (empty === undefined) return undefined;
	const datum = datumOf(speech.problem, empty.main);
	const terms: TapeTerm[] = [];
	let end: DraftTape['end'] = null;
	for (const ask of asks) {
		if (!sameDimension(LENGTH, QUANTITIES[ask.quantity].dimension)) continue;
		const length = typedLength(speech, ask, texts.get(ask.id) ?? '');
		if (length === undefined) continue;
		const label = writer.bareLength(length);
		if (ask.quantity === 'freeFall' && (datum === 'surface' || datum === 'd-ring')) {
			terms.push({ id: 'free-fall', sign: 1, length, label, name: speech.m.terms.freeFall });
		} else if (ask === empty.main) {
			end = { length, label, name: endName(speech, ask) };
		}
	}
	return { ...empty.tape, terms, end };
}
