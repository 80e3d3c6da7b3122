/** What the invented organisation's people learned: courses gone through from the first lesson to the final check, at a time of one's own. */
import type { CoursePlace } from '#lib/course/index.ts';
import { shippedVersions } from '../attempts/shipped.ts';
import { answerItem, beginCheck, handIn, type CheckResult } from '../course/checks.ts';
import type { CheckItem } from '../course/items.ts';
import { receiveEvent } from '../course/receive.ts';
import { courseOf } from '../course/state.ts';
import { toldCheck } from '../course/told.ts';
import { eventsOf } from '../db/checks.ts';
import type { Database } from '../db/open.ts';
import { CourseDriver, type Plan, type ToldOfCheck, type Transport } from './demo-learner.ts';
import type { Person } from './who.ts';

/** @reason about as long as a problem takes */
const STEP = 2 * 60 * 1000;

/** A clock that goes on by itself, so that not everything happens at once. */
function clockFrom(start: Date): () => Date {
	let at = start.getTime();
	return () => new Date((at += STEP));
}

/** Straight to the functions of the server. @param clock is asked for each event */
export function courseInProcess(db: Database, who: Person, clock: () => Date): Transport {
	const told = (result: CheckResult): ToldOfCheck => {
		if (result.kind !== 'done') throw new Error(`A check was refused: ${JSON.stringify(result)}`);
		return toldCheck(result.view);
	};
	return {
		event: async (event) => {
			const receipt = await receiveEvent(db, who, event, shippedVersions, clock());
			if (receipt.kind !== 'stored') throw new Error(`An event was refused: ${JSON.stringify(receipt.problems)}`);
			return receipt;
		},
		begin: async (lesson) => told(await beginCheck(db, who, lesson, 'en', clock())),
		answer: async (check, body) => told(await answerItem(db, who, check, body, clock())),
		page: async (check, body) => told(await handIn(db, who, check, body, clock())),
		items: (check) => itemsAtHand(db, check)
	};
}

/** The items of a check's newest page, as they are stored. */
async function itemsAtHand(db: Database, check: string): Promise<readonly CheckItem[]> {
	const page = (await eventsOf(db, check)).findLast(({ kind }) => kind === 'page' || kind === 'handed-in');
	if (page === undefined) throw new Error('A check without a page');
	return (JSON.parse(page.payload) as { readonly items: readonly CheckItem[] }).items;
}

/**
 * Takes somebody through the course.
 * @param until the last place that is gone to: a lesson, whose check is passed, or `final`
 * @param plan which answers are right; all, if nothing is said
 * @returns when the last thing happened
 */
export async function goThroughCourse(db: Database, who: Person, start: Date, until: CoursePlace = 'final', plan?: Plan): Promise<Date> {
	const clock = clockFrom(start);
	const driver = new CourseDriver(courseInProcess(db, who, clock), plan);
	await driver.course((await courseOf(db, who.id, start)).state, until);
	return clock();
}
