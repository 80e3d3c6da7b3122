import { sql, type Insertable, type Selectable } from 'kysely';
import type { Database } from './open.ts';
import type { AuditTable } from './schema.ts';

/** Something that happened. */
export type AuditRow = Readonly<Selectable<AuditTable>>;

export async function insertAudit(db: Database, row: Readonly<Insertable<AuditTable>>): Promise<void> {
	await db.insertInto('audit').values(row).execute();
}

/** A place in the log. */
export interface LogPlace {
	/** ISO 8601, UTC. */
	readonly at: string;
	readonly id: string;
}

/** A span of time: ISO 8601, UTC; null for no bound. */
export interface Span {
	/** Within it. */
	readonly from: string | null;
	/** Not within it. */
	readonly before: string | null;
}

/** What is looked for in the log. */
export interface LogQuery {
	/** Any of these kinds; every kind where left out. */
	readonly kinds?: readonly string[];
	/** Done by any of these people; by anybody where left out. */
	readonly actors?: readonly string[];
	readonly span: Span;
	/** Only what is older than this place. */
	readonly olderThan?: LogPlace | undefined;
}

/** The newest first. */
function newestFirst(one: LogPlace, other: LogPlace): number {
	return one.at === other.at ? (one.id < other.id ? 1 : -1) : one.at < other.at ? 1 : -1;
}

/**
 * What happened in an organisation, the newest first. Each kind, or each person, is asked for by itself and the answers
 * put together: each question then reads as many rows of an index as it gives, however long the log is.
 */
export async function logPage(db: Database, organisation: string, query: LogQuery, most: number): Promise<readonly AuditRow[]> {
	const { kinds, actors, span, olderThan } = query;
	const asked = db.selectFrom('audit').selectAll().where('organisation_id', '=', organisation).orderBy('at', 'desc').orderBy('id', 'desc').limit(most);
	const since = span.from === null ? asked : asked.where('at', '>=', span.from);
	// One bound on each side: with two, SQLite reads from the further one.
	const isPlace = olderThan !== undefined && (span.before === null || olderThan.at < span.before);
	const until = span.before === null || isPlace ? since : since.where('at', '<', span.before);
	const older = isPlace ? until.where(sql<boolean>`(at, id) < (${olderThan.at}, ${olderThan.id})`) : until;
	if (actors !== undefined) {
		const ofKind = kinds === undefined ? older : older.where('kind', 'in', [...kinds]);
		return together(actors.map((actor) => ofKind.where('actor_id', '=', actor)), most);
	}
	return kinds === undefined ? older.execute() : together(kinds.map((kind) => older.where('kind', '=', kind)), most);
}

async function together(queries: readonly { execute(): Promise<readonly AuditRow[]> }[], most: number): Promise<readonly AuditRow[]> {
	const found = await Promise.all(queries.map((query) => query.execute()));
	return found.flat().sort(newestFirst).slice(0, most);
}
