/** answers.csv: what was answered to every ask of every item of checks that ended. Without diagnoses: they are for teaching. */
import type { Answer, Grade } from '#lib/grading/index.ts';
import type { ItemResult } from '../course/items.ts';
import type { Row } from './csv.ts';
import type { EndedCheck } from './ended-checks.ts';

/** In this order, for good: new ones go to the end. */
export const ANSWER_COLUMNS = [
	'person_id',
	'name',
	'personal_number',
	'check_id',
	'lesson',
	'nth',
	'day',
	'zone',
	'started_at',
	'ended_at',
	'language',
	'passed',
	'item',
	'cell',
	'task',
	'scenario',
	'scenario_version',
	'seed',
	'draw_version',
	'accepted_try',
	'engine_version',
	'slip_set_version',
	'ask',
	'answer',
	'answer_si',
	'right',
	'right_si',
	'grade',
	'unsafe',
	'item_right'
] as const;

export type AnswerRow = Row<(typeof ANSWER_COLUMNS)[number]>;
type Graded = Pick<AnswerRow, 'ask' | 'answer' | 'answer_si' | 'right' | 'right_si' | 'grade' | 'unsafe'>;

/** What stands for "it cannot be stated from this label". */
const NOT_STATED = 'not-stated';

function typed(answer: Answer | undefined): string | null {
	switch (answer?.kind) {
		case undefined:
			return null;
		case 'number':
			return answer.text;
		case 'decision':
			return answer.decision;
		case 'not-stated':
			return NOT_STATED;
	}
}

function gradedAsk(ask: string, answer: Answer | undefined, grade: Grade | undefined): Graded {
	const common = { ask, answer: typed(answer) };
	switch (grade?.kind) {
		case 'number': {
			const { mark, answer: read, right } = grade;
			const unsafe = mark.kind === 'wrong' && mark.critical;
			return { ...common, answer_si: read ?? null, right: right === undefined ? NOT_STATED : null, right_si: right ?? null, grade: mark.kind, unsafe };
		}
		case 'decision': {
			const { mark, right } = grade;
			return { ...common, answer_si: null, right, right_si: null, grade: mark.kind, unsafe: mark.kind === 'wrong' && mark.critical };
		}
		case 'unreadable':
		case 'question':
		case undefined:
			return { ...common, answer_si: null, right: null, right_si: null, grade: grade?.kind ?? 'missing', unsafe: false };
	}
}

const marksAndChoice = (marked: readonly string[], choice: string): string => `${marked.join(' ')} / ${choice}`;

/** Of a picture: the marked parts and the choice count together. */
function gradedPicture({ answer, grades }: Extract<ItemResult, { kind: 'picture' }>): Graded {
	const right = [...answer.marked.filter((part) => !grades.extra.includes(part)), ...grades.missed];
	return {
		ask: 'marks-and-choice',
		answer: marksAndChoice(answer.marked, answer.choice),
		answer_si: null,
		right: marksAndChoice(right, grades.choice.right),
		right_si: null,
		grade: grades.right ? 'right' : 'wrong',
		unsafe: grades.critical
	};
}

function gradedItem(result: ItemResult): readonly Graded[] {
	if (result.kind === 'picture') return [gradedPicture(result)];
	const { answers } = result.answer;
	const asks = new Set([...Object.keys(result.grades), ...Object.keys(answers)]);
	return [...asks].map((ask) => gradedAsk(ask, answers[ask], result.grades[ask]));
}

function originOf({ item, evidence }: ItemResult) {
	const { origin } = evidence;
	const of = (name: string): string | number | null => origin[name] ?? null;
	return {
		task: item.task,
		scenario: of('scenario') ?? of('picture'),
		scenario_version: of('version'),
		seed: item.seed,
		draw_version: of('drawVersion'),
		accepted_try: of('acceptedTry'),
		engine_version: of('engineVersion'),
		slip_set_version: of('slipSetVersion')
	};
}

/** @returns the rows of one check, in the order of its items. @param zone of the site */
export function answerRows({ of, results, passed, endedAt }: EndedCheck, who: Pick<AnswerRow, 'person_id' | 'name' | 'personal_number'>, zone: string): readonly AnswerRow[] {
	const common = {
		...who,
		check_id: of.id,
		lesson: of.lesson,
		nth: of.nth,
		day: of.day,
		zone,
		started_at: of.at,
		ended_at: endedAt,
		language: of.language,
		passed
	};
	return results.flatMap((result) => {
		const about = { ...common, item: result.item.id, cell: result.outcome.cell, ...originOf(result), item_right: result.outcome.right };
		return gradedItem(result).map((graded): AnswerRow => ({ ...about, ...graded }));
	});
}
