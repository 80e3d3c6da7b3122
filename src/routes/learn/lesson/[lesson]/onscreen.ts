/** Which problem of a lesson is on screen, kept on the device: a reload finds it and its explanation again. */
import type { PictureAnswer } from '#lib/findings/index.ts';
import type { LessonState, LessonTask } from '#lib/flow/index.ts';
import { sameTask } from '../../course/session.svelte.ts';
import { fieldsOf, isCount, isFields, readStore, writeStore } from '../../course/store.ts';

export interface OnScreen {
	readonly task: LessonTask;
	/** How many answers of the lesson came before it. */
	readonly nth: number;
	readonly answered: boolean;
	/** What was typed into the open steps of a half-done example. */
	readonly texts?: readonly string[];
	/** What was marked and chosen in a picture. */
	readonly picture?: Pick<PictureAnswer, 'choice'> & { readonly marked: readonly string[] | null };
}

/** @reason longer entries are refused unread anyway */
const LONGEST_TEXT = 200;

/** @param person of whom it is kept: an id, or `guest` */
function keyOf(person: string, lesson: string): string {
	return `underfoot.lesson.${person}.${lesson}`;
}

/** Keeps what is on screen. */
export function keepOnScreen(person: string, lesson: string, at: OnScreen): void {
	writeStore(keyOf(person, lesson), JSON.stringify(at));
}

/**
 * @returns what is to be on screen: the kept problem while it is at hand, or while it was the last one answered and
 * its explanation is not yet read; else the problem at hand.
 */
export function onScreen(person: string, lesson: string, state: LessonState): OnScreen | undefined {
	const kept = read(readStore(keyOf(person, lesson)));
	const { answered } = state.context;
	if (kept !== undefined) {
		if (!kept.answered && kept.nth === answered && sameTask(kept.task, state.next)) return kept;
		if (kept.answered && kept.nth + 1 === answered) return kept;
	}
	return atHand(state);
}

/** @returns the problem at hand, untouched. */
export function atHand(state: LessonState): OnScreen | undefined {
	return state.next === undefined ? undefined : { task: state.next, nth: state.context.answered, answered: false };
}

function read(text: string | null): OnScreen | undefined {
	const kept = fieldsOf(text);
	const task = kept?.['task'];
	if (kept === undefined || !isFields(task)) return undefined;
	const { nth, answered, texts, picture } = kept;
	const { task: id, seed, halfDone } = task;
	if (typeof id !== 'string' || !isCount(seed) || !isCount(nth)) return undefined;
	return {
		task: { task: id, seed, halfDone: isCount(halfDone) ? halfDone : undefined },
		nth,
		answered: answered === true,
		...(isTexts(texts) ? { texts: texts.map((one) => one.slice(0, LONGEST_TEXT)) } : {}),
		...pictureFrom(picture)
	};
}

function pictureFrom(value: unknown): Pick<OnScreen, 'picture'> {
	if (!isFields(value)) return {};
	const { marked, choice } = value;
	return { picture: { marked: isTexts(marked) ? marked : null, choice: typeof choice === 'string' ? choice : '' } };
}

function isTexts(value: unknown): value is readonly string[] {
	return Array.isArray(value) && value.every((one) => typeof one === 'string');
}
