/** A check as it stands: replayed from what is stored of it. */
import { initialTransition, transition } from 'xstate';
import type { CoursePlace } from '#lib/course/index.ts';
import { checkMachine, type CheckContext, type CheckEvent, type CheckPlace } from '#lib/flow/index.ts';
import type { PassRule, Standing } from '#lib/mastery/index.ts';
import { eventsOf, findTry, type CheckTry } from '../db/checks.ts';
import type { Database } from '../db/open.ts';
import { drawItem, type CheckItem, type DrawnItem, type ItemAnswer, type ItemResult } from './items.ts';

/** A check as the learner may see it while it runs, and after. */
export interface CheckView {
	readonly id: string;
	readonly lesson: CoursePlace;
	readonly nth: number;
	readonly language: 'en' | 'es';
	readonly rule: PassRule;
	readonly place: CheckPlace;
	readonly context: CheckContext;
	/** Items of the page at hand. For the server: a page shows of them only what is to be seen. */
	readonly items: readonly DrawnItem[];
	readonly answers: Readonly<Record<string, ItemAnswer>>;
	readonly supervision: Supervision | null;
	/** Of a check that ended: everything, key and diagnoses too. */
	readonly results: readonly ItemResult[];
	/** How it ended; undefined while it runs. */
	readonly end: Standing | undefined;
	readonly day: string;
}

/** Who was present at a check, how the learner was identified, and where. */
export interface Supervision {
	readonly trainer: string;
	readonly identified: string;
	readonly place: string;
	/** ISO 8601. What is handed in later was not supervised any more: nobody is known to have been there. */
	readonly until: string;
}

/** What is stored of a check's events, by kind. Written by checks.ts alone. */
export type StoredStep =
	| { readonly kind: 'page'; readonly items: readonly CheckItem[] }
	| { readonly kind: 'answered'; readonly item: string; readonly answer: ItemAnswer }
	| { readonly kind: 'handed-in'; readonly results: readonly ItemResult[]; readonly standing: Standing; readonly items: readonly CheckItem[] };

/** A check, replayed from its events. */
export interface Replayed {
	readonly of: CheckTry;
	readonly rule: PassRule;
	readonly seq: number;
	/** When the last thing happened in it, ISO 8601. */
	readonly lastAt: string;
	/** What was sent, by the id it was sent under. */
	readonly sent: ReadonlyMap<string, string>;
	readonly place: CheckPlace;
	readonly context: CheckContext;
	readonly items: readonly CheckItem[];
	/** All items asked so far. */
	readonly asked: readonly CheckItem[];
	readonly answers: Readonly<Record<string, ItemAnswer>>;
	readonly results: readonly ItemResult[];
	readonly end: Standing | undefined;
}

/** @returns a try, replayed from its events. @throws Error for one without a first page: it is written with the try */
export async function replayedCheck(db: Database, of: CheckTry): Promise<Replayed> {
	const rows = await eventsOf(db, of.id);
	const stored = rows.map((row) => JSON.parse(row.payload) as StoredStep);
	const [first, ...later] = stored;
	if (first?.kind !== 'page') throw new Error('A check without a first page');
	let items = first.items;
	let asked = items;
	let answers: Record<string, ItemAnswer> = {};
	const results: ItemResult[] = [];
	let end: Standing | undefined;
	let [snapshot] = initialTransition(checkMachine, { items: items.map((item) => item.id) });
	const step = (event: CheckEvent): void => {
		[snapshot] = transition(checkMachine, snapshot, event);
	};
	for (const event of later) {
		if (event.kind === 'answered') {
			answers = { ...answers, [event.item]: event.answer };
			step({ type: 'FILLED', item: event.item });
		} else if (event.kind === 'handed-in') {
			items = event.items;
			asked = [...asked, ...items];
			answers = {};
			results.push(...event.results);
			if (event.standing.kind !== 'more') end = event.standing;
			step({ type: 'REVIEW' });
			step({ type: 'HAND_IN' });
			step({ type: 'JUDGED', standing: event.standing.kind, items: items.map((item) => item.id) });
		}
	}
	return {
		of,
		rule: JSON.parse(of.rule) as PassRule,
		seq: rows.at(-1)?.seq ?? 0,
		lastAt: rows.at(-1)?.at ?? of.at,
		sent: new Map(rows.map((row) => [row.id, row.sent])),
		place: snapshot.value,
		context: snapshot.context,
		items,
		asked,
		answers,
		results,
		end
	};
}

/** @returns a check as the learner may see it. */
export function viewOf(check: Replayed): CheckView {
	const { of, rule, place, context, end } = check;
	return {
		id: of.id,
		lesson: of.lesson as CoursePlace,
		nth: of.nth,
		language: of.language === 'es' ? 'es' : 'en',
		rule,
		place,
		context,
		items: check.items.map(drawItem),
		answers: check.answers,
		supervision: supervisionAt(of, check.lastAt),
		// Right, wrong and why are told after the end only.
		results: end === undefined ? [] : check.results,
		end,
		day: of.day
	};
}

/** @returns a try of a person as it stands, with everything once it has ended; null if that person has none of this id. */
export async function findCheck(db: Database, person: string, id: string): Promise<CheckView | null> {
	const of = await findTry(db, person, id);
	return of === null ? null : viewOf(await replayedCheck(db, of));
}

/** Who was present when something happened in a try; null where nobody was, or no longer. @param at ISO 8601 */
export function supervisionAt(of: CheckTry, at: string): Supervision | null {
	const opened = of.supervision === null ? null : (JSON.parse(of.supervision) as Supervision);
	return opened !== null && at <= opened.until ? opened : null;
}
