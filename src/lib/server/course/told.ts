/** What a browser is told of a check while it runs: which items there are and which are answered, and how it ended. */
import * as z from 'zod';
import { LESSON_IDS } from '#lib/course/index.ts';
import type { Person, Who } from '../people/who.ts';
import type { InputProblem } from '../problems.ts';
import { answer, refusal } from '../respond.ts';
import type { CheckView } from './check-replay.ts';
import type { CheckResult } from './checks.ts';

/** Without seed, plan, key or grades. */
export interface ToldCheck {
	readonly id: string;
	readonly lesson: string;
	readonly nth: number;
	readonly place: CheckView['place'];
	/** Pages handed in. */
	readonly pages: number;
	readonly items: readonly { readonly id: string; readonly filled: boolean }[];
	/** How it ended; null while it runs. */
	readonly end: string | null;
}

/** @returns what a browser may know of a check. */
export function toldCheck(view: CheckView): ToldCheck {
	const { id, lesson, nth, place, context, end } = view;
	return {
		id,
		lesson,
		nth,
		place,
		pages: context.pages,
		items: context.items.map((item) => ({ id: item, filled: context.filled.includes(item) })),
		end: end?.kind ?? null
	};
}

/** What is said of a check that cannot be begun. */
const SHUT: Readonly<Record<Extract<CheckResult, { kind: 'shut' }>['why'], InputProblem>> = {
	'not-ready': { field: 'lesson', problem: 'is not ready for its check', remedy: 'practise until it is' },
	tomorrow: { field: 'lesson', problem: 'has had all tries of today', remedy: 'practise, and try again tomorrow' },
	locked: { field: 'lesson', problem: 'has no tries left', remedy: 'ask your trainer to unlock it' },
	passed: { field: 'lesson', problem: 'is passed already', remedy: 'go on' }
};

/** @returns the answer to a step of a check: the told check, or what is wrong. */
export function tellCheck(result: CheckResult): Response {
	if (result.kind === 'done') return answer(200, JSON.stringify(toldCheck(result.view)));
	return result.kind === 'shut' ? refusal(409, [SHUT[result.why]]) : refusal(result.status, result.problems);
}

/** How a check is begun. */
export const checkStart = z.strictObject({ lesson: z.enum([...LESSON_IDS, 'final']), language: z.enum(['en', 'es']) });

/**
 * @param meant id of the person for whom the browser kept what it sends; null where it says none
 * @returns the person whose course it is, or the refusal of a guest, whose session may be over, and of somebody else
 * who signed in on this browser meanwhile
 */
export function learnerOf(who: Who, meant: string | null = null): Person | Response {
	if (who.kind !== 'person') {
		return refusal(401, [{ field: 'session', problem: 'is over or was never begun', remedy: 'sign in again; what you did is kept' }]);
	}
	if (meant !== null && meant !== who.id) {
		return refusal(401, [{ field: 'session', problem: 'is somebody else’s', remedy: 'sign in again as the one who did this; it is kept' }]);
	}
	return who;
}
