/** A drawn example as its author sees it: what a learner would see, and the right answers with their workings. */
import { targetKey } from '#lib/arrest/index.ts';
import { analysisOf, explain } from '#lib/grading/index.ts';
import { storyOf, targetOf, type Ask, type NumberAsk, type Problem, type Story } from '#lib/scenario/index.ts';
import type { SiteModel, StepRow } from '#lib/scene/index.ts';
import { askParts, askText, type Speech } from '../../../../learn/problem/model/names.ts';
import { siteModel } from '../../../../learn/problem/model/site.ts';
import { stepRows } from '../../../../learn/problem/model/steps.ts';
import { writerFor, type Writer } from '../../../../learn/problem/model/writing.ts';

export interface ShownAsk {
	readonly id: string;
	readonly question: string;
	/** The right number with its unit, or the right decision; undefined where it cannot be stated from the label. */
	readonly answer: string | undefined;
	/** The working; empty for a decision. */
	readonly rows: readonly StepRow[];
	readonly name: string;
}

export interface ShownExample {
	readonly speech: Speech;
	readonly writer: Writer;
	readonly story: Story;
	readonly site: SiteModel;
	readonly asks: readonly ShownAsk[];
}

/** @returns the example; undefined for a problem that cannot be shown, as a story with a number that it does not have. */
export function shownExample(problem: Problem, { m, language }: Pick<Speech, 'm' | 'language'>): ShownExample | undefined {
	const speech: Speech = { problem, m, language };
	const writer = writerFor(problem.scenario, language);
	try {
		const asks = problem.scenario.asks.map((ask) => shownAsk(speech, writer, ask));
		return { speech, writer, story: storyOf(problem, language), site: siteModel(speech, writer), asks };
	} catch (error) {
		if (error instanceof RangeError || error instanceof ReferenceError) return undefined;
		throw error;
	}
}

function shownAsk(speech: Speech, writer: Writer, ask: Ask): ShownAsk {
	const { m, problem } = speech;
	const analysis = analysisOf(problem);
	if (ask.kind === 'number') return shownNumber(speech, writer, ask);
	const question = m.decision.question({ name: problem.drawn.person });
	return { id: ask.id, question, answer: m.verdict.decision[analysis.verdict.decision], rows: [], name: '' };
}

function shownNumber(speech: Speech, writer: Writer, ask: NumberAsk): ShownAsk {
	const { m, problem } = speech;
	const found = analysisOf(problem).quantities.get(targetKey(targetOf(ask)));
	const question = askText(speech, ask).question(askParts(speech));
	const { name } = m.quantities[ask.quantity];
	if (found?.known !== true) return { id: ask.id, question, answer: undefined, rows: [], name };
	const rows = stepRows(speech, writer, ask, undefined, explain(problem, ask, []));
	return { id: ask.id, question, answer: writer.quantity(ask.quantity, found.value), rows, name };
}
