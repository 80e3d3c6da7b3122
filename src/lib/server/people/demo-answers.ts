/** Site problems answered rightly, as a browser sends them: for the invented organisation, and for tests. */
import { randomUUID } from 'node:crypto';
import { analysisOf, rightValue } from '#lib/grading/index.ts';
import { writeQuantity } from '#lib/quantity/index.ts';
import { DRAW_VERSION, type Ask, type NumberAsk, type Problem } from '#lib/scenario/index.ts';
import { SLIP_SET_VERSION } from '#lib/slips/index.ts';

/** A body of `POST /api/attempts`. */
export interface SentBody {
	id: string;
	scenario: string;
	version: number;
	drawVersion: number;
	slipSetVersion: number;
	seed: number;
	acceptedTry: number;
	language: 'en' | 'es';
	answers: Record<string, Record<string, string>>;
}

/** The right answer to an ask, as it is sent. */
function rightAnswer(problem: Problem, ask: Ask): Record<string, string> {
	if (ask.kind === 'decision') return { kind: 'decision', decision: analysisOf(problem).verdict.decision };
	const right = rightValue(problem, ask);
	if (right === undefined) return { kind: 'not-stated' };
	return { kind: 'number', text: writtenTo(ask, right) };
}

/** A value as fine as an ask wants it. */
function writtenTo(ask: NumberAsk, si: number): string {
	const { unit, value } = ask.precision;
	if (unit === 'in') return writeQuantity(si, { unit: 'ft-in', inchDenominator: value < 1 ? 2 : 1, language: 'en' });
	return writeQuantity(si, { unit, decimals: Math.max(0, Math.ceil(-Math.log10(value))), language: 'en' });
}

/** @returns a problem answered rightly, under a new id. */
export function answered(problem: Problem): SentBody {
	return {
		id: randomUUID(),
		scenario: problem.scenario.id,
		version: problem.scenario.version,
		drawVersion: DRAW_VERSION,
		slipSetVersion: SLIP_SET_VERSION,
		seed: problem.seed,
		acceptedTry: problem.acceptedTry,
		language: 'en',
		answers: Object.fromEntries(problem.scenario.asks.map((ask) => [ask.id, rightAnswer(problem, ask)]))
	};
}
