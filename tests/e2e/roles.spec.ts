/** Every route and action, as everybody who could ask: the table in roles.ts against a running server. */
import { randomUUID } from 'node:crypto';
import { expect, test, type APIRequestContext, type APIResponse } from '@playwright/test';
import { putOnList } from '#lib/server/db/crew-list.ts';
import { addCrew, addTrainer } from '#lib/server/db/crews.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { insertOwnScenario, insertVersion } from '#lib/server/db/own-scenarios.ts';
import { insertOrganisation } from '#lib/server/db/people.ts';
import { startSession } from '#lib/server/people/session.ts';
import type { Person, Role } from '#lib/server/people/who.ts';
import { startDocument } from '#lib/server/scenarios/start.ts';
import { printedCode } from '#lib/server/paper/code.ts';
import { printSheet } from '#lib/server/paper/sheets.ts';
import { assignSet } from '#lib/server/sets/assign.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { handOutCertificate } from '#lib/server/records/certificate.ts';
import { makeCheckpoint } from '#lib/server/records/checkpoint.ts';
import { enterPeople } from '#lib/server/records/names.ts';
import { makeSet } from '#lib/server/sets/make.ts';
import { completedEntry } from '../support/record-entries.ts';
import { startOwnServer, type OwnServer } from './own-server.ts';
import { CALLERS, ROWS, type Caller, type Row, type Site } from './roles.ts';

// One server for all rows.
test.describe.configure({ mode: 'default' });

let server: OwnServer;
let db: Database;
let organisation: string;
let trainer: string;
let learner: string;
let count = 0;
const tokens = new Map<Caller, () => Promise<string>>();

async function anOrganisation(name: string): Promise<string> {
	const id = randomUUID();
	await insertOrganisation(db, { id, name, rules: 'us-construction', units: 'metric', language: 'en', zone: 'UTC', pass_rule: 'staged', created_at: new Date().toISOString() });
	return id;
}

async function aPerson(role: Role, of: string = organisation): Promise<string> {
	count += 1;
	const entry = role === 'learner' ? { personalNumber: `N-${count}` } : { email: `person-${count}@example.org` };
	const [id = ''] = await db.transaction().execute((transaction) => enterPeople(transaction, of, [{ role, name: `Person ${count}`, ...entry }], null, new Date()));
	return id;
}

async function aCrew(trainers: readonly string[], learners: readonly string[]): Promise<string> {
	const now = new Date().toISOString();
	const id = randomUUID();
	await addCrew(db, { id, organisation, name: 'Bridges North', joinCode: randomUUID().slice(0, 8).toUpperCase(), now });
	for (const one of trainers) await addTrainer(db, id, one, now);
	for (const one of learners) await putOnList(db, id, one, now);
	return id;
}

/** A session of a person, as the browser would hold it. */
async function tokenOf(person: string): Promise<string> {
	let token = '';
	const cookies = { get: () => undefined, set: (_: string, value: string) => void (token = value), delete: () => undefined };
	await startSession(db, cookies, false, person, new Date());
	return token;
}

/** A scenario of the trainer, with a version and a draft. */
async function aScenario(): Promise<string> {
	const [id, now] = [`own-${randomUUID().slice(0, 8)}`, new Date().toISOString()];
	const draft = JSON.stringify({ id, version: 1, ...startDocument({ rules: 'us-construction', units: 'metric' }) });
	await insertOwnScenario(db, { id, organisation, madeBy: trainer, draft, now });
	await insertVersion(db, { scenario: id, version: 1, document: draft, by: trainer, now });
	return id;
}

