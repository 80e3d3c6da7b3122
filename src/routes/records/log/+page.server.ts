import { database, LOG_GROUPS, readLog, readRange, settingsOf, type LogPlace } from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import type { PageServerLoad } from './$types';

/** Longest entry that is taken up, characters. @reason longer than any name that people have */
const LONGEST = 200;

/** @returns the place that an older page begins behind; undefined for the newest, and for an address that names none. */
function placeIn(params: URLSearchParams): LogPlace | undefined {
	const [at, id] = [params.get('at') ?? '', params.get('id') ?? ''];
	return /^\d{4}-\d{2}-\d{2}T[\d:.]{12}Z$/.test(at) && /^[0-9a-f-]{36}$/.test(id) ? { at, id } : undefined;
}

/** @returns the search of an address that keeps looking for the same, without its question mark; empty for everything. */
function searchOf(given: Readonly<Record<string, string>>): string {
	return new URLSearchParams(Object.entries(given).filter(([, value]) => value !== '')).toString();
}

export const load: PageServerLoad = async ({ locals, url }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const typed = (name: string): string => (url.searchParams.get(name) ?? '').trim().slice(0, LONGEST);
	const entered = { what: typed('what'), who: typed('who'), from: typed('from'), to: typed('to') };
	const { zone } = await settingsOf(db, employer.organisation);
	const read = readRange(entered.from, entered.to);
	const filtered = Object.values(entered).some((value) => value !== '');
	const groups = [...LOG_GROUPS];
	if (read.kind === 'refused') {
		return { zone, groups, entered, filtered, wrong: { field: read.field, problem: read.problem }, deeds: [], nobody: false, older: null, newest: null };
	}
	const group = LOG_GROUPS.find((one) => one === entered.what);
	const place = placeIn(url.searchParams);
	const { deeds, next, nobody } = await readLog(db, employer, { group, who: entered.who, range: read.range }, place);
	const older = next === undefined ? null : searchOf({ ...entered, ...next });
	return { zone, groups, entered, filtered, wrong: null, deeds, nobody, older, newest: place === undefined ? null : searchOf(entered) };
};
