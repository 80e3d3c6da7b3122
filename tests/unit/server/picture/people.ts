/** Learners of a crew whose answers, right or with a slip, go the way of every answer. */
import { shippedVersions } from '#lib/server/attempts/shipped.ts';
import { receiveAnswers } from '#lib/server/attempts/receive.ts';
import type { Database } from '#lib/server/db/open.ts';
import type { Grades } from '#lib/flow/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { slipEntry } from '../../../e2e/learner.ts';
import { answered, answering, problemOf } from '../../../support/answered.ts';
import { aLearner, type TestCrew } from '../people/organisation.ts';

/** A learner, and under which id the answers are kept. */
export interface TestLearner {
	readonly id: string;
	readonly answerer: string;
}

export async function aTaught(db: Database, organisation: string, number: string, crews: readonly TestCrew[], name?: string): Promise<TestLearner> {
	const id = await aLearner(db, organisation, number, crews, name);
	const { answerer_id: answerer } = await db.selectFrom('person').select('answerer_id').where('id', '=', id).executeTakeFirstOrThrow();
	return { id, answerer };
}

/** What somebody answers: a problem of a scenario, right but for one slip in one ask. */
export interface Answering {
	readonly scenario?: string;
	readonly seed: number;
	readonly ask?: string;
	readonly slip?: SlipId;
	readonly at: Date;
}

const NO_COOKIES = { get: () => undefined, set: () => undefined };

/** Answers a problem. @returns the id of the answer, and the grades that the server gave it */
export async function answer(db: Database, { answerer }: TestLearner, { scenario = 'bridge-bearing', seed, ask, slip, at }: Answering): Promise<{ readonly id: string; readonly grades: Grades }> {
	const problem = problemOf(scenario, seed);
	const right = answered(problem);
	const body = slip === undefined || ask === undefined ? right : answering(right, ask, slipEntry(problem, ask, slip));
	const receipt = await receiveAnswers(db, { cookies: NO_COOKIES, secure: false, answerer }, body, shippedVersions, at);
	if (receipt.kind !== 'stored') throw new Error(JSON.stringify(receipt.problems));
	return { id: receipt.attempt, grades: JSON.parse(receipt.grades) as Grades };
}
