/** Records under load while their server is killed again and again: what was replied to is there, once, and the chain holds. */
import { randomInt, randomUUID } from 'node:crypto';
import { expect, test } from '@playwright/test';
import { HANDS_ON_CHECKS } from '#lib/records/index.ts';
import { setSecret } from '#lib/server/db/people.ts';
import { replayed } from '#lib/server/course/state.ts';
import { hashSecret } from '#lib/server/people/secret.ts';
import { BEFORE_FIRST, entryHash } from '#lib/server/records/chain.ts';
import { verifyRecords } from '#lib/server/records/verify/verify.ts';
import { answered, problemOf } from '../support/answered.ts';
import { chanceFrom } from '../support/chance.ts';
import { CourseDriver } from '../support/course-driver.ts';
import { courseOverHttp, fieldsOf, joinOver, postTo, readFrom, EVENTS, type Post } from '../support/course-over-http.ts';
import { KilledServer } from '../support/killed-server.ts';
import { coursePeople } from './course-people.ts';
import { inDatabase } from './in-database.ts';

/** How often the server of each test is killed: 200 times in all. */
const KILLS = 100;
/** Share of starts that are killed before they take requests. */
const WHILE_STARTING = 0.4;
/** How many replies it gives at most until it is killed, once it takes requests. */
const REPLIES = 12;
/** How often a trainer reads again what is to be signed. */
const TRIES = 5;
const PASSWORD = 'three cranes by the river';
const LEARNERS = ['Ines Okoro', 'Dario Penn', 'Marit Oslo'];

/** The server that runs now; a test that fails leaves none behind. */
let running: KilledServer | undefined;
test.afterEach(async () => {
	await running?.stop();
	running = undefined;
});

/** Tables of what is sent under an id of its sender. */
const TABLES = ['attempt', 'course_event', 'check_event', 'sign_off'] as const;
type TableName = (typeof TABLES)[number];

/** A trainer's way through the sign-off: read, then signed. Sent until a reply comes. */
async function signOff(server: KilledServer, path: string, cookie: string, id: string): Promise<void> {
	const form = new URLSearchParams({ id, place: 'Training yard, bay 2', day: new Date(Date.now() - 86_400_000).toISOString().slice(0, 10), capacity: 'competent-person' });
	for (const check of HANDS_ON_CHECKS) form.append('check', check);
	const post = (action: string): Promise<{ readonly status: number; readonly page: string }> =>
		server.replied(async (address) => {
			const reply = await fetch(`${address}${path}?/${action}`, { method: 'POST', body: form, headers: { cookie, origin: address, accept: 'text/html' }, redirect: 'manual' });
			return { status: reply.status, page: await reply.text() };
		});
	form.set('password', PASSWORD);
	for (let tries = 0; tries < TRIES; tries += 1) {
		const shown = /name="shown" value="([0-9a-f]{64})"/.exec((await post('read')).page)?.[1];
		if (shown === undefined) throw new Error('there was nothing to sign');
		form.set('shown', shown);
		// What is signed may have changed meanwhile, by a theory that was passed: it is read again.
		if ((await post('sign')).status === 303) return;
	}
	throw new Error('a sign-off was never taken');
}

