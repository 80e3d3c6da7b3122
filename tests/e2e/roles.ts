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
	/** A scenario that the trainer made, with a version and a draft; empty for rows that do not say that they need one. */
	readonly scenario: string;
	/** A practice set that the trainer made; empty for rows that do not say that they need one. */
	readonly set: string;
	/** The same set, assigned to the crew. */
	readonly assignment: string;
	/** The same set, printed: id of the sheet, and the code on its only copy. */
	readonly sheet: string;
	readonly sheetCode: string;
	/** The first organisation. */
	readonly organisation: string;
	/** A completion of `person`, and the code of its certificate; empty for rows that do not say that they need one. */
	readonly record: string;
	readonly code: string;
	/** A completion of the learner who asks as `learner`. */
	readonly ownRecord: string;
	/** Size of a checkpoint of the first organisation; empty for rows that do not say that they need a record. */
	readonly checkpoint: string;
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
	/** Whether it is about a scenario: an organisation may not have one for each request. */
	readonly scenario?: true;
	/** Whether it is about a practice set. */
	readonly set?: true;
	/** Whether it is about a record of training. */
	readonly record?: true;
}

const ALL: readonly Caller[] = CALLERS;
/** Each in their own place: the other organisation's employer has records of their own. */
const EMPLOYERS: readonly Caller[] = ['employer', 'otherEmployer'];
const STAFF: readonly Caller[] = ['trainer', 'otherTrainer', ...EMPLOYERS];
/** Whose crew it is. */
const OF_CREW: readonly Caller[] = ['trainer', 'employer'];
/** Of whose organisation it is, and whose to look at. */
const OF_ORGANISATION: readonly Caller[] = ['trainer', 'otherTrainer', 'employer'];
/** Whoever teaches the crew; the employer does not. */
const TEACHES: readonly Caller[] = ['trainer'];
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

/** Training from before as an employer enters it. */
const PRIOR = { id: '5b7b1d0e-6a54-4a35-9f0c-0c9b8f4f7d11', training: 'Two-day course elsewhere', provider: '', programme: '', trainedDay: '', judgedDay: '2026-03-02', validUntil: '', document: '' };

/** An action on a person of the crew's list. */
function onCrew(action: string, allowed: readonly Caller[], more: (site: Site) => Readonly<Record<string, string>> = () => ({})): Row {
	return post(
		({ crew }) => `/crew/${crew}?/${action}`,
		(site) => ({ person: site.person, ...more(site) }),
		allowed
	);
}

/** A request about the trainer's scenario. @param below it, an action with its question mark */
function ofScenario(below: string, allowed: readonly Caller[], form?: NonNullable<Row['form']>): Row {
	const path = ({ scenario }: Site) => `/crew/scenarios/${scenario}${below}`;
	return { ...(form === undefined ? get(path, allowed) : post(path, form, allowed)), scenario: true };
}

/** A request about the trainer's practice set. @param path behind the set's id; an action with its question mark */
function ofSet(path: (site: Site) => string, allowed: readonly Caller[], form?: NonNullable<Row['form']>): Row {
	return { ...(form === undefined ? get(path, allowed) : post(path, form, allowed)), set: true };
}

/** A request about a record of training. */
function ofRecord(path: (site: Site) => string, allowed: readonly Caller[], form?: NonNullable<Row['form']>): Row {
	return { ...(form === undefined ? get(path, allowed) : post(path, form, allowed)), record: true };
}

/** A set of two problems, as its form sends it. */
const NEW_SET = { name: 'Before the mast job', scenario: 'bridge-bearing', skill: 'free-fall', units: 'metric', count: '2', right: '2', unsafe: '0', same: 'apart', language: 'own' };

