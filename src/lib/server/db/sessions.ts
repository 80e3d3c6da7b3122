import type { Insertable } from 'kysely';
import type { Database } from './open.ts';
import type { SessionTable } from './schema.ts';

/** A session with its person, as one query finds them. */
export interface FoundSession {
	readonly person: string;
	readonly organisation: string;
	readonly role: 'learner' | 'trainer' | 'employer';
	readonly name: string;
	readonly answerer: string;
	/** The person's own language, else the organisation's. */
	readonly language: string;
	readonly seenAt: string;
	readonly expiresAt: string;
}

export async function insertSession(db: Database, session: Readonly<Insertable<SessionTable>>): Promise<void> {
	await db.insertInto('session').values(session).execute();
}

/** The session with this token, of a person who is not closed; null if there is none. */
export async function findSession(db: Database, tokenHash: string): Promise<FoundSession | null> {
	const row = await db
		.selectFrom('session')
		.innerJoin('person', 'person.id', 'session.person_id')
		.innerJoin('organisation', 'organisation.id', 'person.organisation_id')
		.select((eb) => [
			'person.id as person',
			'person.organisation_id as organisation',
			'person.role as role',
			'person.name as name',
			'person.answerer_id as answerer',
			eb.fn.coalesce('person.language', 'organisation.language').as('language'),
			'session.seen_at as seenAt',
			'session.expires_at as expiresAt'
		])
		.where('session.token_hash', '=', tokenHash)
		.where('person.closed_at', 'is', null)
		.executeTakeFirst();
	return row ?? null;
}

export async function touchSession(db: Database, tokenHash: string, at: string): Promise<void> {
	await db.updateTable('session').set({ seen_at: at }).where('token_hash', '=', tokenHash).execute();
}

export async function deleteSession(db: Database, tokenHash: string): Promise<void> {
	await db.deleteFrom('session').where('token_hash', '=', tokenHash).execute();
}

export async function deleteSessionsOf(db: Database, personId: string): Promise<void> {
	await db.deleteFrom('session').where('person_id', '=', personId).execute();
}

/** Forgets sessions that ended by themselves. @param now ISO 8601, UTC, 24 characters */
export async function deleteExpiredSessions(db: Database, now: string): Promise<void> {
	await db.deleteFrom('session').where('expires_at', '<=', now).execute();
}