/** A practice set of the trainer, assigned to a crew. */
async function aSet(crew: string): Promise<Pick<Site, 'set' | 'assignment' | 'sheet' | 'sheetCode'>> {
	const now = new Date();
	const who: Person = { kind: 'person', id: trainer, organisation, role: 'trainer', name: 'Helle Brandt', answerer: '', language: null };
	const scenarios = [{ id: 'bridge-bearing', version: 1, asks: ['free-fall'] }];
	const content = { scenarios, count: 2, rule: { right: 2, critical: 0 }, sameForAll: false, language: null, aims: [] };
	const made = await makeSet(db, who, { name: 'Before the mast job', content }, now);
	const assigned = made.kind === 'made' ? await assignSet(db, who, made.id, { crews: [crew], people: [], dueDay: null }, now) : made;
	if (made.kind !== 'made' || assigned.kind !== 'assigned') throw new Error(JSON.stringify(assigned));
	const sheet = await printSheet(db, who, made.id, { copies: 1, alike: true, language: 'en' }, new Date());
	if (sheet === null) throw new Error('the set is not there');
	return { set: made.id, assignment: assigned.assignments[0] ?? '', sheet: sheet.id, sheetCode: printedCode(sheet.code, 1) };
}

/** A passed course of somebody. @returns the id of the record */
async function aRecord(person: string): Promise<string> {
	const entry = completedEntry(person, '2026-03-02');
	await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [entry]));
	return entry.id;
}

/** Records of a learner of the list and of the one who asks, and the code of a certificate. */
async function records(person: string): Promise<Pick<Site, 'record' | 'code' | 'ownRecord' | 'checkpoint'>> {
	const record = await aRecord(person);
	const who: Person = { kind: 'person', id: person, organisation, role: 'learner', name: '', answerer: '', language: null };
	const handed = await handOutCertificate(db, who, person, record, new Date());
	if (handed.kind === 'not-found') throw new Error('the record is not there');
	const ownRecord = await aRecord(learner);
	const made = await makeCheckpoint(db, organisation, new Date());
	if (made.kind !== 'made') throw new Error('there is no checkpoint');
	return { record, code: handed.code, ownRecord, checkpoint: String(made.checkpoint.size) };
}

/** @param about the row that it is for: what only some rows need is made for them alone */
async function newSite(about?: Row): Promise<Site> {
	const [person, colleague, second] = [await aPerson('learner'), await aPerson('trainer'), await aPerson('trainer')];
	const crew = await aCrew([trainer, second], [learner, person]);
	return { crew, person, colleague, second, sibling: await aCrew([trainer], []), scenario: about?.scenario ? await aScenario() : '', ...(about?.set ? await aSet(crew) : { set: '', assignment: '', sheet: '', sheetCode: '' }), organisation, ...(about?.record ? await records(person) : { record: '', code: '', ownRecord: '', checkpoint: '' }), unique: randomUUID().slice(0, 13) };
}

test.beforeAll(async () => {
	const file = test.info().outputPath('roles.sqlite');
	server = await startOwnServer(file);
	db = await openDatabase(`file:${file}`);
	organisation = await anOrganisation('Harrow Bridges');
	const other = await anOrganisation('Corvo Towers');
	learner = await aPerson('learner');
	trainer = await aPerson('trainer');
	const people: Readonly<Record<Exclude<Caller, 'guest'>, string>> = {
		learner,
		otherLearner: await aPerson('learner'),
		trainer,
		otherTrainer: await aPerson('trainer'),
		employer: await aPerson('employer'),
		otherEmployer: await aPerson('employer', other)
	};
	await aCrew([people.otherTrainer], [people.otherLearner]);
	for (const [caller, person] of Object.entries(people)) tokens.set(caller as Caller, () => tokenOf(person));
});

test.afterAll(async () => {
	await db.destroy();
	await server.end('SIGTERM');
});

async function ask(request: APIRequestContext, row: Row, caller: Caller, site: Site): Promise<APIResponse> {
	const token = await tokens.get(caller)?.();
	const form = row.form?.(site);
	return request.fetch(server.address + row.path(site), {
		method: row.method,
		headers: { accept: 'text/html', origin: server.address, ...(token === undefined ? {} : { cookie: `session=${token}` }) },
		...(form === undefined ? {} : { form: { ...form } }),
		...(row.json === undefined ? {} : { data: row.json }),
		maxRedirects: 0
	});
}

