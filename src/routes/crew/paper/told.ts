/** What an answer from paper came to, told to the trainer: what was written, what is right, and the thought behind it. */
import { isRight } from '#lib/flow/index.ts';
import type { Grade } from '#lib/grading/index.ts';
import { echoQuantity } from '#lib/quantity/index.ts';
import type { Ask, NumberAsk } from '#lib/scenario/index.ts';
import { tellDecision, tellNumber } from '../../learn/problem/model/diagnosis.ts';
import { askParts, askText, type Speech } from '../../learn/problem/model/names.ts';
import { writerFor } from '../../learn/problem/model/writing.ts';

export interface ToldAsk {
	readonly ask: string;
	readonly question: string;
	/** As it was read; undefined for what was left empty. */
	readonly written: string | undefined;
	readonly right: string;
	readonly isRight: boolean;
	/** On the unsafe side. */
	readonly critical: boolean;
	/** The diagnosis in words, the headline first. */
	readonly lines: readonly string[];
	/** Where several slips fit: which. */
	readonly options: readonly string[];
}

function toldNumber(speech: Speech, ask: NumberAsk, grade: Extract<Grade, { kind: 'number' }>): ToldAsk {
	const { m, problem, language } = speech;
	const writer = writerFor(problem.scenario, language);
	const told = tellNumber(speech, writer, ask, grade, undefined);
	return {
		ask: ask.id,
		question: askText(speech, ask).question(askParts(speech)),
		written: grade.read === undefined ? m.decision.notStated : echoQuantity(grade.read, language),
		right: grade.right === undefined ? m.decision.notStated : writer.quantity(ask.quantity, grade.right),
		isRight: isRight(grade),
		critical: told.critical,
		lines: [told.heading, ...told.lines, ...(told.question === undefined ? [] : [told.question.text])],
		options: told.question?.options.map(({ label }) => label) ?? []
	};
}

function toldDecision(speech: Speech, ask: Ask, grade: Extract<Grade, { kind: 'decision' }>): ToldAsk {
	const { m } = speech;
	const right = grade.mark.kind === 'right';
	return {
		ask: ask.id,
		question: m.decision.question({ name: askParts(speech).name }),
		written: m.verdict.decision[grade.decision],
		right: m.verdict.decision[grade.right],
		isRight: right,
		critical: grade.mark.kind === 'wrong' && grade.mark.critical,
		lines: [tellDecision(speech, grade), ...(right && !grade.counts ? [m.page.notCounted] : [])],
		options: []
	};
}

/** What was asked and left empty. */
function leftEmpty(speech: Speech, ask: Ask): ToldAsk {
	const parts = askParts(speech);
	const question = ask.kind === 'decision' ? speech.m.decision.question({ name: parts.name }) : askText(speech, ask).question(parts);
	return { ask: ask.id, question, written: undefined, right: '', isRight: false, critical: false, lines: [], options: [] };
}

/** @param explained whether the thought behind a wrong number is told: to those who teach, and to nobody else */
export function toldAsks(speech: Speech, asks: readonly Ask[], grades: Readonly<Record<string, Grade>>, explained: boolean): readonly ToldAsk[] {
	return asks.map((ask) => {
		const grade = grades[ask.id];
		if (ask.kind === 'number' && grade?.kind === 'number') {
			const told = toldNumber(speech, ask, grade);
			return explained ? told : { ...told, lines: [], options: [] };
		}
		if (ask.kind === 'decision' && grade?.kind === 'decision') return toldDecision(speech, ask, grade);
		return leftEmpty(speech, ask);
	});
}
