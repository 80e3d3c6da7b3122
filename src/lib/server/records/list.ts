/** Who is trained: a list of one organisation's learners, searched, filtered, sorted and paged by the database. */
import { TRAINING_STATES, addDays, stateOn, type TrainingState } from '#lib/records/index.ts';
import { courseBook } from '../course/book.ts';
import { dayIn } from '../course/day.ts';
import { readPayload } from '../course/state.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import {
	countStates,
	crewNamesOf,
	crewsByName,
	idsOfStretch,
	lessonEnds,
	trainingOf,
	type ListedTraining,
	type NamedCrew,
	type SearchWord,
	type StateDays,
	type Stretch,
	type TrainingScope
} from '../db/training.ts';
import type { Person } from '../people/who.ts';
import { folded } from './folded.ts';
import { recordSettings } from './found.ts';
import { remarkOn, type Remark } from './remark.ts';

/** People on a page. @reason a screen or two; the next one is a press away */
export const ON_PAGE = 50;
/** @reason nobody has a longer name and number in mind; each word costs a look through all people */
const LONGEST_SEARCH = 100;
const MOST_WORDS = 6;
/** Letters from which a word may stand anywhere in a crew's name; a shorter one is a word of it. @reason two letters stand in very many names */
const CREW_WORD = 3;
/** @reason more pages than any organisation has */
const LAST_PAGE = 1_000_000;

/** Whom the list shows: those who are there, all or by state; or those who left. */
export const LIST_FILTERS = ['all', ...TRAINING_STATES, 'left'] as const;
export type ListFilter = (typeof LIST_FILTERS)[number];

/** By name; by what ends first; by state, what needs something first. */
export const LIST_SORTS = ['until', 'name', 'state'] as const;
export type ListSort = (typeof LIST_SORTS)[number];

/** What is asked of the list, as it stands in an address. */
export interface AskedList {
	/** As it was typed. */
	readonly search: string;
	readonly filter: ListFilter;
	/** Id of a crew; empty for all. */
	readonly crew: string;
	readonly sort: ListSort;
	/** From 1. */
	readonly page: number;
}

/** @returns what an address asks for; what it does not know is as if it were not there. */
export function readAskedList(search: URLSearchParams): AskedList {
	const page = Number(search.get('page') ?? '1');
	return {
		search: (search.get('q') ?? '').trim().slice(0, LONGEST_SEARCH),
		filter: LIST_FILTERS.find((one) => one === search.get('state')) ?? 'all',
		crew: search.get('crew') ?? '',
		sort: LIST_SORTS.find((one) => one === search.get('sort')) ?? 'until',
		page: Number.isInteger(page) && page >= 1 && page <= LAST_PAGE ? page : 1
	};
}

/** A learner in the list. */
export interface ListRow extends ListedTraining {
	readonly crews: readonly string[];
	readonly state: TrainingState;
	readonly remark: Remark | undefined;
}

/** One page of the list. */
export interface TrainingList {
	/** With the page that is shown: the last one where a later one was asked for, and no crew where it is not theirs. */
	readonly asked: AskedList;
	/** Local day at the site. */
	readonly today: string;
	/** By filter, of those whom the search and the crew leave. */
	readonly counts: Readonly<Record<ListFilter, number>>;
	readonly pages: number;
	readonly rows: readonly ListRow[];
	/** To choose from. */
	readonly crews: readonly NamedCrew[];
}

/** The day at the sites of an organisation, and what parts the states. @throws Error on one that there is not */
export async function stateDaysOf(db: Database, organisation: string, now: Date): Promise<StateDays & { readonly soonDays: number; readonly zone: string; readonly rules: string }> {
	const row = await findOrganisation(db, organisation);
	if (row === null) throw new Error('An employer without an organisation');
	const today = dayIn(row.zone, now);
	const { soonDays } = await recordSettings(db, organisation);
	return { today, soonDays, soonUntil: addDays(today, soonDays), zone: row.zone, rules: row.rules };
}

/** @returns the words of a search, with the crews that each may mean. @param crews none where the list is one crew's already */
function wordsOf(search: string, crews: readonly NamedCrew[]): readonly SearchWord[] {
	const words = folded(search).split(/[\s,;]+/u).filter((word) => word !== '');
	const names = crews.map(({ id, name }) => ({ id, name: folded(name) }));
	const means = (text: string) => ({ name }: { readonly name: string }): boolean => (text.length < CREW_WORD ? name.split(' ').includes(text) : name.includes(text));
	return [...new Set(words)].slice(0, MOST_WORDS).map((text) => ({ text, crews: names.filter(means(text)).map(({ id }) => id) }));
}

/** The order of states in a list by state: what needs something first. */
const BY_STATE: readonly TrainingState[] = ['expired', 'expires-soon', 'in-training', 'never', 'current'];
const WITH_END: readonly TrainingState[] = ['current', 'expires-soon', 'expired'];

