/**
 * Who may do what, asked of a running server: one row a route or action, with the callers that it lets in. Everybody
 * else must be answered as if nothing were there, and a guest be sent to sign in. New routes add rows here.
 */

/** Who asks. The learner and the trainer belong to the crew that rows are about, "other" ones to another crew. */
export const CALLERS = ['guest', 'learner', 'otherLearner', 'trainer', 'otherTrainer', 'employer', 'otherEmployer'] as const;

/** `otherEmployer` is of another organisation. */
export type Caller = (typeof CALLERS)[number];

/** Ids that rows speak of, made anew for every request: what one caller does cannot help or hinder the next. */
export interface Site {
	/** A crew of the first organisation, with the learner, the trainer and a person on its list. */
	readonly crew: string;
	/** A learner on the list of that crew. */
	readonly person: string;
	/** A trainer of the first organisation who has no crew. */
	readonly colleague: string;
	/** A trainer who has the crew as well. */
	readonly second: string;
	/** Another crew of the same trainer. */
	readonly sibling: string;
	/** Text that is not used twice. */
	readonly unique: string;
}

export interface Row {
	readonly method: 'GET' | 'POST';
	/** Address with its search; an action is named there. */
	readonly path: (site: Site) => string;
	readonly form?: (site: Site) => Readonly<Record<string, string>>;
	/** Of the interface: sent instead of a form. */
	readonly json?: Readonly<Record<string, unknown>>;
	readonly allowed: readonly Caller[];
}

const ALL: readonly Caller[] = CALLERS;
/** Each in their own place: the other organisation's employer has records of their own. */
const EMPLOYERS: readonly Caller[] = ['employer', 'otherEmployer'];
const STAFF: readonly Caller[] = ['trainer', 'otherTrainer', ...EMPLOYERS];
/** Whose crew it is. */
const OF_CREW: readonly Caller[] = ['trainer', 'employer'];
const ONE_EMPLOYER: readonly Caller[] = ['employer'];
const LEARNERS: readonly Caller[] = ['learner', 'otherLearner'];
/** Whoever is signed in goes through the course in a course of their own. */
const PEOPLE: readonly Caller[] = [...LEARNERS, ...STAFF];
const NOBODY: readonly Caller[] = [];

function get(path: string | ((site: Site) => string), allowed: readonly Caller[]): Row {
	return { method: 'GET', path: typeof path === 'string' ? () => path : path, allowed };
}

function post(path: string | ((site: Site) => string), form: NonNullable<Row['form']>, allowed: readonly Caller[]): Row {
	return { method: 'POST', path: typeof path === 'string' ? () => path : path, form, allowed };
}

/** What scripts send: a body that says nothing is refused by whoever takes it, after it was let in. */
function send(path: string, allowed: readonly Caller[]): Row {
	return { method: 'POST', path: () => path, json: {}, allowed };
}

const SETTINGS = { organisation: 'Harrow Bridges', rules: 'us-construction', units: 'metric', language: 'en', zone: 'UTC', passRule: 'staged' };

/** The counts of the staged rule, one stricter: a rule of one's own. */
const STAGED_COUNTS = {
	from: 'staged',
	'pass-0': '0',
	'fail-0': '4',
	'pass-1': '1',
	'fail-1': '5',
	'pass-2': '2',
	'fail-2': '5',
	'pass-3': '3',
	'unsafe-first': '1',
	'unsafe-in-all': '2',
	tries: '2',
	'tries-a-day': '2'
};

/** The hands-on part as a trainer enters it; without the checks it is asked for again, after it was let in. */
const SIGNED = { id: '3e0b6a52-9f0e-4a7e-8b61-5d2a3f1c7e90', place: 'Training yard', day: '2026-03-02', capacity: 'competent-person' };

/** An action on a person of the crew's list. */
function onCrew(action: string, allowed: readonly Caller[], more: (site: Site) => Readonly<Record<string, string>> = () => ({})): Row {
	return post(
		({ crew }) => `/crew/${crew}?/${action}`,
		(site) => ({ person: site.person, ...more(site) }),
		allowed
	);
}

