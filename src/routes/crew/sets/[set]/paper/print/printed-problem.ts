/** A problem as it is printed for the one who works on it: every number that a screen shows, none of the answers. */
import type { PrintedAsk, PrintedProblem, TableOptions } from '#lib/paper/index.ts';
import { storyOf, type Ask } from '#lib/scenario/index.ts';
import { shownLabels } from '../../../../../learn/check/[lesson]/shown.server.ts';
import { askParts, askText, type Speech } from '../../../../../learn/problem/model/names.ts';
import { allGivens } from '../../../../../learn/problem/model/plates.ts';
import { siteModel } from '../../../../../learn/problem/model/site.ts';
import { scaleText } from '../../../../../learn/problem/model/words.ts';
import { answerUnit, writerFor } from '../../../../../learn/problem/model/writing.ts';

function tablesOf(speech: Speech): readonly TableOptions[] {
	const { m } = speech;
	const { plates, beside, rules, notes } = shownLabels(speech);
	return [
		...plates.map(({ title, rows }) => ({ title, rows, framed: true })),
		...(beside.length === 0 ? [] : [{ title: m.page.beside, rows: beside, framed: false }]),
		{ title: m.page.ruleHere, rows: rules, notes, framed: false }
	];
}

function printedAsk(speech: Speech, ask: Ask, nth: number): PrintedAsk {
	const { m, problem, language } = speech;
	const parts = askParts(speech);
	const ordinal = String(nth + 1);
	if (ask.kind === 'decision') {
		return { ordinal, question: m.decision.question({ name: parts.name }), help: m.decision.help, unit: undefined, ticks: [m.verdict.decision['tie-off'], m.verdict.decision['do-not-tie-off']] };
	}
	const text = askText(speech, ask);
	return {
		ordinal,
		question: text.question(parts),
		help: text.help(parts),
		unit: answerUnit(problem.scenario, ask, language),
		ticks: ask.quantity === 'requiredClearance' ? [m.decision.notStated] : []
	};
}

/** The drawing for those who do not see it: all numbers of the problem. */
function drawingText(speech: Speech, title: string): string {
	const { m } = speech;
	const numbers = allGivens(speech, writerFor(speech.problem.scenario, speech.language)).map(({ name, value }) => `${name}: ${value}`);
	return `${m.page.drawingTitle({ title })}. ${numbers.join('; ')}.`;
}

/** @param over over its title: which problem of the sheet it is */
export function printedProblem(speech: Speech, asks: readonly Ask[], over: string): PrintedProblem {
	const { m, problem, language } = speech;
	const { scenario } = problem;
	const story = storyOf(problem, language);
	return {
		over,
		title: story.title,
		story: [story.lead, ...story.paragraphs],
		site: siteModel(speech, writerFor(scenario, language)),
		scaleText: scaleText(m, scenario.units, language),
		drawingText: drawingText(speech, story.title),
		tables: tablesOf(speech),
		asks: asks.map((ask, i) => printedAsk(speech, ask, i))
	};
}
