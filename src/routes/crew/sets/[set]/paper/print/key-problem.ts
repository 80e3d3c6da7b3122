/** A problem in the trainer's key: right answers, formulas with their numbers, steps, the verdict with its clauses. */
import { formula } from '#lib/arrest/index.ts';
import { analysisOf, explain, rightValue } from '#lib/grading/index.ts';
import type { KeyAsk, KeyCheck, KeyProblem } from '#lib/paper/index.ts';
import { storyOf, targetOf, type Ask, type NumberAsk } from '#lib/scenario/index.ts';
import type { Speech } from '../../../../../learn/problem/model/names.ts';
import { inNumbers, stepRows } from '../../../../../learn/problem/model/steps.ts';
import { verdictOf, type CheckRow } from '../../../../../learn/problem/model/verdict.ts';
import { writerFor } from '../../../../../learn/problem/model/writing.ts';

function keyNumber(speech: Speech, ask: NumberAsk, ordinal: string): KeyAsk {
	const { m, problem } = speech;
	const writer = writerFor(problem.scenario, speech.language);
	const right = rightValue(problem, ask);
	const { name } = m.quantities[ask.quantity];
	if (right === undefined) return { ordinal, name, value: m.absences['outside-label']({ what: '' }), formula: '', steps: [] };
	const rows = stepRows(speech, writer, ask, undefined, explain(problem, ask, []));
	return {
		ordinal,
		name,
		value: writer.quantity(ask.quantity, right),
		formula: `${inNumbers(speech, writer, formula(targetOf(ask), problem.resolved.shape))} = ${writer.bareQuantity(ask.quantity, right)}`,
		// A working of one step is the formula itself.
		steps: rows.length === 1 ? [] : rows.map(({ kind, name, working, value }) => ({ name, working, value, sum: kind === 'sum' || kind === 'result' }))
	};
}

function keyCheck({ name, statusText, text, citation, printed, mark, decides }: CheckRow, doesNotDecide: string): KeyCheck {
	const clause = printed === '' ? citation : `${citation} (${printed})`;
	return { name: `${name} – ${statusText}`, text, source: citation === '' ? '' : `${clause}. ${mark}.${decides ? '' : ` ${doesNotDecide}`}` };
}

/**
 * @param over over its title: which problem of the sheet it is
 * @param decision what the decision is called
 */
export function keyProblem(speech: Speech, asks: readonly Ask[], over: string, decision: string): KeyProblem {
	const { m, problem, language } = speech;
	const verdict = verdictOf(speech, writerFor(problem.scenario, language));
	return {
		over,
		title: storyOf(problem, language).title,
		asks: asks.map((ask, i): KeyAsk => {
			const ordinal = String(i + 1);
			if (ask.kind === 'number') return keyNumber(speech, ask, ordinal);
			return { ordinal, name: decision, value: m.verdict.decision[analysisOf(problem).verdict.decision], formula: '', steps: [] };
		}),
		verdict: [verdict.sentence, ...(verdict.nearest === '' ? [] : [verdict.nearest])],
		checks: verdict.rows.map((row) => keyCheck(row, m.verdict.doesNotDecide))
	};
}
