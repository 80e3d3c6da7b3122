import { createHash, randomBytes } from 'node:crypto';
import { lacksRoom } from '../db/no-room.ts';
import type { Database } from '../db/open.ts';
import { findPersonById } from '../db/people.ts';
import { deleteSession, deleteSessionsOf, findSession, insertSession, touchSession } from '../db/sessions.ts';
import type { Role, Who } from './who.ts';

/** What is used of SvelteKit's cookies. */
export interface SessionCookies {
	get(name: string): string | undefined;
	set(name: string, value: string, options: SessionCookieOptions): void;
	delete(name: string, options: Omit<SessionCookieOptions, 'maxAge'>): void;
}

interface SessionCookieOptions {
	path: '/';
	httpOnly: true;
	sameSite: 'lax';
	secure: boolean;
	maxAge: number;
}

const MINUTE = 60;
const HOUR = 60 * MINUTE;
const DAY = 24 * HOUR;

/** How long a session lasts unused, and at all, s. @reason learners practise on their own phone for weeks; staff see other people's records. */
const LASTS: Readonly<Record<Role, { readonly idle: number; readonly most: number }>> = {
	learner: { idle: 14 * DAY, most: 90 * DAY },
	trainer: { idle: 12 * HOUR, most: 7 * DAY },
	employer: { idle: 12 * HOUR, most: 7 * DAY }
};

/** How old `seen_at` may be before it is written again, s: not every page costs a write. */
const SEEN_EVERY = 5 * MINUTE;

/** 32 bytes as base64url. */
const TOKEN = /^[A-Za-z0-9_-]{43}$/;

const GUEST: Who = { kind: 'guest' };

/** Under HTTPS the prefix makes browsers refuse the cookie from any other host or path. */
function cookieName(secure: boolean): string {
	return secure ? '__Host-session' : 'session';
}

function hash(token: string): string {
	return createHash('sha256').update(token).digest('hex');
}

function heldHash(cookies: Pick<SessionCookies, 'get'>, secure: boolean): string | null {
	const token = cookies.get(cookieName(secure));
	return token !== undefined && TOKEN.test(token) ? hash(token) : null;
}

function later(now: Date, seconds: number): Date {
	return new Date(now.getTime() + seconds * 1000);
}

/** Of a person who has just signed in: what the next page hangs on. */
export interface Started {
	readonly role: Role;
	/** The person's own language; null when none was chosen. */
	readonly language: string | null;
}

/**
 * Signs a person in on this browser, under a new token; the session that the browser had before ends.
 * @param secure whether the visitor came by HTTPS
 * @throws Error when there is no such person
 */
export async function startSession(db: Database, cookies: SessionCookies, secure: boolean, personId: string, now: Date): Promise<Started> {
	const person = await findPersonById(db, personId);
	if (person === null) throw new Error('A session was to be started for nobody');
	const before = heldHash(cookies, secure);
	if (before !== null) await deleteSession(db, before);
	const token = randomBytes(32).toString('base64url');
	const { most } = LASTS[person.role];
	await insertSession(db, {
		token_hash: hash(token),
		person_id: personId,
		created_at: now.toISOString(),
		seen_at: now.toISOString(),
		expires_at: later(now, most).toISOString()
	});
	cookies.set(cookieName(secure), token, { path: '/', httpOnly: true, sameSite: 'lax', secure, maxAge: most });
	return { role: person.role, language: person.language };
}

/** Waits for a write that may be missing where the disk is full: what is only looked at is shown all the same. */
async function ifRoom(write: Promise<void>): Promise<void> {
	try {
		await write;
	} catch (error) {
		if (!lacksRoom(error)) throw error;
	}
}

/** Who asks, by the cookie; a guest where there is none, or where its session has ended. */
export async function whoIs(db: Database, cookies: Pick<SessionCookies, 'get'>, secure: boolean, now: Date): Promise<Who> {
	const tokenHash = heldHash(cookies, secure);
	if (tokenHash === null) return GUEST;
	const found = await findSession(db, tokenHash);
	if (found === null) return GUEST;
	const seen = new Date(found.seenAt);
	const ended = found.expiresAt <= now.toISOString() || later(seen, LASTS[found.role].idle) <= now;
	if (ended) {
		await ifRoom(deleteSession(db, tokenHash));
		return GUEST;
	}
	if (later(seen, SEEN_EVERY) <= now) await ifRoom(touchSession(db, tokenHash, now.toISOString()));
	const { person, organisation, role, name, answerer, language } = found;
	return { kind: 'person', id: person, organisation, role, name, answerer, language: language === 'en' || language === 'es' ? language : null };
}

/** Signs out on this browser. */
export async function endSession(db: Database, cookies: SessionCookies, secure: boolean): Promise<void> {
	const tokenHash = heldHash(cookies, secure);
	if (tokenHash !== null) await deleteSession(db, tokenHash);
	cookies.delete(cookieName(secure), { path: '/', httpOnly: true, sameSite: 'lax', secure });
}

/** Signs a person out everywhere: when a secret changes, and when a person is closed. */
export async function endAllSessions(db: Database, personId: string): Promise<void> {
	await deleteSessionsOf(db, personId);
}
