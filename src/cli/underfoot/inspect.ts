import { inspect, type Scenario } from '#lib/scenario/index.ts';
import type { Messages } from '#lib/text/index.ts';
import { quoted } from './arguments.ts';
import { readAs, refuse, type Outcome, type Read } from './outcome.ts';

/** Draws that an inspection makes if nothing is said. */
export const USUAL_DRAWS = 1000;
/** The most that one inspection makes: minutes. */
const MOST_DRAWS = 100_000;

/** @returns how many seeds an inspection draws. */
export function readDraws(text: string): Read<number> {
	const draws = Number(text);
	if (/^\d{1,6}$/.test(text) && draws >= 1 && draws <= MOST_DRAWS) return readAs(draws);
	return refuse('--draws', `is ${quoted(text)}`, `give a whole number from 1 to ${MOST_DRAWS}`);
}

/** What drawing a scenario many times shows; whether it may be published, and every finding with the field it is about. */
export function inspectScenario(scenario: Scenario, draws: number, words: Messages): Outcome {
	const { findings, turnedDown, ...report } = inspect(scenario, { draws });
	const faults = findings.filter((finding) => finding.severity === 'fault').length;
	return {
		kind: 'done',
		output: {
			kind: 'inspected',
			publishable: faults === 0,
			faults,
			findings: findings.map(({ path, also = [], ...finding }) => ({
				field: path.join('.'),
				...finding,
				...(also.length === 0 ? {} : { also: also.map((one) => one.join('.')) })
			})),
			turnedDown: Object.entries(turnedDown).map(([reason, tries]) => ({ reason, tries, words: wordsOf(reason, words) })),
			...report
		}
	};
}

function wordsOf(reason: string, words: Messages): string {
	return Object.entries(words.turnedDown).find(([id]) => id === reason)?.[1] ?? reason;
}