/** What an answer says of access. */
function outcome(response: APIResponse): 'allowed' | 'refused' | 'sign-in' | `status ${number}` {
	const status = response.status();
	const location = response.headers()['location'] ?? '';
	// A page leads to the form; scripts are told.
	if (status === 401 || (status === 303 && /\/sign-in\?/.test(location))) return 'sign-in';
	if (status === 404) return 'refused';
	// 400: an action that the form did not suit was reached all the same.
	return status < 400 || status === 400 ? 'allowed' : `status ${status}`;
}

for (const row of ROWS) {
	const about: Site = { crew: 'CREW', person: 'PERSON', colleague: 'COLLEAGUE', second: 'SECOND', sibling: 'SIBLING', scenario: 'SCENARIO', set: 'SET', assignment: 'ASSIGNMENT', sheet: 'SHEET', sheetCode: 'SHEETCODE', organisation: 'ORGANISATION', record: 'RECORD', code: 'CODE', ownRecord: 'OWNRECORD', checkpoint: 'CHECKPOINT', unique: 'unique' };
	test(`${row.method} ${row.path(about)} ${JSON.stringify(row.form?.(about) ?? row.json ?? {})}: ${row.allowed.join(', ') || 'nobody'}`, async ({ request }) => {
		const found: [Caller, string][] = [];
		for (const caller of CALLERS) found.push([caller, outcome(await ask(request, row, caller, await newSite(row)))]);
		const nobody = row.allowed.length === 0;
		const expected = CALLERS.map((caller): [Caller, string] => {
			if (row.allowed.includes(caller)) return [caller, 'allowed'];
			return [caller, caller === 'guest' && !(nobody && found[0]?.[1] === 'refused') ? 'sign-in' : 'refused'];
		});
		expect(found).toEqual(expected);
	});
}

test('what is not there and what is somebody else’s read the same', async ({ request }) => {
	const site = await newSite();
	const read = async (path: string, caller: Caller) => {
		const response = await ask(request, { method: 'GET', path: () => path, allowed: [] }, caller, site);
		expect(response.status()).toBe(404);
		// Nonces differ from answer to answer, and the form of the settings leads back to where one is.
		return (await response.text()).replace(/nonce[-=]"?[^"' ]+/g, '').replaceAll(path, '');
	};
	const missing = `/crew/${randomUUID()}`;
	expect(await read(`/crew/${site.crew}`, 'otherTrainer')).toBe(await read(missing, 'otherTrainer'));
	expect(await read(`/crew/${site.crew}`, 'otherEmployer')).toBe(await read(missing, 'otherEmployer'));
	const [refused, nothing] = [await read('/records', 'learner'), await read('/no-such-page', 'learner')];
	for (const page of [refused, nothing]) expect(page).toContain('There is no page at this address.');
});

test('a problem of an organisation’s scenario is there for its people, and for nobody else', async ({ request }) => {
	const row: Row = { method: 'GET', path: ({ scenario }) => `/learn/problem?scenario=${scenario}&seed=1`, allowed: [], scenario: true };
	const found = new Map<Caller, number>();
	for (const caller of CALLERS) found.set(caller, (await ask(request, row, caller, await newSite(row))).status());
	const people = ['learner', 'otherLearner', 'trainer', 'otherTrainer', 'employer'];
	expect(Object.fromEntries(found)).toEqual(Object.fromEntries(CALLERS.map((caller) => [caller, people.includes(caller) ? 200 : 404])));
});

test('what a signed-in person sees stays in no cache', async ({ request }) => {
	for (const path of ['/', '/records', '/no-such-page', '/method']) {
		const response = await ask(request, { method: 'GET', path: () => path, allowed: [] }, 'employer', await newSite());
		expect(response.headers()['cache-control'], path).toBe('no-store');
	}
});
