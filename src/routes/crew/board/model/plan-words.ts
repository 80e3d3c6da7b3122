/** What is said of an entry of a plan that was not taken. */
import { givenDimension, isGivenId } from '#lib/arrest/index.ts';
import { echoQuantity, toSI, unitSymbol, writeQuantity } from '#lib/quantity/index.ts';
import type { Writer } from '../../../learn/problem/model/writing.ts';
import type { EntryProblem } from './enter-plan.ts';
import { fieldReading } from './plan-fields.ts';
import type { BoardSpeech } from './speech.ts';

/** @reason an example must look like an entry and be none: a round number of the field's unit. */
const EXAMPLE = 4;

/** @returns what is wrong with the entry of a field, and what to do, in words. */
export function entryProblemText(speech: BoardSpeech, writer: Writer, id: string, problem: EntryProblem): string {
	const { m, language } = speech;
	if (problem.kind === 'clash' || !isGivenId(id)) return m.board.clashes[problem.kind === 'clash' ? problem.with : 'other'];
	if (problem.kind === 'range') {
		const dimension = givenDimension(id);
		return m.board.range({ from: writer.full(problem.atLeast, dimension, 'up'), to: writer.full(problem.atMost, dimension, 'down') });
	}
	const { expected } = fieldReading(speech.problem.scenario, id, language);
	if (problem.kind === 'question') {
		const [first = '', second = ''] = problem.reading.readings.map((one) => echoQuantity(one, language));
		return m.questions[problem.reading.reason]({ first, second });
	}
	const { reason, part = '' } = problem.reading;
	const example = writeQuantity(toSI(EXAMPLE, expected), { unit: expected, language });
	return m.unreadable[reason]({ part, unit: unitSymbol(expected, language), example });
}
