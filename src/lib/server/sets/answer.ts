/** Whether an answer counts in a practice set: judged here, whatever the device thought. */
import * as z from 'zod';
import { allRight, asksOfPlace, outcomesOf, replaySet, type SetPlace } from '#lib/flow/index.ts';
import type { MarkedAnswers } from '../attempts/mark.ts';
import type { Database } from '../db/open.ts';
import { findOwnSet, setAnswersOf } from '../db/own-sets.ts';
import type { SetAnswerTable } from '../db/schema.ts';
import { fitJson, type InputResult } from '../input.ts';
import type { Who } from '../people/who.ts';
import type { InputProblem } from '../problems.ts';
import { contentOf } from './learner.ts';
import { knownPlace } from './places.ts';
import { setScenarios } from './scenarios.ts';

/** @reason more problems than anyone works in one set; keeps numbers small. */
const LAST_PLACE = 1_000_000;

/** To which place of which assignment an answer belongs, as it is sent. */
const sentPlaceSchema = z.strictObject({
	assignment: z.uuid().lowercase({ error: 'is not in small letters; give a UUID in small letters' }),
	place: z.int().min(0).max(LAST_PLACE)
});

export type SentPlace = z.output<typeof sentPlaceSchema>;

/** What was sent, parted: the answer itself, and the place that it is meant for. */
export interface PartedAnswer {
	readonly answer: unknown;
	readonly place: SentPlace | undefined;
}

/** Parts the place in a set from what else was sent. */
export function partAnswer(input: unknown): InputResult<PartedAnswer> {
	if (typeof input !== 'object' || input === null || Array.isArray(input) || !('set' in input)) return { kind: 'read', value: { answer: input, place: undefined } };
	const { set, ...answer } = input;
	const read = fitJson({ set }, z.strictObject({ set: sentPlaceSchema }));
	return read.kind === 'read' ? { kind: 'read', value: { answer, place: read.value.set } } : read;
}

/** What an answer is to its set. */
export type SetJudgement =
	| { readonly kind: 'counts'; readonly row: SetAnswerTable }
	/** It was sent before, and counted then. */
	| { readonly kind: 'counted' }
	/** The set was taken back, or the place is answered already: the answer is kept as practice. */
	| { readonly kind: 'practice' }
	| { readonly kind: 'refused'; readonly status: number; readonly problems: readonly InputProblem[] };

const PRACTICE = { kind: 'practice' } as const;

function refused(status: number, field: string, problem: string, remedy: string): SetJudgement {
	return { kind: 'refused', status, problems: [{ field, problem, remedy }] };
}

/**
 * Holds a marked answer against the set that it is meant for. Answers may come late and in any order, but only to
 * the round at hand, and only to the very problem that the set has at that place.
 */
export async function judgeForSet(db: Database, who: Who, sent: SentPlace, marked: MarkedAnswers, now: Date): Promise<SetJudgement> {
	if (who.kind === 'guest') return refused(401, 'session', 'is over or was never begun', 'sign in again; what you did is kept');
	const row = who.role === 'learner' ? await findOwnSet(db, who, sent.assignment) : null;
	if (row === null) return refused(409, 'set.assignment', 'is no set of yours', 'send the answer without "set": it is kept as practice');
	const answers = await setAnswersOf(db, who.id, [row.id]);
	const before = answers.find((one) => one.place === sent.place);
	if (before !== undefined) return before.attempt === marked.sent.id ? { kind: 'counted' } : PRACTICE;
	if (row.closed) return PRACTICE;
	const content = contentOf(row);
	const { state, context } = replaySet(content, answers);
	if (state === 'passed' || Math.floor(sent.place / content.count) !== context.round) {
		return refused(409, 'set.place', 'is not of the round at hand', 'load the set again, and answer a problem of its round');
	}
	const scenarios = await setScenarios(db, who.organisation, content);
	const place = knownPlace({ assignment: row.id, content, seed: row.seed, person: who.id, scenarios }, sent.place);
	if (!isOf(marked, place)) return refused(409, 'set.place', 'has another problem', 'load the set again, and answer the problem of that place');
	const asks = asksOfPlace(marked.scenario, place);
	return {
		kind: 'counts',
		row: {
			attempt_id: marked.sent.id,
			assignment_id: row.id,
			person_id: who.id,
			place: sent.place,
			all_right: Number(allRight(asks, marked.grades)),
			critical: outcomesOf(asks, marked.grades).filter((one) => one.critical).length,
			at: now.toISOString()
		}
	};
}

/** Whether it is the problem of the place that was answered, and all of what is asked there. */
function isOf({ sent, scenario }: MarkedAnswers, place: SetPlace): boolean {
	const asked = sent.asks ?? scenario.asks.map((ask) => ask.id);
	return (
		scenario.id === place.scenario &&
		scenario.version === place.version &&
		sent.seed === place.seed &&
		asked.length === place.asks.length &&
		asked.every((ask, i) => ask === place.asks[i])
	);
}