export const ROWS: readonly Row[] = [
	get('/', ALL),
	get('/method', ALL),
	get('/health', ALL),
	get('/learn/problem?scenario=bridge-bearing&seed=1', ALL),
	get('/sign-in', ALL),
	get('/setup', ALL),
	get('/enrol', ALL),
	get('/join', ALL),
	post('/settings', () => ({ language: 'en', to: '/' }), ALL),
	post('/sign-out', () => ({}), ALL),
	post('/sign-in?/staff', ({ unique }) => ({ email: `${unique}@example.org`, password: 'three cranes by the river' }), ALL),
	post('/sign-in?/learner', ({ unique }) => ({ number: unique, pin: '482917' }), ALL),
	post('/setup', () => ({ code: 'NONE' }), ALL),
	post('/enrol', () => ({ code: 'NONE' }), ALL),
	post('/join?/find', ({ unique }) => ({ code: unique, name: 'Noor Vale', number: unique }), ALL),
	post('/join?/join', ({ unique }) => ({ code: unique, name: 'Noor Vale', number: unique, pin: '482917', again: '482917' }), ALL),
	get('/no-such-page', NOBODY),
	post('/', () => ({}), NOBODY),

	get('/learn', ALL),
	get('/learn/lesson/stages', ALL),
	get('/learn/lesson/swing', ALL),
	get('/learn/lesson/no-such-lesson', NOBODY),
	get('/learn/check/stages', LEARNERS),
	get('/learn/check/final', LEARNERS),
	get('/learn/check/no-such-lesson', NOBODY),
	post('/learn/check/stages?/begin', () => ({}), LEARNERS),
	send('/api/course/events', PEOPLE),
	send('/api/course/checks', LEARNERS),
	send('/api/course/checks/00000000-0000-0000-0000-000000000000/answers', LEARNERS),
	send('/api/course/checks/00000000-0000-0000-0000-000000000000/pages', LEARNERS),

	get('/records', EMPLOYERS),
	get('/records/people', EMPLOYERS),
	get('/records/settings', EMPLOYERS),
	post('/records/settings', () => SETTINGS, EMPLOYERS),
	get('/records/settings/pass-rule', EMPLOYERS),
	get('/records/settings/pass-rule?from=staged&review=staged', EMPLOYERS),
	post('/records/settings/pass-rule?/choose', () => ({ rule: 'staged' }), EMPLOYERS),
	post('/records/settings/pass-rule?/choose', () => ({ rule: 'own-fixed-24' }), NOBODY),
	post('/records/settings/pass-rule?/make', () => STAGED_COUNTS, EMPLOYERS),
	post(
		'/records/settings/pass-rule?/review',
		() => ({ rule: 'fixed-24', version: '1', date: '2026-03-02', judges: 'Ana Mora\nJo Reed\nLena Voss', document: 'Minutes 14' }),
		EMPLOYERS
	),
	post('/records/people?/invite', ({ unique }) => ({ name: 'Ida Storm', email: `${unique}@example.org`, role: 'trainer' }), EMPLOYERS),
	post('/records/people?/reset', ({ person }) => ({ person }), ONE_EMPLOYER),
	post('/records/people?/reset', ({ colleague }) => ({ person: colleague }), ONE_EMPLOYER),
	post('/records/people?/unlock', ({ person }) => ({ person }), ONE_EMPLOYER),
	post('/records/people?/close', ({ colleague }) => ({ person: colleague }), ONE_EMPLOYER),
	post('/records/people?/close', () => ({ person: '00000000-0000-0000-0000-000000000000' }), NOBODY),
	post('/records/people?/no-such-action', ({ person }) => ({ person }), NOBODY),

	get('/crew', STAFF),
	post('/crew?/make', ({ unique }) => ({ name: `Crew ${unique}` }), STAFF),
	get(({ crew }) => `/crew/${crew}`, OF_CREW),
	get('/crew/00000000-0000-0000-0000-000000000000', NOBODY),
	onCrew('rename', OF_CREW, ({ unique }) => ({ name: `Crew ${unique}` })),
	onCrew('archive', OF_CREW),
	onCrew('restore', OF_CREW),
	onCrew('add', OF_CREW, ({ unique }) => ({ name: 'Noor Vale', number: unique })),
	onCrew('move', OF_CREW, ({ sibling }) => ({ to: sibling })),
	onCrew('take-off', OF_CREW),
	onCrew('reset-pin', OF_CREW),
	onCrew('unlock', OF_CREW),
	onCrew('open', OF_CREW, () => ({ place: 'Training yard', identified: 'Badge with photo' })),
	get(({ crew }) => `/crew/${crew}/import`, OF_CREW),
	post(({ crew }) => `/crew/${crew}/import?/look`, ({ unique }) => ({ list: `Noor Vale,${unique}` }), OF_CREW),
	post(({ crew }) => `/crew/${crew}/import?/enter`, ({ unique }) => ({ list: `Noor Vale,${unique}` }), OF_CREW),
	get(({ crew, person }) => `/crew/${crew}/sign-off/${person}`, OF_CREW),
	get(({ sibling, person }) => `/crew/${sibling}/sign-off/${person}`, NOBODY),
	post(({ crew, person }) => `/crew/${crew}/sign-off/${person}?/read`, () => SIGNED, OF_CREW),
	post(({ sibling, person }) => `/crew/${sibling}/sign-off/${person}?/sign`, () => ({ ...SIGNED, shown: 'x', password: 'three cranes by the river' }), NOBODY),
	onCrew('assign', ONE_EMPLOYER, ({ colleague }) => ({ trainer: colleague })),
	onCrew('release', ONE_EMPLOYER, ({ second }) => ({ trainer: second }))
];

