/** The words of the board about one problem. */
import { analyse, type Absence, type Refusal } from '#lib/arrest/index.ts';
import { echoQuantity } from '#lib/quantity/index.ts';
import { storyOf, type Problem, type Story } from '#lib/scenario/index.ts';
import type { Messages, StaffMessages } from '#lib/text/index.ts';
import { namesOf, type Speech } from '../../../learn/problem/model/names.ts';
import { sentences } from './anonymous.ts';
import type { Called } from './called.ts';

export interface BoardSpeech extends Speech {
	readonly m: Messages & StaffMessages;
}

/** @returns an answer that the class called, as it was read. */
export function calledText({ m, language }: BoardSpeech, { answer, grade }: Called): string {
	if (answer.kind === 'decision') return m.verdict.decision[answer.decision];
	if (answer.kind === 'not-stated') return m.decision.notStated;
	return grade.kind === 'number' && grade.read !== undefined ? echoQuantity(grade.read, language) : answer.text;
}

/** @returns why a quantity has no value, in the engine's words. */
export function absenceText(speech: BoardSpeech, absence: Absence): string {
	const { m } = speech;
	if (absence.why !== 'missing') return m.absences[absence.why]({ what: '' });
	return absence.givens.length === 0 ? m.board.noWorking : m.absences.missing({ what: m.common.list(absence.givens.map((id) => namesOf(speech, id).name)) });
}

/** @returns why a plan is refused, by name; undefined for one that is not. */
export function refusalText(speech: BoardSpeech): string | undefined {
	const outcome = analyse(speech.problem.drawn.plan);
	return outcome.kind === 'refused' ? textOf(speech, outcome.refusal) : undefined;
}

function textOf({ m }: BoardSpeech, refusal: Refusal): string {
	const what = 'id' in refusal ? refusal.id : 'system' in refusal ? refusal.system : '';
	return m.refusals[refusal.why]({ what });
}

/**
 * @param site the problem as it was drawn. A thing that its story speaks of may be gone from an entered plan:
 * then the story stays as drawn.
 * @returns the story, its sentences begun with a capital where a word stands in place of a name.
 */
export function boardStory({ problem, language }: BoardSpeech, site: Problem): Story {
	const { title, lead, paragraphs } = told(problem, site, language);
	return { title: sentences(title), lead: sentences(lead), paragraphs: paragraphs.map(sentences) };
}

function told(problem: Problem, site: Problem, language: BoardSpeech['language']): Story {
	try {
		return storyOf(problem, language);
	} catch (error) {
		if (error instanceof RangeError) return storyOf(site, language);
		throw error;
	}
}