/** The revision that a scenario has when it is made. */
const FIRST = { revision: '1' };

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
	get('/learn/record', LEARNERS),
	post('/learn/record?/acknowledge', () => ({ record: '00000000-0000-4000-8000-000000000000' }), LEARNERS),
	get('/learn/lesson/stages', ALL),
	get('/learn/lesson/swing', ALL),
	get('/learn/lesson/no-such-lesson', NOBODY),
	get('/learn/check/stages', LEARNERS),
	get('/learn/check/final', LEARNERS),
	get('/learn/check/no-such-lesson', NOBODY),
	post('/learn/check/stages?/begin', () => ({}), LEARNERS),
	{ ...get(({ assignment }) => `/learn/set/${assignment}`, ['learner']), set: true },
	get('/learn/set/00000000-0000-4000-8000-000000000000', NOBODY),
	send('/api/course/events', PEOPLE),
	send('/api/course/checks', LEARNERS),
	send('/api/course/checks/00000000-0000-0000-0000-000000000000/answers', LEARNERS),
	send('/api/course/checks/00000000-0000-0000-0000-000000000000/pages', LEARNERS),

	...['certificate', 'credential'].flatMap((file) => [
		ofRecord(({ ownRecord }) => `/learn/record/${ownRecord}/${file}`, ['learner']),
		ofRecord(({ record }) => `/learn/record/${record}/${file}`, NOBODY),
		ofRecord(({ person, record }) => `/records/person/${person}/${record}/${file}`, ONE_EMPLOYER),
		ofRecord(({ colleague, record }) => `/records/person/${colleague}/${record}/${file}`, NOBODY),
		ofRecord(({ person, ownRecord }) => `/records/person/${person}/${ownRecord}/${file}`, NOBODY)
	]),
	ofRecord(({ person, record }) => `/records/person/${person}/${record}/certificate?size=letter&language=es`, ONE_EMPLOYER),
	ofRecord(({ person, record }) => `/records/person/${person}/${record}/certificate?size=a3`, NOBODY),
	get('/v', ALL),
	post('/v?/check', () => ({ given: 'no code' }), ALL),
	ofRecord(({ person }) => `/records/person/${person}?/acknowledge`, ONE_EMPLOYER, ({ record }) => ({ record })),
	ofRecord(({ colleague }) => `/records/person/${colleague}?/acknowledge`, NOBODY, ({ record }) => ({ record })),
	ofRecord(({ code }) => `/v/${code}`, ALL),
	ofRecord(({ code }) => `/v/${code}?/name`, ALL, () => ({ name: 'Noor Vale' })),
	get('/v/AAAAAAAAAAAAAAAAAAAAAA', NOBODY),
	post('/v/AAAAAAAAAAAAAAAAAAAAAA?/name', () => ({ name: 'Noor Vale' }), NOBODY),
	get('/.well-known/jwks.json', ALL),
	get(({ organisation }) => `/issuers/${organisation}`, ALL),
	get(({ organisation }) => `/issuers/${organisation}/revoked`, ALL),
	get('/issuers/00000000-0000-0000-0000-000000000000', NOBODY),
	get('/issuers/00000000-0000-0000-0000-000000000000/revoked', NOBODY),

	get('/records', EMPLOYERS),
	get('/records?q=noor&state=left&crew=00000000-0000-0000-0000-000000000000&sort=name&page=2', EMPLOYERS),
	get('/records/list', EMPLOYERS),
	post('/records/list?/ask', () => ({ list: 'Noor Vale' }), EMPLOYERS),
	get(({ person }) => `/records/person/${person}`, ONE_EMPLOYER),
	get(({ colleague }) => `/records/person/${colleague}`, NOBODY),
	get(({ person }) => `/records/person/${person}/check/00000000-0000-4000-8000-000000000000`, NOBODY),
	post(({ person }) => `/records/person/${person}?/order`, () => ({ reason: 'expiry', due: '2020-02-29' }), ONE_EMPLOYER),
	post(({ person }) => `/records/person/${person}?/order`, () => ({}), ONE_EMPLOYER),
	post(({ person }) => `/records/person/${person}?/withdraw`, ({ unique }) => ({ order: unique }), NOBODY),
	post(({ person }) => `/records/person/${person}?/revoke`, ({ unique }) => ({ record: unique }), ONE_EMPLOYER),
	post(({ person }) => `/records/person/${person}?/revoke`, ({ unique }) => ({ record: unique, reason: 'other' }), NOBODY),
	post(({ person }) => `/records/person/${person}?/reinstate`, ({ unique }) => ({ record: unique }), NOBODY),
	post(({ person }) => `/records/person/${person}?/acknowledge`, ({ unique }) => ({ record: unique }), NOBODY),
	post(({ person }) => `/records/person/${person}?/leave`, () => ({ day: '2999-12-31' }), ONE_EMPLOYER),
	post(({ person }) => `/records/person/${person}?/return`, () => ({}), ONE_EMPLOYER),
	get('/records/exports', EMPLOYERS),
	get('/records/exports?from=14.3.2026', EMPLOYERS),
	...['people.csv?bom=1', 'completions.csv?from=2026-01-01&to=2026-12-31', 'retraining.csv', 'answers.csv', 'log.csv?to=2026-01-01', 'everything.json'].map((file) => get(`/records/exports/${file}`, EMPLOYERS)),
	get('/records/exports/log.csv?from=2026-02-30', EMPLOYERS),
	get('/records/exports/secrets.csv', NOBODY),
	get(({ person }) => `/records/person/${person}/data`, ONE_EMPLOYER),
	...['completions', 'answers'].map((form) => get(({ person }) => `/records/person/${person}/data?as=${form}`, ONE_EMPLOYER)),
	get(({ person }) => `/records/person/${person}/data?as=xml`, NOBODY),
	get('/records/person/00000000-0000-0000-0000-000000000000/data', NOBODY),
	get('/records/log', EMPLOYERS),
	get('/records/log?what=exports&who=helle&from=2026-01-01&to=2026-12-31&at=2026-03-02T09:00:00.000Z&id=00000000-0000-0000-0000-000000000000', EMPLOYERS),
	get('/records/keeping', EMPLOYERS),
	post('/records/keeping?/check', () => ({}), EMPLOYERS),
	post('/records/keeping?/checkpoint', () => ({}), EMPLOYERS),
	ofRecord(({ checkpoint }) => `/records/keeping/${checkpoint}`, ONE_EMPLOYER),
	get('/records/keeping/1e3', NOBODY),
	get('/records/people', EMPLOYERS),
	get('/records/settings', EMPLOYERS),
	post('/records/settings', () => SETTINGS, EMPLOYERS),
	get('/records/settings/records', EMPLOYERS),
	post('/records/settings/records', () => ({ months: '24', soonDays: '30', keepMonths: '' }), EMPLOYERS),
	get('/records/retraining', EMPLOYERS),
	get(({ crew }) => `/records/retraining?whom=crew:${crew}&days=&reason=expiry&due=2099-12-31`, EMPLOYERS),
	post('/records/retraining?/order', ({ crew }) => ({ whom: `crew:${crew}`, days: '', reason: 'expiry', due: '2020-02-29', people: '1' }), EMPLOYERS),
	get(({ person }) => `/records/person/${person}/prior`, ONE_EMPLOYER),
	get(({ colleague }) => `/records/person/${colleague}/prior`, NOBODY),
	post(({ person }) => `/records/person/${person}/prior?/read`, () => PRIOR, ONE_EMPLOYER),
	post(({ colleague }) => `/records/person/${colleague}/prior?/sign`, () => ({ ...PRIOR, shown: 'x', password: 'three cranes by the river' }), NOBODY),
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
	get('/records/people?search=noor&page=2', EMPLOYERS),
	get('/records/people/list', EMPLOYERS),
	post('/records/people/list?/look', ({ unique }) => ({ list: `Noor Vale,${unique}` }), EMPLOYERS),
	post('/records/people/list?/enter', ({ unique }) => ({ list: `Noor Vale,${unique}`, shown: '' }), EMPLOYERS),
	get(({ person }) => `/records/person/${person}/forget`, ONE_EMPLOYER),
	get('/records/person/00000000-0000-0000-0000-000000000000/forget', NOBODY),
	post(({ person }) => `/records/person/${person}/forget?/forget`, () => ({ typed: 'Noor Vale', why: 'asked-for' }), ONE_EMPLOYER),

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
	get(({ crew }) => `/crew/${crew}/picture`, TEACHES),
	get(({ crew, person }) => `/crew/${crew}/picture?cell=free-fall&person=${person}&slip=margin-left-out`, TEACHES),
	post(({ crew }) => `/crew/${crew}/picture?/aim`, () => ({}), TEACHES),
	onCrew('assign', ONE_EMPLOYER, ({ colleague }) => ({ trainer: colleague })),
	onCrew('release', ONE_EMPLOYER, ({ second }) => ({ trainer: second })),

	get('/crew/sets', STAFF),
	get('/crew/sets/new', STAFF),
	post('/crew/sets/new?/make', () => NEW_SET, STAFF),
	post('/crew/sets/new?/make', () => ({}), STAFF),
	get('/crew/sets/new?copy=00000000-0000-0000-0000-000000000000', NOBODY),
	get('/crew/sets/00000000-0000-0000-0000-000000000000', NOBODY),
	get('/crew/sets/00000000-0000-0000-0000-000000000000/preview', NOBODY),
	get('/api/sets/00000000-0000-0000-0000-000000000000/states', NOBODY),
	ofSet(({ set }) => `/crew/sets/new?copy=${set}`, OF_CREW),
	ofSet(({ set }) => `/crew/sets/${set}`, OF_CREW),
	ofSet(({ set, assignment }) => `/crew/sets/${set}?recall=${assignment}`, OF_CREW),
	ofSet(({ set }) => `/crew/sets/${set}/preview?n=2`, OF_CREW),
	ofSet(({ set }) => `/crew/sets/${set}/preview?n=3`, NOBODY),
	ofSet(({ set }) => `/api/sets/${set}/states`, OF_CREW),
	ofSet(({ set }) => `/crew/sets/${set}?/assign`, OF_CREW, ({ sibling }) => ({ crew: sibling })),
	ofSet(({ set }) => `/crew/sets/${set}?/recall`, OF_CREW, ({ assignment }) => ({ assignment })),
	ofSet(({ set }) => `/crew/sets/${set}?/recall`, NOBODY, ({ set }) => ({ assignment: set })),
	ofSet(({ set }) => `/crew/sets/${set}?/archive`, OF_CREW, () => ({})),
	ofSet(({ set }) => `/crew/sets/${set}?/restore`, OF_CREW, () => ({})),

	get('/crew/sets/00000000-0000-0000-0000-000000000000/paper', NOBODY),
	get('/crew/sets/00000000-0000-0000-0000-000000000000/paper/00000000-0000-0000-0000-000000000000', NOBODY),
	ofSet(({ set }) => `/crew/sets/${set}/paper`, OF_CREW),
	ofSet(({ set }) => `/crew/sets/${set}/paper?/print`, OF_CREW, () => ({ kind: 'alike', language: 'en', size: 'a4' })),
	ofSet(({ set, sheet }) => `/crew/sets/${set}/paper/${sheet}?part=sheet&size=a4`, OF_CREW),
	ofSet(({ set, sheet }) => `/crew/sets/${set}/paper/${sheet}?part=key&size=letter`, OF_CREW),
	ofSet(({ set, sheet }) => `/crew/sets/${set}/paper/${sheet}?part=answers&size=a4`, NOBODY),
	ofSet(({ set }) => `/crew/sets/${set}/paper/${set}`, NOBODY),
	get('/crew/paper', STAFF),
	get('/crew/paper?code=K7QM-2XWD-01&person=00000000-0000-0000-0000-000000000000', STAFF),
	post('/crew/paper?/find', () => ({ code: 'K7QM-2XWD-01', person: '' }), STAFF),
	post('/crew/paper?/enter&code=K7QM-2XWD-01&person=00000000-0000-0000-0000-000000000000', () => ({}), STAFF),
	ofSet(({ sheetCode, person }) => `/crew/paper?/enter&code=${sheetCode}&person=${person}`, STAFF, () => ({})),

	get('/crew/board', STAFF),
	get('/crew/board?scenario=bridge-bearing&seed=5', STAFF),
	get('/crew/board?scenario=bridge-bearing', STAFF),
	get('/crew/board?scenario=own-0000000000&seed=5', NOBODY),
	get('/crew/board?set=00000000-0000-0000-0000-000000000000&seed=5', NOBODY),
	ofSet(({ set }) => `/crew/board?set=${set}&place=1&seed=5`, OF_CREW),
	ofSet(({ set }) => `/crew/board?set=${set}&place=99&seed=5`, NOBODY),

	get('/crew/scenarios', STAFF),
	post('/crew/scenarios?/make', () => ({}), STAFF),
	post('/crew/scenarios?/import', () => ({ text: '{}' }), STAFF),
	post('/crew/scenarios?/copy', () => ({ scenario: 'silo-top' }), STAFF),
	post('/crew/scenarios?/copy', () => ({ scenario: 'own-0000000000' }), NOBODY),
	{ ...post('/crew/scenarios?/copy', ({ scenario }) => ({ scenario }), OF_ORGANISATION), scenario: true },
	get('/crew/scenarios/own-0000000000', NOBODY),
	get('/crew/scenarios/own-0000000000/json', NOBODY),
	ofScenario('', OF_ORGANISATION),
	ofScenario('/json', OF_ORGANISATION),
	ofScenario('?/save', OF_CREW, () => ({ ...FIRST, text: '{"title":"not yet"}' })),
	ofScenario('?/publish', OF_CREW, () => FIRST),
	ofScenario('?/discard', OF_CREW, () => FIRST),
	ofScenario('?/retire', OF_CREW, () => ({})),
	ofScenario('?/restore', OF_CREW, () => ({}))
];
