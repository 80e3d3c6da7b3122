import { BY_DAYS, EXPORT_FILES, readRange, type ExportName } from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import type { PageServerLoad } from './$types';

/** Longest text of a day that is taken up again, characters. @reason a day has ten */
const LONGEST = 40;

export const load: PageServerLoad = ({ locals, url }) => {
	employerOf(locals.who);
	const typed = (name: string): string => (url.searchParams.get(name) ?? '').slice(0, LONGEST);
	const days = { from: typed('from'), to: typed('to') };
	const read = readRange(days.from, days.to);
	return {
		files: EXPORT_FILES.map((name): { name: ExportName; byDays: boolean } => ({ name, byDays: BY_DAYS.includes(name) })),
		days,
		mark: url.searchParams.has('bom'),
		wrong: read.kind === 'refused' ? { field: read.field, problem: read.problem } : null
	};
};
