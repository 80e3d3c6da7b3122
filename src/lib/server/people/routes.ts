/** Who may do what. This table is all of it: a page, an endpoint or an action that does not stand here is refused. */
import type { Who } from './who.ts';

/** Who asks, as the table tells them apart. */
export type Caller = 'guest' | 'learner' | 'trainer' | 'employer';

/** By method of an endpoint or page, `GET`; by form action of a page, `?/name`, the unnamed one `?/default`. */
type Rights = Readonly<Record<string, readonly Caller[]>>;

const ALL: readonly Caller[] = ['guest', 'learner', 'trainer', 'employer'];
const LEARNER: readonly Caller[] = ['learner'];
/** Checks are for learners. A guest, whose session may be over, is told by the endpoint to sign in again. */
const CHECKED: readonly Caller[] = ['guest', 'learner'];
const STAFF: readonly Caller[] = ['trainer', 'employer'];
const EMPLOYER: readonly Caller[] = ['employer'];

/**
 * By SvelteKit's route id; one that ends in an asterisk stands for all below it that have no row of their own. HEAD is
 * GET. The method `*` is whatever else: an endpoint that answers wrong methods itself. Whose crew, whose organisation a
 * request is about, is no matter of this table: the queries find nothing that is somebody else's.
 */
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

	'/setup': { GET: ALL, '?/default': ALL },
	'/enrol': { GET: ALL, '?/default': ALL },
	'/join': { GET: ALL, '?/find': ALL, '?/join': ALL },
	'/sign-in': { GET: ALL, '?/staff': ALL, '?/learner': ALL },
	'/sign-out': { POST: ALL },

	'/learn': { GET: ALL },
	'/learn/lesson/[lesson]': { GET: ALL },
	'/learn/set/[assignment]': { GET: LEARNER },
	'/learn/check/[lesson]': { GET: LEARNER, '?/begin': LEARNER },
	'/api/course/events': { '*': ALL },
	'/api/course/checks': { '*': CHECKED },
	'/api/course/checks/[check]/answers': { '*': CHECKED },
	'/api/course/checks/[check]/pages': { '*': CHECKED },

	'/crew': { GET: STAFF, '?/make': STAFF },
	'/crew/[crew]': {
		GET: STAFF,
		'?/rename': STAFF,
		'?/archive': STAFF,
		'?/restore': STAFF,
		'?/add': STAFF,
		'?/move': STAFF,
		'?/take-off': STAFF,
		'?/reset-pin': STAFF,
		'?/unlock': STAFF,
		'?/open': STAFF,
		'?/assign': EMPLOYER,
		'?/release': EMPLOYER
	},
	'/crew/[crew]/import': { GET: STAFF, '?/look': STAFF, '?/enter': STAFF },
	'/crew/[crew]/picture': { GET: STAFF, '?/aim': STAFF },
	'/crew/[crew]/sign-off/[person]': { GET: STAFF, '?/read': STAFF, '?/sign': STAFF },

	'/crew/sets': { GET: STAFF },
	'/crew/sets/new': { GET: STAFF, '?/make': STAFF },
	'/crew/sets/[set]': { GET: STAFF, '?/assign': STAFF, '?/recall': STAFF, '?/archive': STAFF, '?/restore': STAFF },
	'/crew/sets/[set]/preview': { GET: STAFF },
	'/crew/sets/[set]/paper': { GET: STAFF, '?/print': STAFF },
	'/crew/sets/[set]/paper/[sheet]': { GET: STAFF },
	'/crew/paper': { GET: STAFF, '?/find': STAFF, '?/enter': STAFF },
	'/api/sets/[set]/states': { '*': STAFF },

	'/crew/scenarios': { GET: STAFF, '?/make': STAFF, '?/copy': STAFF, '?/import': STAFF },
	'/crew/scenarios/[scenario]': { GET: STAFF, '?/save': STAFF, '?/publish': STAFF, '?/retire': STAFF, '?/restore': STAFF, '?/discard': STAFF },
	'/crew/scenarios/[scenario]/json': { GET: STAFF },

	'/crew/board': { GET: STAFF },

	'/learn/record': { GET: LEARNER, '?/acknowledge': LEARNER },
	'/learn/record/[record]/certificate': { GET: LEARNER },
	'/learn/record/[record]/credential': { GET: LEARNER },

	'/v': { GET: ALL, '?/check': ALL },
	'/v/[code]': { GET: ALL, '?/name': ALL },
	'/[x+2e]well-known/jwks.json': { GET: ALL },
	'/issuers/[organisation]': { GET: ALL },
	'/issuers/[organisation]/revoked': { GET: ALL },

	'/records': { GET: EMPLOYER },
	'/records/person/[person]': {
		GET: EMPLOYER,
		'?/order': EMPLOYER,
		'?/withdraw': EMPLOYER,
		'?/revoke': EMPLOYER,
		'?/reinstate': EMPLOYER,
		'?/acknowledge': EMPLOYER,
		'?/leave': EMPLOYER,
		'?/return': EMPLOYER
	},
	'/records/person/[person]/check/[check]': { GET: EMPLOYER },
	'/records/person/[person]/prior': { GET: EMPLOYER, '?/read': EMPLOYER, '?/sign': EMPLOYER },
	'/records/person/[person]/forget': { GET: EMPLOYER, '?/forget': EMPLOYER },
	'/records/person/[person]/data': { GET: EMPLOYER },
	'/records/person/[person]/[record]/certificate': { GET: EMPLOYER },
	'/records/person/[person]/[record]/credential': { GET: EMPLOYER },
	'/records/list': { GET: EMPLOYER, '?/ask': EMPLOYER },
	'/records/retraining': { GET: EMPLOYER, '?/order': EMPLOYER },
	'/records/exports': { GET: EMPLOYER },
	'/records/exports/[file]': { GET: EMPLOYER },
	'/records/log': { GET: EMPLOYER },
	'/records/keeping': { GET: EMPLOYER, '?/check': EMPLOYER, '?/checkpoint': EMPLOYER },
	'/records/keeping/[size]': { GET: EMPLOYER },
	'/records/people/list': { GET: EMPLOYER, '?/look': EMPLOYER, '?/enter': EMPLOYER },
	'/records/settings/records': { GET: EMPLOYER, '?/default': EMPLOYER },
	'/records/people': { GET: EMPLOYER, '?/invite': EMPLOYER, '?/reset': EMPLOYER, '?/unlock': EMPLOYER, '?/close': EMPLOYER },
	'/records/settings': { GET: EMPLOYER, '?/default': EMPLOYER },
	'/records/settings/pass-rule': { GET: EMPLOYER, '?/choose': EMPLOYER, '?/make': EMPLOYER, '?/review': EMPLOYER }
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

