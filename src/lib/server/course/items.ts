/** The items of a check: drawn, put together and graded on the server only. */
import type { SiteTask } from '#lib/course/index.ts';
import { drawPicture, gradePicture, type Picture, type PictureAnswer, type PictureGrade } from '#lib/findings/index.ts';
import { allRight } from '#lib/flow/index.ts';
import { analysisOf, gradeProblem, rightValue, type Answer, type Grade } from '#lib/grading/index.ts';
import { fillSlots, itemKey, type FormItem, type ItemOutcome, type Slot } from '#lib/mastery/index.ts';
import type { Language } from '#lib/quantity/index.ts';
import type { Ask, Problem, Scenario } from '#lib/scenario/index.ts';
import { problemOfSeed } from '../attempts/mark.ts';
import { shippedVersions } from '../attempts/shipped.ts';
import { asksOf, checkBook, findTask, scenarioOf } from './book.ts';
import { pictureEvidence, siteEvidence, type Evidence } from './origin.ts';

/** One item as it is stored: everything shown of it follows from task and seed. */
export interface CheckItem {
	/** Its place in the form, unique in its check. */
	readonly id: string;
	readonly task: string;
	readonly seed: number;
	readonly slot: Slot;
	/** Of a site task: the version of the scenario that it is drawn from. Left out in items from before, which are of the first. */
	readonly version?: number;
}

/** An item, drawn. */
export type DrawnItem =
	| { readonly kind: 'site'; readonly item: CheckItem; readonly problem: Problem; readonly asks: readonly Ask[] }
	| { readonly kind: 'picture'; readonly item: CheckItem; readonly picture: Picture };

/** An answered item. */
export type ItemAnswer =
	| { readonly kind: 'site'; readonly answers: Readonly<Record<string, Answer>> }
	| PictureAnswer;

interface ResultCommon {
	readonly item: CheckItem;
	readonly outcome: ItemOutcome;
	/** A redraw from the seed must give the drawn values again. */
	readonly evidence: Evidence;
}

/** How an item was answered, as it is stored when its page is handed in. */
export type ItemResult =
	| (ResultCommon & {
			readonly kind: 'site';
			readonly answer: Extract<ItemAnswer, { kind: 'site' }>;
			/** By id of the ask. */
			readonly grades: Readonly<Record<string, Grade>>;
	  })
	| (ResultCommon & { readonly kind: 'picture'; readonly answer: PictureAnswer; readonly grades: PictureGrade });

/** @returns an item as it is drawn. @throws RangeError on a task that the course no longer has, or a version that is not shipped any more. */
export function drawItem(item: CheckItem): DrawnItem {
	const task = findTask(item.task);
	if (task === undefined) throw new RangeError(`the course has no task "${item.task}"`);
	if (task.kind === 'finding') return { kind: 'picture', item, picture: drawPicture(task.picture, item.seed) };
	const scenario = versionOf(task, item.version ?? 1);
	const drawn = problemOfSeed(scenario, item.seed);
	if (drawn.kind === 'none') throw new RangeError(`the seed ${item.seed} draws no problem of "${item.task}"`);
	return { kind: 'site', item, problem: drawn.problem, asks: asksOf(task, scenario) };
}

/** A check that runs goes on with the version that it was begun with, whatever is shipped by then. */
function versionOf(task: SiteTask, version: number): Scenario {
	const found = shippedVersions.versionsOf(task.scenario).find((one) => one.version === version);
	if (found === undefined) throw new RangeError(`there is no version ${version} of the scenario "${task.scenario}"`);
	return found;
}

/** Whether a drawn task can stand in its place: it draws, its plan is of the wanted kind, and nothing repeats. */
function fits(one: FormItem, before: readonly FormItem[]): boolean {
	const task = findTask(one.task.id);
	if (task === undefined) return false;
	if (task.kind === 'finding') {
		const content = JSON.stringify(drawPicture(task.picture, one.seed).shown);
		return before.every((other) => other.task.id !== one.task.id || JSON.stringify(drawPicture(task.picture, other.seed).shown) !== content);
	}
	const scenario = scenarioOf(task);
	const result = problemOfSeed(scenario, one.seed);
	if (result.kind === 'none') return false;
	const { problem } = result;
	const { fails } = one.slot;
	if (fails !== undefined && (analysisOf(problem).verdict.decision === 'do-not-tie-off') !== fails) return false;
	const plan = JSON.stringify(problem.drawn);
	const last = before.at(-1);
	return before.every((other) => {
		const of = findTask(other.task.id);
		if (of?.kind !== 'site') return true;
		const drawn = problemOfSeed(scenarioOf(of), other.seed);
		if (drawn.kind === 'none') return true;
		if (of.scenario === task.scenario && JSON.stringify(drawn.problem.drawn) === plan) return false;
		return other !== last || !sameKey(problem, asksOf(task), drawn.problem, asksOf(of));
	});
}