for (const line of [1, 2]) {
	test(`what was replied to is there, once, and the chain holds, when the server is killed ${KILLS} times under load (${line} of 2)`, async () => {
		test.setTimeout(480_000);
		const seed = Number(process.env['E2E_SEED'] ?? randomInt(2 ** 31));
		console.log(`killed at the moments of E2E_SEED=${seed}`);
		const chance = chanceFrom(seed + line);
		const file = test.info().outputPath('killed-records.sqlite');
		const people = await coursePeople(file, LEARNERS);
		const { trainer, crew } = readFrom(file, (db) => fieldsOf(db.prepare(`select person.id as trainer, crew.id as crew from person, crew where role = 'trainer'`).get()));
		const secret = await hashSecret('password', PASSWORD);
		await inDatabase(file, (db) => setSecret(db, String(trainer), secret));

		const server = new KilledServer(file);
		running = server;
		await server.start();
		const cookies: string[] = [];
		for (const learner of people.learners) cookies.push(await joinOver(server.address, learner));

		/** What was replied to. */
		const acknowledged: Record<TableName, string[]> = { attempt: [], course_event: [], check_event: [], sign_off: [] };
		let ended = false;

		const postAs = (cookie: string): Post => async (path, body) => {
			const reply = await server.replied((address) => postTo(address, path, body, { cookie }));
			const { id } = fieldsOf(body);
			const table = path === '/api/attempts' ? 'attempt' : path === EVENTS ? 'course_event' : 'check_event';
			if (reply.status < 300 && typeof id === 'string') acknowledged[table].push(id);
			return reply;
		};

		/** Goes through the course, and sends nothing more once all is over. */
		async function learn(cookie: string): Promise<void> {
			const post = postAs(cookie);
			const over = new Error('over');
			const driver = new CourseDriver(courseOverHttp((path, body) => (ended ? Promise.reject(over) : post(path, body)), file));
			await driver.course(replayed(0, [])).catch((error: unknown) => {
				if (error !== over) throw error;
			});
		}

		async function practise(cookie: string): Promise<void> {
			const post = postAs(cookie);
			for (let seed = 1; !ended; seed += 1) {
				const reply = await post('/api/attempts', answered(problemOf('bridge-bearing', seed)));
				// So many answers in a while are refused, and sent later.
				if (reply.status === 429) return;
				expect([200, 201], JSON.stringify(reply.body)).toContain(reply.status);
			}
		}

		async function sign(): Promise<void> {
			for (let i = 0; !ended; i += 1) {
				const id = randomUUID();
				const { person } = people.learners[i % people.learners.length] ?? { person: '' };
				await signOff(server, `/crew/${String(crew)}/sign-off/${person}`, people.trainer, id);
				acknowledged.sign_off.push(id);
			}
		}

		/** How many of those that were replied to were found, and where the chain was found to hold up to. */
		const found: Record<TableName, number> = { attempt: 0, course_event: 0, check_event: 0, sign_off: 0 };
		let held = { seq: 0, hash: BEFORE_FIRST };

		/** What must hold after every start: what was replied to since the last is there, and the chain goes on where it was. */
		function expectKept(about: string): void {
			readFrom(file, (db) => {
				db.exec('begin');
				for (const table of TABLES) {
					const find = db.prepare(`select count(*) as found from ${table} where id = ?`);
					const ids = acknowledged[table];
					for (; found[table] < ids.length; found[table] += 1) {
						const id = ids[found[table]] ?? '';
						expect(fieldsOf(find.get(id))['found'], `${about}: ${table} ${id}`).toBe(1);
					}
				}
				for (const { seq, payload, prev, hash } of db.prepare('select seq, payload, prev, hash from record_entry where seq > ? order by seq').all(held.seq)) {
					expect({ seq, prev }, about).toEqual({ seq: held.seq + 1, prev: held.hash });
					expect(hash, about).toBe(entryHash(Number(seq), String(prev), String(payload)));
					held = { seq: Number(seq), hash: String(hash) };
				}
				expect({ ...db.prepare('select seq, hash from record_head').get() }, about).toEqual(held);
				db.exec('rollback');
				// A try at a password that was cut short counts as a wrong one, and after some the trainer would have to wait.
				db.exec('delete from throttle');
			});
		}

		async function killAll(): Promise<void> {
			let kills = 0;
			while (kills < KILLS) {
				// After so many replies, and then before, while and after the next is worked on.
				await server.repliesMore(Math.floor(chance() * REPLIES));
				await new Promise((done) => setTimeout(done, chance() * 1.5 * server.usual));
				await server.kill();
				kills += 1;
				// Some starts are cut short as well, a few of them in a row.
				for (; kills < KILLS && chance() < WHILE_STARTING; kills += 1) await server.killWhileStarting(chance());
				await server.start();
				expectKept(`seed ${seed}, kill ${kills}`);
			}
		}

		const working = Promise.all([...cookies.slice(0, 2).map(learn), practise(cookies[2] ?? ''), practise(cookies[2] ?? ''), sign()]);
		await Promise.race([killAll(), working.then(() => Promise.reject(new Error('all work was done before the last kill')))]);
		ended = true;
		await working;
		expect(await server.stop()).toBe(0);
		running = undefined;
		expectKept(`seed ${seed}, at the end`);
		const said = Object.entries(acknowledged).map(([table, ids]) => `${table} ${ids.length}`);
		console.log(`killed ${KILLS} times, ${server.unanswered} times without a reply; replied to: ${said.join(', ')}; entries ${held.seq}`);

		// There was something to lose, of every kind, and what was sent again after a lost reply is there once.
		expect(server.unanswered).toBeGreaterThan(0);
		expect(acknowledged.attempt.length).toBeGreaterThan(20);
		expect(acknowledged.course_event.length).toBeGreaterThan(20);
		readFrom(file, (db) => {
			const count = (sql: string): number => Number(fieldsOf(db.prepare(sql).get())['n']);
			for (const kind of ['check-ended', 'hands-on']) expect(count(`select count(*) as n from record_entry where kind = '${kind}'`), kind).toBeGreaterThan(0);
			expect(count(`select count(*) as n from record_entry where kind = 'hands-on'`)).toBe(count('select count(*) as n from sign_off'));
			expect(count(`select count(*) as n from record_entry where kind = 'hands-on'`)).toBe(new Set(acknowledged.sign_off).size);
			expect(count(`select count(*) as n from check_event where kind = 'handed-in'`)).toBe(count(`select count(*) as n from record_entry where kind = 'check-ended'`));
			expect(count(`select count(*) as n from course_event where kind in ('shown', 'went-on', 'answered')`)).toBe(new Set(acknowledged.course_event).size);
		});
		expect(await inDatabase(file, (db) => verifyRecords(db, { depth: 'answers' }))).toMatchObject({ kind: 'holds', counts: { organisations: 1 } });
	});
}