/** @returns the parts that a list is made of, in order: each is in one order by itself. */
function stretchesOf(states: readonly TrainingState[], sort: ListSort): readonly Stretch[] {
	switch (sort) {
		case 'name':
			return [{ states, by: 'name' }];
		case 'until':
			return [
				{ states: WITH_END.filter((one) => states.includes(one)), by: 'until' },
				...(['in-training', 'never'] as const).filter((one) => states.includes(one)).map((one) => ({ states: [one], by: 'name' as const }))
			];
		case 'state':
			return BY_STATE.filter((one) => states.includes(one)).map((one) => ({ states: [one], by: WITH_END.includes(one) ? 'until' : 'name' }));
	}
}

/** @returns the ids of a page, across the stretches that it reaches into. */
async function idsOfPage(
	db: Database,
	scope: TrainingScope,
	days: StateDays,
	stretches: readonly Stretch[],
	counts: Readonly<Record<TrainingState, number>>,
	page: number
): Promise<readonly string[]> {
	const ids: string[] = [];
	let before = (page - 1) * ON_PAGE;
	for (const stretch of stretches) {
		const length = stretch.states.reduce((sum, state) => sum + counts[state], 0);
		if (ids.length < ON_PAGE && before < length) {
			ids.push(...(await idsOfStretch(db, scope, days, stretch, { from: before, most: ON_PAGE - ids.length })));
		}
		before = Math.max(0, before - length);
	}
	return ids;
}

function sumOf(counts: Readonly<Record<TrainingState, number>>): number {
	return TRAINING_STATES.reduce((sum, state) => sum + counts[state], 0);
}

/** @returns a page of the learners of an employer's organisation. */
export async function trainingList(db: Database, employer: Person, wanted: AskedList, now: Date): Promise<TrainingList> {
	const { organisation } = employer;
	const days = await stateDaysOf(db, organisation, now);
	const crews = await crewsByName(db, organisation);
	const crew = crews.some(({ id }) => id === wanted.crew) ? wanted.crew : '';
	const words = wordsOf(wanted.search, crew === '' ? crews : []);
	const scopeOf = (gone: boolean): TrainingScope => ({ organisation, gone, words, crew: crew === '' ? null : crew });
	const here = await countStates(db, scopeOf(false), days);
	const left = await countStates(db, scopeOf(true), days);
	const counts: TrainingList['counts'] = { ...here, all: sumOf(here), left: sumOf(left) };
	const gone = wanted.filter === 'left';
	const states = wanted.filter === 'all' || wanted.filter === 'left' ? TRAINING_STATES : [wanted.filter];
	const pages = Math.max(1, Math.ceil(counts[wanted.filter] / ON_PAGE));
	const asked: AskedList = { ...wanted, crew, page: Math.min(wanted.page, pages) };
	const ids = await idsOfPage(db, scopeOf(gone), days, stretchesOf(states, asked.sort), gone ? left : here, asked.page);
	const people = await trainingOf(db, organisation, ids);
	const lessons = await passedLessons(db, people.filter((one) => stateOn(one, days.today, days.soonDays) === 'in-training').map(({ id }) => id));
	return { asked, today: days.today, counts, pages, rows: await listRows(db, organisation, people, days, lessons), crews };
}

/** By person: lessons passed, and how many there are. */
type Lessons = ReadonlyMap<string, { readonly passed: number; readonly of: number }>;

/** @returns people with their crews, their state, and what is said of it. @param lessons of those in training, where that is to be told */
export async function listRows(
	db: Database,
	organisation: string,
	people: readonly ListedTraining[],
	{ today, soonDays }: { readonly today: string; readonly soonDays: number },
	lessons: Lessons = new Map()
): Promise<readonly ListRow[]> {
	const crews = await crewNamesOf(db, organisation, people.map(({ id }) => id));
	return people.map((one): ListRow => {
		const state = stateOn(one, today, soonDays);
		return { ...one, crews: crews.get(one.id) ?? [], state, remark: remarkOn(one, state, lessons.get(one.id) ?? null, today) };
	});
}

/**
 * @returns how many lessons some people have passed, by person. A lesson that was opened again is not passed until its
 * next check is: as the lesson's machine has it, without replaying the whole course of everybody.
 */
export async function passedLessons(db: Database, ids: readonly string[]): Promise<Lessons> {
	const ends = await lessonEnds(db, ids);
	const of = courseBook().length;
	return new Map(
		ids.map((id) => {
			const passed = new Set<string>();
			for (const text of ends.get(id) ?? []) {
				const { record } = readPayload(text);
				if (record.kind === 'check-ended' && record.passed) passed.add(record.lesson);
				else if (record.kind === 'check-ended' || record.kind === 'reopened') passed.delete(record.lesson);
			}
			return [id, { passed: passed.size, of }];
		})
	);
}
