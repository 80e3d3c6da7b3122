/** Who may do what. This table is all of it: a page, an endpoint or an action that does not stand here is refused. */
import type { Who } from './who.ts';

/** Who asks, as the table tells them apart. */
export type Caller = 'guest' | 'learner' | 'trainer' | 'employer';

/** What a method, or a form action, is called in the table: `GET`, `POST`; an action `?/name`, the default one `?/default`. */
type Rights = Readonly<Record<string, readonly Caller[]>>;

const ALL: readonly Caller[] = ['guest', 'learner', 'trainer', 'employer'];
const GUEST: readonly Caller[] = ['guest'];
const LEARNER: readonly Caller[] = ['learner'];
const STAFF: readonly Caller[] = ['trainer', 'employer'];
const EMPLOYER: readonly Caller[] = ['employer'];

/** By SvelteKit's route id. HEAD is GET. `*` is whatever else: an endpoint that answers wrong methods itself. */
export const ROUTES: Readonly<Record<string, Rights>> = {
	'/': { GET: ALL },
	'/method': { GET: ALL },
	'/settings': { POST: ALL },
	'/health': { GET: ALL },
	'/not-found': { GET: ALL },
	'/learn/problem': { GET: ALL },
	'/api/[...path]': { '*': ALL },
	'/api/attempts': { POST: ALL, '*': ALL },
	'/api/attempts/[id]': { GET: ALL, '*': ALL },

	'/setup': { GET: GUEST, '?/default': GUEST },
	'/enrol': { GET: GUEST, '?/default': GUEST },
	'/join': { GET: GUEST, '?/default': GUEST, '?/find': GUEST, '?/join': GUEST },
	'/sign-in': { GET: ALL, '?/staff': ALL, '?/learner': ALL },
	'/sign-out': { POST: ALL },

	'/learn': { GET: ALL, '?/default': ALL },
	'/learn/lesson/[lesson]': { GET: ALL },
	'/learn/check/[lesson]': { GET: LEARNER },
	'/api/course/[...path]': { '*': ALL },

	'/crew': { GET: STAFF, '?/make': STAFF },
	'/crew/[crew]': { GET: STAFF },

	'/records': { GET: EMPLOYER },
	'/records/people': { GET: EMPLOYER, '?/invite': EMPLOYER, '?/code': EMPLOYER, '?/unlock': EMPLOYER, '?/close': EMPLOYER },
	'/records/settings': { GET: EMPLOYER, '?/default': EMPLOYER }
};

/** What became of asking the table. */
export type Access =
	| 'allowed'
	/** Not for guests: whoever signs in may be allowed. */
	| 'sign-in'
	/** Not for this caller; to be answered as if it were not there. */
	| 'refused';

/** @returns what the table calls the one who asks. */
export function callerOf(who: Who): Caller {
	return who.kind === 'guest' ? 'guest' : who.role;
}

/** @returns a request's name in a row of the table. */
export function deedOf(method: string, search: URLSearchParams, isAction: boolean): string {
	if (method === 'HEAD') return 'GET';
	if (method !== 'POST' || !isAction) return method;
	const action = [...search.keys()].find((key) => key.startsWith('/'));
	return `?${action ?? '/default'}`;
}

/**
 * Asks the table.
 * @param route the id of the route; one that is not in the table is refused to everyone
 * @param deed as `deedOf` gives it
 */
export function accessTo(route: string, deed: string, who: Who): Access {
	const rights = Object.hasOwn(ROUTES, route) ? ROUTES[route] : undefined;
	const callers = rights === undefined ? undefined : Object.hasOwn(rights, deed) ? rights[deed] : rights['*'];
	if (callers === undefined) return 'refused';
	if (callers.includes(callerOf(who))) return 'allowed';
	return who.kind === 'guest' ? 'sign-in' : 'refused';
}
