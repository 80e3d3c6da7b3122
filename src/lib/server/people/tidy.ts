import type { Database } from '../db/open.ts';
import { deleteExpiredSessions } from '../db/sessions.ts';
import { dropOldThrottles } from '../db/throttle.ts';

/** How long failures of addresses, crew codes and unknown accounts are kept, s: 30 days, far longer than they count. */
const KEPT = 30 * 24 * 60 * 60;

/** Forgets sessions that have ended by themselves, and failures that nobody waits for. Those of people's accounts stay. */
export async function forgetOld(db: Database, now: Date): Promise<void> {
	await deleteExpiredSessions(db, now.toISOString());
	await dropOldThrottles(db, new Date(now.getTime() - KEPT * 1000).toISOString());
}
