/** The course over the addresses of a running server, for the driver, and what the server's database file holds of it. */
import { DatabaseSync } from 'node:sqlite';
import type { CourseState } from '#lib/flow/index.ts';
import type { CheckItem } from '#lib/server/index.ts';
import type { Told, ToldOfCheck, Transport } from './course-driver.ts';

/** What came back of a request. */
export interface Reply {
	readonly status: number;
	/** The body, read as JSON; its text where it is none. */
	readonly body: unknown;
}

/** Sends JSON as one signed-in browser does. @throws TypeError if no reply came */
export type Post = (path: string, body: unknown) => Promise<Reply>;

/** @returns a text read as JSON, or the text itself. */
function readJson(text: string): unknown {
	try {
		return JSON.parse(text);
	} catch {
		return text;
	}
}

/**
 * Sends a body.
 * @param body what is sent as JSON; a text is sent as it is
 */
export async function postTo(address: string, path: string, body: unknown, headers: Readonly<Record<string, string>> = {}): Promise<Reply> {
	const sent = await fetch(address + path, {
		method: 'POST',
		headers: { 'content-type': 'application/json', ...headers },
		body: typeof body === 'string' ? body : JSON.stringify(body)
	});
	return { status: sent.status, body: readJson(await sent.text()) };
}

/** Sends a form that signs somebody in. @returns the cookie to send from then on */
async function enterBy(address: string, path: string, form: Readonly<Record<string, string>>): Promise<string> {
	const reply = await fetch(address + path, {
		method: 'POST',
		headers: { origin: address, accept: 'text/html' },
		body: new URLSearchParams(form),
		redirect: 'manual'
	});
	const cookie = reply.headers.getSetCookie().find((one) => one.startsWith('session='));
	if (reply.status !== 303 || cookie === undefined) throw new Error(`${path} lets nobody in: ${reply.status}`);
	return cookie.split(';')[0] ?? '';
}

/** Signs a learner in by the form of the sign-in page. @returns the cookie to send from then on */
export function signInOver(address: string, learner: { readonly number: string; readonly pin: string }): Promise<string> {
	return enterBy(address, '/sign-in?/learner', { number: learner.number, pin: learner.pin });
}

/** Joins a crew by the form of the join page. @returns the cookie to send from then on */
export function joinOver(
	address: string,
	learner: { readonly code: string; readonly name: string; readonly number: string; readonly pin: string }
): Promise<string> {
	const { code, name, number, pin } = learner;
	return enterBy(address, '/join?/join', { code, name, number, pin, again: pin });
}

/** Fields of an object that came over the line. */
export function fieldsOf(value: unknown): Readonly<Record<string, unknown>> {
	return typeof value === 'object' && value !== null ? (value as Readonly<Record<string, unknown>>) : {};
}

/** Where the events of lessons are sent. */
export const EVENTS = '/api/course/events';
/** Where checks are begun. */
export const CHECKS = '/api/course/checks';

/** The driver's way to a server. @param file the server's database, where the items of a running check are read */
export function courseOverHttp(post: Post, file: string): Transport {
	const done = async (path: string, body: unknown): Promise<Readonly<Record<string, unknown>>> => {
		const reply = await post(path, body);
		if (reply.status !== 200 && reply.status !== 201) throw new Error(`${path} answers ${reply.status}: ${JSON.stringify(reply.body)}`);
		return fieldsOf(reply.body);
	};
	const check = async (path: string, body: unknown) => (await done(path, body)) as unknown as ToldOfCheck;
	return {
		event: async (event) => (await done(EVENTS, event)) as unknown as Told,
		begin: (lesson) => check(CHECKS, { lesson, language: 'en' }),
		answer: (id, body) => check(`${CHECKS}/${id}/answers`, body),
		page: (id, body) => check(`${CHECKS}/${id}/pages`, body),
		items: (id) => Promise.resolve(readItems(file, id))
	};
}

/** Reads the database file of a server, which may run or not. */
export function readFrom<T>(file: string, read: (db: DatabaseSync) => T): T {
	const db = new DatabaseSync(file, { timeout: 10_000 });
	try {
		return read(db);
	} finally {
		db.close();
	}
}

/** A row of what happened, in its order. */
export interface HappenedRow {
	readonly id: string;
	readonly seq: number;
	readonly kind: string;
	readonly payload: string;
	/** Of events in checks: the check. */
	readonly of: string;
}

/** Everything that is stored of a person's course. */
export interface StoredCourse {
	/** The person's own number, from which all problems come. */
	readonly seed: number | undefined;
	readonly events: readonly HappenedRow[];
	readonly checks: readonly HappenedRow[];
	readonly tries: readonly { readonly id: string; readonly lesson: string; readonly seed: string }[];
	readonly attempts: readonly string[];
	readonly completions: number;
}

/** @returns everything that is stored of a person's course. */
export function storedCourse(file: string, person: string): StoredCourse {
	return readFrom(file, (db) => {
		const rows = (sql: string): readonly unknown[] => db.prepare(sql).all(person);
		const [start] = rows('select seed from course_start where person_id = ?');
		return {
			seed: start === undefined ? undefined : Number(fieldsOf(start)['seed']),
			events: rows('select id, seq, kind, payload, lesson as "of" from course_event where person_id = ? order by seq') as readonly HappenedRow[],
			checks: rows(
				'select e.id, e.seq, e.kind, e.payload, e.check_id as "of" from check_event e join check_try t on t.id = e.check_id where t.person_id = ? order by t.at, t.id, e.seq'
			) as readonly HappenedRow[],
			tries: rows('select id, lesson, seed from check_try where person_id = ? order by at') as StoredCourse['tries'],
			attempts: rows('select a.id from attempt a join person p on p.answerer_id = a.guest_id where p.id = ?').map((row) => String(fieldsOf(row)['id'])),
			completions: rows('select id from completion where person_id = ?').length
		};
	});
}

/** @returns the items of a check's newest page, which only the server knows. */
export function readItems(file: string, check: string): readonly CheckItem[] {
	return readFrom(file, (db) => {
		const rows = db.prepare(`select payload from check_event where check_id = ? and kind in ('page', 'handed-in') order by seq`).all(check);
		const payload = fieldsOf(rows.at(-1))['payload'];
		if (typeof payload !== 'string') throw new Error(`the check ${check} has no page`);
		return (JSON.parse(payload) as { items: readonly CheckItem[] }).items;
	});
}

/** The state that a reply to an event tells. */
export function stateIn(reply: Reply): CourseState {
	return fieldsOf(reply.body)['state'] as CourseState;
}
