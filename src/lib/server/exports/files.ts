/** The files that an employer exports. */
import type { Database } from '../db/open.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { everythingJson } from './everything.ts';
import { ALL_DAYS, type DayRange } from './range.ts';
import { answersCsv, completionsCsv, logCsv, peopleCsv, retrainingCsv, type TableOptions } from './tables.ts';

/** A file on its way. */
export interface ExportFile {
	/** Without anything that people gave. */
	readonly name: string;
	readonly type: 'csv' | 'json';
	/** Its text. */
	readonly parts: AsyncGenerator<string, void, undefined>;
}

const TABLES = {
	'people.csv': peopleCsv,
	'completions.csv': completionsCsv,
	'retraining.csv': retrainingCsv,
	'answers.csv': answersCsv,
	'log.csv': logCsv
} as const;

type TableName = keyof typeof TABLES;
/** The files, in the order in which they are offered. */
export const EXPORT_FILES = ['people.csv', 'completions.csv', 'retraining.csv', 'answers.csv', 'log.csv', 'everything.json'] as const;
export type ExportName = (typeof EXPORT_FILES)[number];

/** Files of which some days can be had. */
export const BY_DAYS: readonly ExportName[] = ['completions.csv', 'retraining.csv', 'answers.csv', 'log.csv'];

function isTable(name: ExportName): name is TableName {
	return Object.hasOwn(TABLES, name);
}

/** The days that were asked for; a bound that was not set is left out. */
function boundsOf({ from, to }: DayRange): Readonly<Record<string, string>> {
	return { ...(from === ALL_DAYS.from ? {} : { from }), ...(to === ALL_DAYS.to ? {} : { to }) };
}

/**
 * Notes that records were exported, and gives the file.
 * @param given local days, for files that know days; and whether a spreadsheet is to read it
 * @returns null for a name that no file has
 */
export async function exportRecords(db: Database, who: Person, file: string, given: { readonly range: DayRange; readonly mark: boolean }, now: Date): Promise<ExportFile | null> {
	const name = EXPORT_FILES.find((one) => one === file);
	if (name === undefined) return null;
	const byDays = BY_DAYS.includes(name);
	await noteDeed(db, who, 'records-exported', who.organisation, now, { file: name, ...(byDays ? boundsOf(given.range) : {}) });
	if (!isTable(name)) return { name, type: 'json', parts: everythingJson(db, who.organisation, now) };
	const options: TableOptions = { ...(byDays ? { range: given.range } : {}), mark: given.mark, now };
	return { name, type: 'csv', parts: TABLES[name](db, who.organisation, options) };
}
