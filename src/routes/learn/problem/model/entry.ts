/** What is said back to an entry before it is graded: what was understood, or what is asked about it. */
import type { Grade, StepGrade } from '#lib/grading/index.ts';
import { echoQuantity, readQuantity, unitSymbol, writeQuantity, type ReadOptions, type ReadQuantity } from '#lib/quantity/index.ts';
import { toSI } from '#lib/quantity/index.ts';
import { entryUnit, numberAsks, readingOf, type NumberAsk } from '#lib/scenario/index.ts';
import type { FirstSpeech } from './names.ts';

export interface Query {
	readonly text: string;
	/** Where an entry has two readings: each as a text that has one. */
	readonly choices?: readonly { readonly text: string; readonly label: string }[];
}

export function readOptions(speech: FirstSpeech, ask: NumberAsk): ReadOptions {
	return readingOf(speech.problem.scenario, ask, speech.language);
}

/** @returns "You entered 14′ 4″." where the entry is more than a plain number of the field's own unit. */
export function echoOf(speech: FirstSpeech, ask: NumberAsk, text: string): string | undefined {
	const reading = readQuantity(text, readOptions(speech, ask));
	if (reading.kind !== 'read') return undefined;
	if (reading.written.style === 'decimal' && !reading.unitGiven && reading.written.exponent === 0) return undefined;
	return speech.m.reading.echo({ value: echoQuantity(reading, speech.language) });
}

/** @reason an example must look like an answer and be none: a round number of the field's unit. */
const EXAMPLE = 4;

/** A good entry for an ask, as people write one. */
function example(speech: FirstSpeech, ask: NumberAsk): string {
	const { language, problem } = speech;
	if (problem.scenario.units === 'us-inch' && ask.precision.unit === 'in') {
		return writeQuantity(toSI(EXAMPLE, 'ft') + toSI(EXAMPLE, 'in'), { unit: 'ft-in', language });
	}
	const unit = entryUnit(ask);
	return writeQuantity(toSI(EXAMPLE, unit), { unit, language });
}

/** A text that is read as this reading and no other. */
function unambiguous(speech: FirstSpeech, ask: NumberAsk, reading: ReadQuantity): string {
	const options = readOptions(speech, ask);
	const echo = echoQuantity(reading, speech.language);
	const finer = writeQuantity(reading.si, { unit: reading.unit, language: speech.language, decimals: Math.min(9, reading.decimals + 1) });
	const fits = (text: string): boolean => {
		const again = readQuantity(text, options);
		return again.kind === 'read' && Math.abs(again.si - reading.si) <= reading.step / 2;
	};
	return [echo, finer].find(fits) ?? echo;
}

export function queryFor(speech: FirstSpeech, ask: NumberAsk, grade: Grade | StepGrade): Query | undefined {
	const { m, language } = speech;
	if (grade.kind === 'unreadable') {
		const { reason, part = '' } = grade.reading;
		const unit = unitSymbol(entryUnit(ask), language);
		return { text: m.unreadable[reason]({ part, unit, example: example(speech, ask) }) };
	}
	if (grade.kind !== 'question') return undefined;
	const { reason, readings } = grade.reading;
	const choices = readings.map((one) => ({ text: unambiguous(speech, ask, one), label: echoQuantity(one, language) }));
	return { text: m.questions[reason]({ first: choices[0]?.label ?? '', second: choices[1]?.label ?? '' }), choices };
}

export function queryOf(speech: FirstSpeech, askId: string, grade: Grade): Query | undefined {
	const ask = numberAsks(speech.problem.scenario).find((one) => one.id === askId);
	return ask === undefined ? undefined : queryFor(speech, ask, grade);
}
