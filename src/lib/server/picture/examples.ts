/** Real answers that look like one slip, with what is stored to set them up again. */
import type { Grades, OutcomeSlip } from '#lib/flow/index.ts';
import type { Grade } from '#lib/grading/index.ts';
import type { Drawn, NumberAsk, Scenario } from '#lib/scenario/index.ts';
import { answersById, answersWithSlip, type Answerer, type OutcomeFilter, type SlippedAnswer } from '../db/outcomes.ts';
import type { Database } from '../db/open.ts';

/** How many are shown. @reason what is looked at before it is talked about */
const SHOWN = 3;
/** Among how many they are chosen, so that they are of different people. */
const LOOKED_AT = 60;

/** @returns a version of a scenario, shipped or of the organisation; undefined for one that is not kept. */
export type VersionOf = (id: string, version: number) => Promise<Scenario | undefined>;

/** One answer that looks like a slip. */
export interface SlipExample {
	readonly person: Answerer;
	/** ISO 8601, UTC. */
	readonly at: string;
	readonly critical: boolean;
	readonly scenario: Scenario;
	readonly drawn: Drawn;
	readonly seed: number;
	readonly acceptedTry: number;
	readonly ask: NumberAsk;
	readonly grade: Extract<Grade, { kind: 'number' }>;
}

/** @returns some answers with a slip, of different people where there are any: on the unsafe side first, then the newest. */
export async function slipExamples(db: Database, people: readonly Answerer[], slip: OutcomeSlip, filter: OutcomeFilter, versionOf: VersionOf): Promise<readonly SlipExample[]> {
	const found = await answersWithSlip(db, people, slip, filter, LOOKED_AT);
	const chosen = ofDifferentPeople(found).slice(0, SHOWN);
	const stored = await answersById(db, people, chosen.map((one) => one.answer));
	const examples = chosen.map(async ({ answer, ask: askId, answerer, at, critical }): Promise<SlipExample | undefined> => {
		const row = stored.get(answer);
		const person = people.find((one) => one.answerer === answerer);
		const scenario = row === undefined ? undefined : await versionOf(row.scenario, row.version);
		const ask = scenario?.asks.find((one) => one.id === askId);
		if (row === undefined || person === undefined || scenario === undefined || ask?.kind !== 'number') return undefined;
		// Our own draws and gradings, stored as they were made.
		const grade = (JSON.parse(row.result) as Grades)[askId];
		if (grade?.kind !== 'number') return undefined;
		return { person, at, critical, scenario, drawn: JSON.parse(row.plan) as Drawn, seed: row.seed, acceptedTry: row.acceptedTry, ask, grade };
	});
	return (await Promise.all(examples)).filter((one) => one !== undefined);
}

/** The first of each person before any second one, critical ones before all others. */
function ofDifferentPeople(found: readonly SlippedAnswer[]): readonly SlippedAnswer[] {
	const turns = new Map<string, number>();
	const turn = new Map<SlippedAnswer, number>();
	for (const one of found) {
		const nth = turns.get(one.answerer) ?? 0;
		turns.set(one.answerer, nth + 1);
		turn.set(one, nth);
	}
	return found.toSorted((a, b) => Number(b.critical) - Number(a.critical) || (turn.get(a) ?? 0) - (turn.get(b) ?? 0));
}
