import { createHash, randomBytes } from 'node:crypto';
import { findGuest } from './db/guests.ts';
import type { Database } from './db/open.ts';

/** What is used of SvelteKit's cookies. */
export interface Cookies {
	get(name: string): string | undefined;
	set(name: string, value: string, options: GuestCookieOptions): void;
}

interface GuestCookieOptions {
	path: '/';
	httpOnly: true;
	sameSite: 'lax';
	secure: boolean;
	maxAge: number;
}

/** How long a guest is remembered, seconds: 400 days, the longest that browsers keep a cookie. */
const REMEMBERED = 400 * 24 * 60 * 60;

/** 32 bytes as base64url. */
const TOKEN = /^[A-Za-z0-9_-]{43}$/;

/** Under HTTPS the prefix makes browsers refuse the cookie from any other host or path. */
function cookieName(secure: boolean): string {
	return secure ? '__Host-guest' : 'guest';
}

function hash(token: string): string {
	return createHash('sha256').update(token).digest('hex');
}

/** The visitor's token, if the cookie holds one of the right form. */
function heldToken(cookies: Cookies, secure: boolean): string | null {
	const token = cookies.get(cookieName(secure));
	return token !== undefined && TOKEN.test(token) ? token : null;
}

/**
 * Gives the visitor a token to be known by, if there is none yet. Nothing is stored before the first answer;
 * but the token must be there by then, or an answer whose reply got lost could not be sent again as the same
 * guest.
 * @param secure whether the visitor came by HTTPS
 */
export function giveGuestToken(cookies: Cookies, secure: boolean): string {
	const held = heldToken(cookies, secure);
	if (held !== null) return held;
	const token = randomBytes(32).toString('base64url');
	cookies.set(cookieName(secure), token, {
		path: '/',
		httpOnly: true,
		sameSite: 'lax',
		secure,
		maxAge: REMEMBERED
	});
	return token;
}

/** The visitor's guest id, or null for a visitor who has not answered anything yet. */
export async function currentGuest(
	db: Database,
	cookies: Cookies,
	secure: boolean
): Promise<string | null> {
	const token = heldToken(cookies, secure);
	return token === null ? null : findGuest(db, hash(token));
}

/** The hash under which the visitor's answers are kept; a visitor without a token is given one. */
export function guestTokenHash(cookies: Cookies, secure: boolean): string {
	return hash(giveGuestToken(cookies, secure));
}

/** Lets the browser forget its guest, so that whoever practises on it next is somebody else. */
export function forgetGuest(cookies: { delete(name: string, options: Omit<GuestCookieOptions, 'maxAge'>): void }, secure: boolean): void {
	cookies.delete(cookieName(secure), { path: '/', httpOnly: true, sameSite: 'lax', secure });
}
