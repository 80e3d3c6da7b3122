/** Checks that ended, with what was asked and answered. Of one that runs nothing is told: its problems are still to be answered. */
import type { Standing } from '#lib/mastery/index.ts';
import type { ItemResult } from '../course/items.ts';
import { checkEventsOf, triesOfPeople, type CheckEventRow, type CheckTryRow } from '../db/exports.ts';
import type { Database } from '../db/open.ts';
import type { DayRange } from './range.ts';

/** What is stored of a page that was handed in, as far as exports read it: as the course writes it. */
interface HandedIn {
	readonly results: readonly ItemResult[];
	readonly standing: Standing;
}

/** A check that ended. */
export interface EndedCheck {
	readonly of: CheckTryRow;
	readonly events: readonly CheckEventRow[];
	/** How each item of all pages was answered, in order. */
	readonly results: readonly ItemResult[];
	readonly passed: boolean;
	/** ISO 8601, UTC. */
	readonly endedAt: string;
}

function endedOf(of: CheckTryRow, events: readonly CheckEventRow[]): EndedCheck | undefined {
	const pages = events.filter(({ kind }) => kind === 'handed-in');
	const told = pages.map(({ payload }) => JSON.parse(payload) as HandedIn);
	const [page, last] = [pages.at(-1), told.at(-1)];
	if (page === undefined || last === undefined || last.standing.kind === 'more') return undefined;
	return { of, events, results: told.flatMap(({ results }) => results), passed: last.standing.kind === 'passed', endedAt: page.at };
}

/**
 * @param range local days on which they were begun
 * @param events all that happened, or only what was handed in: much less to read
 * @returns the checks of some people that ended. Whose people they are, the caller has asked.
 */
export async function endedChecks(db: Database, people: readonly string[], range: DayRange, events: 'all' | 'handed-in'): Promise<readonly EndedCheck[]> {
	const tries = await triesOfPeople(db, people, range);
	const found = await checkEventsOf(db, tries.map(({ id }) => id), events === 'all' ? undefined : events);
	return tries.flatMap((of) => endedOf(of, found.get(of.id) ?? []) ?? []);
}
