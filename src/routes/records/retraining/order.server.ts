/** The form that orders retraining for many: read from the address for a look, and from what is sent to order. */
import * as z from 'zod';
import { addDays, addMonths, LEAST_DAY, RETRAINING_REASONS, type RetrainingReason } from '#lib/records/index.ts';
import { MOST_AHEAD, MOST_ORDERED, peopleToOrder, type Database, type OrderFilter, type Person } from '#lib/server/index.ts';

/** Fields of the form. */
export const FIELDS = ['whom', 'days', 'reason', 'due'] as const;
export type Typed = Readonly<Record<(typeof FIELDS)[number], string>>;

/** How far ahead training may run out and still be soon, days. @reason a year of planning */
const MOST_DAYS = 365;

/** Whom an order is for, as the form says it: `crew:ID`, `soon` or `expired`. */
const WHOM = z.string().regex(/^(?:soon|expired|crew:[0-9a-zA-Z-]{1,64})$/);

/** An order as it is to be given. */
export interface ReadOrder {
	readonly filter: OrderFilter;
	readonly reason: RetrainingReason;
	readonly due: string;
}

export type Reading = { readonly kind: 'read'; readonly order: ReadOrder } | { readonly kind: 'refused'; readonly problems: Readonly<Record<string, string>> };

/** @returns what was typed, cut, so that nothing endless comes back. */
export function typedOrder(get: (name: string) => unknown): Typed {
	const one = (name: string): string => {
		const value = get(name);
		return typeof value === 'string' ? value.slice(0, 100) : '';
	};
	return { whom: one('whom'), days: one('days'), reason: one('reason'), due: one('due') };
}

/** Reads the form. @param today local day */
export function readOrder(typed: Typed, today: string): Reading {
	const problems: Record<string, string> = {};
	const days = /^\d{1,3}$/.test(typed.days.trim()) ? Number(typed.days) : NaN;
	const reason = RETRAINING_REASONS.find((one) => one === typed.reason);
	const due = z.iso.date().safeParse(typed.due);
	if (!WHOM.safeParse(typed.whom).success) problems['whom'] = 'no-whom';
	if (typed.whom === 'soon' && !(days >= 1 && days <= MOST_DAYS)) problems['days'] = 'bad-days';
	if (reason === undefined) problems['reason'] = 'no-reason';
	if (!due.success) problems['due'] = 'no-day';
	else if (due.data < today) problems['due'] = 'due-past';
	else if (due.data > addMonths(today, MOST_AHEAD)) problems['due'] = 'due-far';
	if (reason === undefined || !due.success || Object.keys(problems).length > 0) return { kind: 'refused', problems };
	return { kind: 'read', order: { filter: filterOf(typed.whom, days, today), reason, due: due.data } };
}

function filterOf(whom: string, days: number, today: string): OrderFilter {
	if (whom.startsWith('crew:')) return { kind: 'crew', crew: whom.slice('crew:'.length) };
	return whom === 'soon' ? { kind: 'ends', from: today, to: addDays(today, days) } : { kind: 'ends', from: LEAST_DAY, to: addDays(today, -1) };
}

/** Finds those an order is for. `no-whom` for a crew that is not theirs. */
export async function peopleFor(db: Database, who: Person, filter: OrderFilter): Promise<{ readonly kind: 'people'; readonly people: readonly string[] } | { readonly kind: 'refused'; readonly problems: Readonly<Record<string, string>> }> {
	const people = await peopleToOrder(db, who, filter);
	if (people === null) return { kind: 'refused', problems: { whom: 'no-whom' } };
	return people.length > MOST_ORDERED ? { kind: 'refused', problems: { whom: 'too-many' } } : { kind: 'people', people };
}
