import type { Attempt } from '../db/attempts.ts';

/** A stored answer as its guest is told it: what was sent, the drawn values, the server's grades. */
export function toldAttempt(attempt: Attempt): object {
	return {
		attempt: attempt.id,
		scenario: attempt.scenario_id,
		version: attempt.scenario_version,
		drawVersion: attempt.draw_version,
		slipSetVersion: attempt.slip_set_version,
		engineVersion: attempt.engine_version,
		seed: Number(attempt.seed),
		acceptedTry: attempt.accepted_try,
		language: attempt.language,
		units: attempt.units,
		createdAt: attempt.created_at,
		drawn: JSON.parse(attempt.plan),
		answers: JSON.parse(attempt.answers),
		grades: JSON.parse(attempt.result)
	};
}
