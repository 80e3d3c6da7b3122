/**
 * A draw as it is frozen: which try was accepted, and every drawn value. Imports nothing of Node, so that a
 * browser can make the same records and be compared.
 */
import { DRAW_VERSION, draw, type Drawn, type Scenario } from '#lib/scenario/index.ts';

export interface DrawnRecord {
	readonly seed: number;
	/** Undefined if the seed gives no problem. */
	readonly acceptedTry: number | undefined;
	readonly drawn: Drawn | undefined;
}

/** The draws of one scenario version, as the files of tests/frozen/draws hold them. */
export interface FrozenDraws {
	readonly scenario: string;
	readonly version: number;
	readonly drawVersion: number;
	readonly draws: readonly DrawnRecord[];
}

/** @returns the records of the seeds from `first` up to `last`, plain enough for JSON. */
export function drawnRecords(scenario: Scenario, first: number, last: number): FrozenDraws {
	const draws: DrawnRecord[] = [];
	for (let seed = first; seed <= last; seed += 1) {
		const result = draw(scenario, seed);
		draws.push(
			result.kind === 'none'
				? { seed, acceptedTry: undefined, drawn: undefined }
				: { seed, acceptedTry: result.problem.acceptedTry, drawn: result.problem.drawn }
		);
	}
	return { scenario: scenario.id, version: scenario.version, drawVersion: DRAW_VERSION, draws };
}
