import { QUANTITIES, formula } from '#lib/arrest/index.ts';
import { explain, gradeAsk, shownGivens, type Answer, type Candidate, type Diagnosis, type Grade } from '#lib/grading/index.ts';
import { echoQuantity, type Dimension, type Language } from '#lib/quantity/index.ts';
import { targetOf, type Ask, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { readingProblem } from '#lib/server/index.ts';
import type { Messages } from '#lib/text/index.ts';
import { quoted } from './arguments.ts';
import { provenance, systemOf } from './draw.ts';
import { readAs, refuse, type Outcome, type Read } from './outcome.ts';
import { formulaInSymbols, workingOf, written, type UnitSystem } from './writing.ts';

const DECISIONS = ['tie-off', 'do-not-tie-off'] as const;
const NOT_STATED = 'not-stated';

/** @returns the ask of an id, or which ones there are. */
export function findAsk(problem: Problem, id: string): Read<Ask> {
	const { asks } = problem.scenario;
	const found = asks.find((ask) => ask.id === id);
	if (found !== undefined) return readAs(found);
	return refuse('--ask', `is ${quoted(id)}`, `give one of ${asks.map((ask) => ask.id).join(', ')}`);
}

/** @returns an answer as the ask takes it: a decision, "not-stated", or a number as text. */
export function readAnswer(ask: Ask, text: string): Read<Answer> {
	if (ask.kind === 'number') return readAs<Answer>(text === NOT_STATED ? { kind: 'not-stated' } : { kind: 'number', text });
	const decision = DECISIONS.find((one) => one === text);
	if (decision !== undefined) return readAs<Answer>({ kind: 'decision', decision });
	return refuse('--answer', `is ${quoted(text)}`, `give ${DECISIONS.join(' or ')}`);
}

/** The mark of one answer, the explanations that fit, and the working. An unreadable answer is no wrong one: it is refused. */
export function gradeAnswer(problem: Problem, ask: Ask, answer: Answer, language: Language, words: Messages): Outcome {
	const grade = gradeAsk(problem, ask.id, answer, { language });
	if ((grade.kind === 'unreadable' || grade.kind === 'question') && ask.kind === 'number') {
		return { kind: 'refused', problems: [readingProblem('--answer', grade.reading, ask, language, words)] };
	}
	return {
		kind: 'done',
		output: {
			kind: 'graded',
			...provenance(problem),
			ask: ask.id,
			...(ask.kind === 'number' ? toldNumber(problem, ask, grade, language, words) : toldDecision(grade, words)),
			caution: words.verdict.caution
		}
	};
}

function toldDecision(grade: Grade, words: Messages): object {
	if (grade.kind !== 'decision') return {};
	return {
		mark: grade.mark,
		words: words.marking.marks[grade.mark.kind],
		decision: grade.decision,
		right: grade.right
	};
}

function toldNumber(problem: Problem, ask: NumberAsk, grade: Grade, language: Language, words: Messages): object {
	if (grade.kind !== 'number') return {};
	const system = systemOf(problem.scenario);
	const { dimension } = QUANTITIES[ask.quantity];
	const value = (si: number | undefined): object | string => (si === undefined ? NOT_STATED : written(si, dimension, system));
	const tree = formula(targetOf(ask), problem.resolved.shape);
	return {
		mark: grade.mark,
		words: words.marking.marks[grade.mark.kind],
		...(grade.read === undefined ? {} : { understood: echoQuantity(grade.read, language) }),
		answer: value(grade.answer),
		right: value(grade.right),
		...(grade.label === undefined ? {} : { label: grade.label }),
		...(grade.diagnosis === undefined ? {} : { diagnosis: toldDiagnosis(problem, ask, grade.diagnosis, dimension, system, words) }),
		formula: formulaInSymbols(tree),
		working: workingOf(tree, shownGivens(problem), system)
	};
}

function toldDiagnosis(
	problem: Problem,
	ask: NumberAsk,
	diagnosis: Diagnosis,
	dimension: Dimension,
	system: UnitSystem,
	words: Messages
): object {
	return {
		certainty: diagnosis.certainty,
		words: words.certainty[diagnosis.certainty],
		...(diagnosis.step === undefined ? {} : { step: diagnosis.step }),
		candidates: diagnosis.candidates.map((candidate) => toldCandidate(problem, ask, candidate, dimension, system, words))
	};
}

function toldCandidate(
	problem: Problem,
	ask: NumberAsk,
	candidate: Candidate,
	dimension: Dimension,
	system: UnitSystem,
	words: Messages
): object {
	const value = written(candidate.value, dimension, system);
	if (candidate.kind === 'entry') {
		return { kind: 'entry', ...candidate.slip, label: words.entrySlips[candidate.slip.entry].label, value };
	}
	const { ownTree } = explain(problem, ask, candidate.slips);
	return {
		kind: 'slips',
		slips: candidate.slips.map((id) => ({ slip: id, label: words.slips[id].label, rule: words.slips[id].rule })),
		steps: candidate.steps,
		value,
		...(ownTree === undefined ? {} : { formula: formulaInSymbols(ownTree) })
	};
}
