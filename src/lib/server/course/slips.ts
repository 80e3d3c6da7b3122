/** What somebody keeps getting wrong: the slips that were found in stored answers. */
import { foundSlips, mostFrequent, type Grades } from '#lib/flow/index.ts';
import type { Database } from '../db/open.ts';
import { latestResults } from '../db/results.ts';

/** How many answers are looked back on. @reason what went wrong long ago may go right by now */
const LOOKED_AT = 100;

/** @returns the slips that were found most often in somebody's last answers, of the course and of free practice. */
export async function frequentSlips(db: Database, answerer: string): Promise<ReturnType<typeof mostFrequent<ReturnType<typeof foundSlips>[number]>>> {
	const results = await latestResults(db, answerer, LOOKED_AT);
	// Our own gradings, stored as they were made.
	return mostFrequent(results.map((result) => foundSlips(JSON.parse(result) as Grades)));
}