/** @returns the row of a route; undefined for one that has none. */
function rightsTo(route: string): Rights | undefined {
	if (Object.hasOwn(ROUTES, route)) return ROUTES[route];
	const above = Object.keys(ROUTES).find((row) => row.endsWith('/*') && route.startsWith(row.slice(0, -1)));
	return above === undefined ? undefined : ROUTES[above];
}

/** @returns what a request is called in a row of the table. */
function deedOf(rights: Rights, method: string, search: URLSearchParams): string {
	if (method === 'HEAD') return 'GET';
	if (method !== 'POST' || 'POST' in rights || '*' in rights) return method;
	return `?${[...search.keys()].find((key) => key.startsWith('/')) ?? '/default'}`;
}

/**
 * Asks the table.
 * @param route the id of the route; one that is not in the table is refused to everyone
 * @param search of the address: it names the form action
 */
export function accessTo(route: string, method: string, search: URLSearchParams, who: Who): Access {
	const rights = rightsTo(route);
	if (rights === undefined) return 'refused';
	const deed = deedOf(rights, method, search);
	const callers = Object.hasOwn(rights, deed) ? rights[deed] : rights['*'];
	if (callers === undefined) return 'refused';
	if (callers.includes(callerOf(who))) return 'allowed';
	return who.kind === 'guest' ? 'sign-in' : 'refused';
}
