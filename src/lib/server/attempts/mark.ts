import { gradeProblem, type Answer, type Grade } from '#lib/grading/index.ts';
import type { Language, Question, Unreadable } from '#lib/quantity/index.ts';
import { DRAW_VERSION, type Ask, type DrawResult, type Drawn, type NumberAsk, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { SLIP_SET_VERSION } from '#lib/slips/index.ts';
import { fitJson, type InputResult } from '../input.ts';
import { DrawMemory } from './draw-memory.ts';
import { partOf, sentSchema, sentSchemaOf, type SentAnswers } from './answer.ts';

/** Draws kept: about 5 kB each. @reason the problems that a few hundred people work on at the same time. */
const DRAWS_KEPT = 2000;
const draws = new DrawMemory(DRAWS_KEPT);

/**
 * Draws a problem that is about to be worked on and keeps it, so that marking its answers need not draw again.
 * @returns the problem, or undefined if the seed gives none of this scenario
 */
export function readyProblem(scenario: Scenario, seed: number): Problem | undefined {
	const result = draws.of(scenario, seed);
	return result.kind === 'drawn' ? result.problem : undefined;
}

/** @returns what a seed of a scenario draws, from the memory of draws if it was drawn lately. */
export function problemOfSeed(scenario: Scenario, seed: number): DrawResult {
	return draws.of(scenario, seed);
}

/** Where scenarios are found. */
export interface Scenarios {
	/** @returns every version of a scenario that problems may be drawn from; none for an unknown id. */
	readonly versionsOf: (id: string) => readonly Scenario[];
}

/** A grade of an answer that was read; what cannot be read is asked for again and never stored. */
export type ReadGrade = Exclude<Grade, { kind: 'unreadable' | 'question' }>;

/** An answered problem with the server's own draw and marks. */
export interface MarkedAnswers {
	readonly sent: SentAnswers;
	readonly scenario: Scenario;
	readonly drawn: Drawn;
	readonly grades: Readonly<Record<string, ReadGrade>>;
}

/** Entries that are not read as one number: no wrong answers, they are asked for again. */
export interface Unread {
	readonly kind: 'unread';
	readonly language: Language;
	readonly entries: readonly { readonly ask: NumberAsk; readonly reading: Unreadable | Question }[];
}

type Result<Value> = InputResult<Value>;

function refused(status: number, field: string, problem: string, remedy: string): Result<never> {
	return { kind: 'refused', status, problems: [{ field, problem, remedy }] };
}

/**
 * Marks what was sent: draws the problem again from its seed, holds the accepted try against the draw, and
 * grades. What the client says of the problem decides nothing; the plan and the marks are the server's own.
 * Refused are: what does not fit (400), an unknown scenario (404), a problem that was not drawn so (409).
 */
export function markAnswers(input: unknown, scenarios: Scenarios): Result<MarkedAnswers> | Unread {
	const found = readSent(input, scenarios);
	if (found.kind === 'refused') return found;
	const { sent, scenario } = found.value;
	const drawn = drawnAgain(sent, scenario);
	if (drawn.kind === 'refused') return drawn;
	const grades = gradeProblem(drawn.value, answersOf(sent), { language: sent.language });
	return kept(sent, scenario, drawn.value, grades);
}

/** The sent document, and the scenario that it is of. */
function readSent(input: unknown, scenarios: Scenarios): Result<{ sent: SentAnswers; scenario: Scenario }> {
	const { id, version } = named(input);
	const versions = scenarios.versionsOf(id);
	const scenario = versions.find((one) => one.version === version);
	if (scenario !== undefined) {
		const asks = asksIn(input, scenario);
		if (asks === undefined) return refused(400, 'asks', 'is no part of this scenario that can be asked by itself', 'give ids of its asks in its order, a decision only with its numbers');
		const sent = fitJson(input, sentSchemaOf(scenario, asks));
		return sent.kind === 'read' ? { kind: 'read', value: { sent: sent.value, scenario } } : sent;
	}
	const sent = fitJson(input, sentSchema);
	if (sent.kind === 'refused') return sent;
	if (versions.length === 0) return refused(404, 'scenario', 'is not known here', 'draw the problem again');
	return refused(409, 'version', 'is not kept here', `draw the problem again from version ${versions.map((one) => one.version).join(' or ')}`);
}

function named(input: unknown): { id: string; version: unknown } {
	if (typeof input !== 'object' || input === null) return { id: '', version: undefined };
	const id = 'scenario' in input && typeof input.scenario === 'string' ? input.scenario : '';
	return { id, version: 'version' in input ? input.version : undefined };
}

/** What was asked: all, or the part that is named. What is no list of texts is left to the schema. */
function asksIn(input: unknown, scenario: Scenario): readonly Ask[] | undefined {
	const named = typeof input === 'object' && input !== null && 'asks' in input ? input.asks : undefined;
	if (!Array.isArray(named)) return scenario.asks;
	const ids = named.filter((one): one is string => typeof one === 'string');
	return ids.length === named.length ? partOf(scenario, ids) : scenario.asks;
}

/** The problem, drawn by the server itself. */
function drawnAgain(sent: SentAnswers, scenario: Scenario): Result<Problem> {
	if (sent.drawVersion !== DRAW_VERSION) {
		return refused(409, 'drawVersion', `is ${sent.drawVersion}, which is not kept here`, `draw the problem again by version ${DRAW_VERSION}`);
	}
	if (sent.slipSetVersion !== SLIP_SET_VERSION) {
		return refused(409, 'slipSetVersion', `is ${sent.slipSetVersion}, which is not kept here`, `explain by version ${SLIP_SET_VERSION}`);
	}
	const result = draws.of(scenario, sent.seed);
	if (result.kind === 'none') return refused(409, 'seed', 'gives no problem of this scenario', 'draw the problem again with another seed');
	if (result.problem.acceptedTry !== sent.acceptedTry) {
		return refused(409, 'acceptedTry', `is ${sent.acceptedTry}, and this seed gives another`, 'draw the problem again from its seed');
	}
	return { kind: 'read', value: result.problem };
}

function answersOf(sent: SentAnswers): ReadonlyMap<string, Answer> {
	return new Map(Object.entries(sent.answers));
}

/** What is kept of the grades, unless an entry could not be read. */
function kept(
	sent: SentAnswers,
	scenario: Scenario,
	problem: Problem,
	grades: ReadonlyMap<string, Grade>
): Result<MarkedAnswers> | Unread {
	const entries: { ask: NumberAsk; reading: Unreadable | Question }[] = [];
	const read: Record<string, ReadGrade> = {};
	for (const ask of scenario.asks) {
		if (sent.answers[ask.id] === undefined) continue;
		const grade = grades.get(ask.id);
		if (grade === undefined) throw new Error(`The answer to ${ask.id} was not graded`);
		if (grade.kind !== 'unreadable' && grade.kind !== 'question') read[ask.id] = grade;
		else if (ask.kind === 'number') entries.push({ ask, reading: grade.reading });
	}
	if (entries.length > 0) return { kind: 'unread', language: sent.language, entries };
	return { kind: 'read', value: { sent, scenario, drawn: problem.drawn, grades: read } };
}
