/** Which answers a picture is asked of, as it stands in an address. */
import type { OutcomeFilter } from '../db/outcomes.ts';
import { dayAfter, dayStart, isDay } from './days.ts';

/** The fields of the form, by their names in an address. */
export const FILTER_FIELDS = ['scenario', 'set', 'from', 'to'] as const;
export type FilterField = (typeof FILTER_FIELDS)[number];

/** What is wrong with a field. */
export type FilterProblem = 'unknown' | 'no-day' | 'turned-round';

/** What was asked for. */
export interface AskedFilter {
	readonly filter: OutcomeFilter;
	/** As it was typed or chosen; empty for nothing. */
	readonly typed: Readonly<Record<FilterField, string>>;
	/** Fields that are not read, and so not applied. */
	readonly problems: Readonly<Partial<Record<FilterField, FilterProblem>>>;
}

/** What may be chosen. */
export interface Choosable {
	readonly scenarios: readonly string[];
	readonly sets: readonly string[];
	/** IANA zone of the sites: days are local days there. */
	readonly zone: string;
}

/** @reason no id and no day is longer; what is longer is not repeated */
const LONGEST = 60;

/** @returns what an address asks for. A field that cannot be read is told, and left out of the filter. */
export function readFilter(search: URLSearchParams, { scenarios, sets, zone }: Choosable): AskedFilter {
	const typedIn = (name: FilterField): string => (search.get(name) ?? '').trim().slice(0, LONGEST);
	const typed = { scenario: typedIn('scenario'), set: typedIn('set'), from: typedIn('from'), to: typedIn('to') };
	const problems: Partial<Record<FilterField, FilterProblem>> = {};
	const chosen = (name: 'scenario' | 'set', among: readonly string[]): string | null => {
		if (typed[name] === '') return null;
		if (among.includes(typed[name])) return typed[name];
		problems[name] = 'unknown';
		return null;
	};
	const day = (name: 'from' | 'to'): string | null => {
		if (typed[name] === '') return null;
		if (isDay(typed[name])) return typed[name];
		problems[name] = 'no-day';
		return null;
	};
	const from = day('from');
	let to = day('to');
	if (from !== null && to !== null && to < from) {
		problems.to = 'turned-round';
		to = null;
	}
	return {
		filter: {
			scenario: chosen('scenario', scenarios),
			set: chosen('set', sets),
			since: from === null ? null : dayStart(zone, from),
			before: to === null ? null : dayStart(zone, dayAfter(to))
		},
		typed,
		problems
	};
}