/** Whether two neighbours have the same number for an answer, so that one could be copied. */
function sameKey(one: Problem, asks: readonly Ask[], other: Problem, otherAsks: readonly Ask[]): boolean {
	const values = (problem: Problem, of: readonly Ask[]): readonly (number | undefined)[] =>
		of.flatMap((ask) => (ask.kind === 'number' ? [rightValue(problem, ask)] : []));
	const theirs = values(other, otherAsks);
	return values(one, asks).some((value) => value !== undefined && theirs.includes(value));
}

/**
 * Puts the items of a page together.
 * @param seed the try's own, known to the server only
 * @param asked the items of the pages before
 * @param used items of earlier tries: none comes again
 */
export function pageItems(slots: readonly Slot[], seed: string, asked: readonly CheckItem[], used: readonly CheckItem[]): readonly CheckItem[] {
	const book = checkBook();
	const formItem = (item: CheckItem): FormItem => {
		const task = book.find((one) => one.id === item.task);
		if (task === undefined) throw new RangeError(`checks have no task "${item.task}"`);
		return { slot: item.slot, task, seed: item.seed };
	};
	const before = asked.map(formItem);
	const keys = new Set(used.map((item) => itemKey(formItem(item))));
	const filled = fillSlots(slots, book, { seed, asked: before, used: keys, fits });
	return filled.map(({ slot, task, seed: drawn }, i) => ({ id: `i${before.length + i + 1}`, task: task.id, seed: drawn, slot, ...versionFor(task.id) }));
}

/** What is stored of a new item's scenario; nothing for a picture. */
function versionFor(id: string): Pick<CheckItem, 'version'> {
	const task = findTask(id);
	return task?.kind === 'site' ? { version: scenarioOf(task).version } : {};
}

/** @returns how an item was answered. An answer that is missing or cannot be read is wrong; unsafe it is not. */
export function gradeItem(item: CheckItem, answer: ItemAnswer | undefined, language: Language): ItemResult {
	return gradeDrawn(drawItem(item), answer, language);
}

/** As `gradeItem`, of an item that is drawn already. */
export function gradeDrawn(drawn: DrawnItem, answer: ItemAnswer | undefined, language: Language): ItemResult {
	const { item } = drawn;
	const { cell, from } = item.slot;
	if (drawn.kind === 'picture') {
		const given: PictureAnswer = answer?.kind === 'picture' ? answer : { kind: 'picture', marked: [], choice: '' };
		const grade = gradePicture(drawn.picture, given);
		// A sign that was overlooked is an error; going on where one must not is on the unsafe side.
		const unsafe = drawn.picture.key.criticalChoices.includes(given.choice) && given.choice !== drawn.picture.key.choice;
		const outcome = { cell, from, right: grade.right, unsafe, failingPlan: false, acceptedFailingPlan: false };
		return { kind: 'picture', item, answer: given, outcome, evidence: pictureEvidence(drawn.picture), grades: grade };
	}
	const given = answer?.kind === 'site' ? answer : { kind: 'site' as const, answers: {} };
	const grades = Object.fromEntries(gradeProblem(drawn.problem, new Map(Object.entries(given.answers)), { language }));
	const decides = drawn.asks.some((ask) => ask.kind === 'decision');
	const failingPlan = decides && analysisOf(drawn.problem).verdict.decision === 'do-not-tie-off';
	const all = Object.values(grades);
	const outcome = {
		cell,
		from,
		right: allRight(drawn.asks, grades),
		unsafe: all.some((grade) => grade.kind === 'number' && grade.mark.kind === 'wrong' && grade.mark.critical),
		failingPlan,
		acceptedFailingPlan: failingPlan && all.some((grade) => grade.kind === 'decision' && grade.decision === 'tie-off')
	};
	return { kind: 'site', item, answer: given, outcome, evidence: siteEvidence(drawn.problem), grades };
}
