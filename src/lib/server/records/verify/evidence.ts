/** Checks that ended: try and events as the digest holds them, and, if wanted, marked and drawn again. */
import { ofKind, type EntryOf, type Placed } from '#lib/records/index.ts';
import type { Database } from '../../db/open.ts';
import { eventsByTry, triesById } from '../../db/verifying.ts';
import { breath } from '../breath.ts';
import { evidenceDigest } from '../evidence.ts';
import { regradeTry, type Redraw } from './regrade.ts';
import type { CountName, Found } from './result.ts';

/** Tries whose events are held at once. @reason a final check has some 100 kB of events */
const SLICE = 20;

/** What is done beside comparing digests. */
export interface Regrading {
	readonly redraw: Redraw;
	readonly count: (name: CountName, by: number) => void;
}

/** @param regrading undefined to compare digests alone */
export async function checkEvidence(db: Database, entries: readonly Placed[], regrading: Regrading | undefined): Promise<Found> {
	const ended = ofKind(entries, 'check-ended');
	for (let i = 0; i < ended.length; i += SLICE) {
		const slice = ended.slice(i, i + SLICE);
		const ids = slice.map(({ entry }) => entry.check);
		const tries = await triesById(db, ids);
		const events = await eventsByTry(db, ids);
		for (const { seq, entry } of slice) {
			const of = tries.get(entry.check);
			const place = { table: 'check_try', row: entry.check, seq };
			if (of === undefined) return { ...place, column: null, problem: 'row-missing' };
			const own = events.get(entry.check) ?? [];
			const found = differsFrom(entry, of) ?? (evidenceDigest(of, own) === entry.digest ? undefined : 'evidence-differs');
			if (found === 'evidence-differs') return { ...place, column: null, problem: found };
			if (found !== undefined) return { ...place, column: found, problem: 'column-differs' };
			const regraded = regrading === undefined ? undefined : regradeTry(of, own, entry, regrading);
			if (regraded !== undefined) return { ...regraded, seq };
		}
		await breath();
	}
	return undefined;
}

/** What is said in the entry beside the digest. @returns the first column that differs */
function differsFrom(entry: EntryOf<'check-ended'>, of: { readonly person_id: string; readonly lesson: string; readonly nth: number }): 'person_id' | 'lesson' | 'nth' | undefined {
	if (of.person_id !== entry.person) return 'person_id';
	if (of.lesson !== entry.lesson) return 'lesson';
	return of.nth === entry.nth ? undefined : 'nth';
}
