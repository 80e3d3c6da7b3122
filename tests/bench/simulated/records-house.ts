/**
 * Organisations with years of records, made quickly: a few people go through the course by the server's own functions,
 * and everybody else gets copies of their checks and records under names, ids and days of their own. Chain, digests and
 * commitments are made anew for each, so that everything verifies.
 */
import { createHash } from 'node:crypto';
import { DatabaseSync, type SQLInputValue } from 'node:sqlite';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import { addDays, addMonths, canonicalJson, type Entry, type EntryOf } from '#lib/records/index.ts';
import type { Database } from '#lib/server/db/open.ts';
import { insertOrganisation } from '#lib/server/db/people.ts';
import { renewStates } from '#lib/server/records/append.ts';
import { BEFORE_FIRST, commitmentTo, entryHash } from '#lib/server/records/chain.ts';
import { evidenceDigest } from '#lib/server/records/evidence.ts';
import { enterPeople } from '#lib/server/records/names.ts';
import { goThroughCourse } from '#lib/server/people/demo-course.ts';
import type { CheckEvent, CheckTry } from '#lib/server/db/checks.ts';
import type { HandsOnRecord } from '#lib/records/index.ts';

/** Validity that the organisations ask for, months. */
const VALID_MONTHS = 24;
/** First day of the records. */
const FIRST_DAY = '2022-03-01';
/** Days over which the first completions are spread, and days between two of one person. */
const SPREAD = { first: 800, next: 420 } as const;
const STATES_AT_ONCE = 2000;

const GIVEN = ['Amina', 'Bo', 'Carla', 'Dario', 'Eun', 'Farid', 'Greta', 'Hoku', 'Ilan', 'Jo', 'Kari', 'Lucía', 'Marit', 'Nadia', 'Orla', 'Priya', 'Quentin', 'Rosa', 'Sefa', 'Tomás'];
const FAMILY = ['Abara', 'Brandt', 'Corvo', 'Dahl', 'Eklund', 'Finch', 'Greve', 'Haddad', 'Iversen', 'Jansky', 'Kimura', 'Lindt', 'Marchetti', 'Norrby', 'Okoro', 'Penn', 'Quade', 'Rook', 'Strand', 'Vale'];

/** A check as somebody took it. */
interface Template {
	readonly of: CheckTry;
	readonly events: readonly CheckEvent[];
	readonly ended: EntryOf<'check-ended'>;
	/** Items that were answered in it. */
	readonly answers: number;
}

/** What one person's course left behind. */
interface Course {
	readonly lessons: readonly Template[];
	readonly final: Template;
	readonly completed: EntryOf<'completed'>;
}

/** How large an organisation is made. */
export interface HouseSize {
	readonly people: number;
	/** People beside them who have not begun. */
	readonly newcomers: number;
	/** Of each person. */
	readonly completions: number;
	/** Answers to items of checks, about: as many people as it takes have their lessons' checks kept as well. */
	readonly answers: number;
}

/** What an organisation came to. */
export interface House {
	readonly organisation: string;
	readonly employer: string;
	/** Ids of the learners. */
	readonly people: readonly string[];
	readonly completions: number;
	readonly entries: number;
	readonly answers: number;
}

/** @returns courses that a few people really took, made by the server's functions on an organisation of their own. */
export async function realCourses(db: Database, count: number): Promise<readonly Course[]> {
	const organisation = await newOrganisation(db, 'Quarry Lane Models');
	const start = new Date(`${FIRST_DAY}T08:00:00.000Z`);
	const people = Array.from({ length: count }, (_, i) => ({ role: 'learner' as const, name: `Model ${i + 1}`, personalNumber: `M-${i + 1}` }));
	const courses: Course[] = [];
	for (const id of await enterPeople(db, organisation, people, null, start)) {
		const { answerer_id: answerer, name } = await db.selectFrom('person').select(['answerer_id', 'name']).where('id', '=', id).executeTakeFirstOrThrow();
		await goThroughCourse(db, { kind: 'person', id, organisation, role: 'learner', name, answerer, language: null }, start, 'final');
		courses.push(await courseOf(db, id));
	}
	return courses;
}

async function courseOf(db: Database, person: string): Promise<Course> {
	const entries = (await db.selectFrom('record_entry').select('payload').where('person_id', '=', person).orderBy('seq').execute()).map(({ payload }) => JSON.parse(payload) as Entry);
	const templates: Template[] = [];
	for (const ended of entries) {
		if (ended.kind !== 'check-ended') continue;
		const of = await db.selectFrom('check_try').selectAll().where('id', '=', ended.check).executeTakeFirstOrThrow();
		const events = await db.selectFrom('check_event').selectAll().where('check_id', '=', ended.check).orderBy('seq').execute();
		const answers = events.reduce((sum, { kind, payload }) => (kind === 'handed-in' ? sum + (JSON.parse(payload) as { results: unknown[] }).results.length : sum), 0);
		templates.push({ of, events, ended, answers });
	}
	const final = templates.find(({ of }) => of.lesson === 'final');
	const completed = entries.find((one) => one.kind === 'completed');
	if (final === undefined || completed === undefined) throw new Error('a model did not pass');
	return { lessons: templates.filter(({ of }) => of.lesson !== 'final'), final, completed };
}

async function newOrganisation(db: Database, name: string): Promise<string> {
	const id = uuidOf(name);
	await insertOrganisation(db, { id, name, rules: 'us-construction', units: 'metric', language: 'en', zone: 'UTC', pass_rule: 'staged', created_at: `${FIRST_DAY}T00:00:00.000Z` });
	return id;
}

/** @returns a UUID that follows from a text. */
function uuidOf(text: string): string {
	const hex = createHash('sha256').update(text).digest('hex');
	return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-4${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20, 32)}`;
}

/** Writes rows straight into the file; nothing of it has to survive a crash. */
class Writer {
	readonly #db: DatabaseSync;
	readonly #statements = new Map<string, ReturnType<DatabaseSync['prepare']>>();

	constructor(file: string) {
		this.#db = new DatabaseSync(file, { enableForeignKeyConstraints: false });
		this.#db.exec('PRAGMA synchronous = OFF; PRAGMA cache_size = -200000; BEGIN');
	}

	put(table: string, row: Readonly<Record<string, SQLInputValue>>): void {
		let statement = this.#statements.get(table);
		if (statement === undefined) {
			const names = Object.keys(row);
			statement = this.#db.prepare(`insert into ${table} (${names.join(', ')}) values (${names.map(() => '?').join(', ')})`);
			this.#statements.set(table, statement);
		}
		statement.run(...Object.values(row));
	}

	/** What was written so far is there for others. */
	commit(): void {
		this.#db.exec('COMMIT; BEGIN');
	}

	close(): void {
		this.#db.exec('COMMIT; PRAGMA wal_checkpoint(TRUNCATE)');
		this.#db.close();
	}
}

/** One organisation, while it is being made. */
class Builder {
	readonly #writer: Writer;
	readonly #organisation: string;
	readonly #name: string;
	readonly #courses: readonly Course[];
	readonly #random: RandomGenerator;
	#seq = 0;
	#hash = BEFORE_FIRST;
	#ids = 0;
	answers = 0;
	completions = 0;

	constructor(writer: Writer, organisation: string, name: string, courses: readonly Course[], seed: number) {
		this.#writer = writer;
		this.#organisation = organisation;
		this.#name = name;
		this.#courses = courses;
		this.#random = xoroshiro128plus(seed);
	}

	get entries(): number {
		return this.#seq;
	}

	get hash(): string {
		return this.#hash;
	}

	/** Below a number. */
	below(most: number): number {
		return (this.#random.next() >>> 0) % most;
	}

	id(): string {
		return uuidOf(`${this.#organisation} ${(this.#ids += 1)}`);
	}

	append(entry: Entry): void {
		const payload = canonicalJson(entry);
		const prev = this.#hash;
		this.#seq += 1;
		this.#hash = entryHash(this.#seq, prev, payload);
		const person = 'person' in entry ? entry.person : null;
		this.#writer.put('record_entry', { organisation_id: this.#organisation, seq: this.#seq, kind: entry.kind, person_id: person, at: entry.at, payload, prev, hash: this.#hash });
	}

	/** @returns the id, and the commitment to the name. */
	person(role: 'learner' | 'trainer' | 'employer', nth: number): { readonly id: string; readonly named: string } {
		const id = this.id();
		const at = `${FIRST_DAY}T06:00:00.000Z`;
		const name = `${GIVEN[this.below(GIVEN.length)] ?? ''} ${FAMILY[this.below(FAMILY.length)] ?? ''}`;
		const number = role === 'learner' ? `W-${nth + 1}` : null;
		const answerer = this.id();
		this.#writer.put('guest', { id: answerer, token_hash: `person:${id}`, created_at: at });
		const email = role === 'learner' ? null : `${role}@${this.#organisation}.example`;
		this.#writer.put('person', { id, organisation_id: this.#organisation, answerer_id: answerer, role, name, personal_number: number, email, secret: null, language: null, closed_at: null, created_at: at });
		const salt = createHash('sha256').update(id).digest('hex');
		const named = commitmentTo(salt, name, number);
		this.#writer.put('identity', { commitment: named, organisation_id: this.#organisation, person_id: id, salt, name, personal_number: number, at });
		this.append({ kind: 'named', at, by: null, person: id, role, commitment: named });
		return { id, named };
	}

	/** A check like the template's, of another person on another day. */
	check(template: Template, person: string, day: string, nth: number): { readonly id: string; readonly digest: string } {
		const id = this.id();
		const at = `${day}T09:00:00.000Z`;
		const of = { ...template.of, id, person_id: person, day, at, nth };
		const events = template.events.map((event) => {
			const own = this.id();
			return { ...event, id: own, check_id: id, sent: event.sent.replaceAll(event.id, own), at };
		});
		this.#writer.put('check_try', of);
		for (const event of events) this.#writer.put('check_event', event);
		const digest = evidenceDigest(of, events);
		this.append({ ...template.ended, at, person, by: person, check: id, nth, day, digest });
		this.answers += template.answers;
		return { id, digest };
	}

	/** A final check passed, and signed by hand. */
	completion(course: Course, person: string, day: string, nth: number, trainer: { readonly id: string; readonly named: string }): void {
		const { id: check, digest } = this.check(course.final, person, day, nth);
		const at = `${day}T09:30:00.000Z`;
		const id = this.id();
		this.append({
			...course.completed,
			at,
			by: person,
			person,
			id,
			employer: { id: this.#organisation, name: this.#name },
			startedAt: at,
			endedAt: at,
			day,
			check,
			digest,
			tries: nth,
			validity: { months: VALID_MONTHS, by: 'employer', until: addMonths(day, VALID_MONTHS) }
		});
		const { course: of, language } = course.completed;
		this.#writer.put('completion', { id, organisation_id: this.#organisation, person_id: person, course: of.id, version: of.version, check_id: check, supervised: 0, language, day, at });
		this.completions += 1;
		const theory = { completion: id, course: of.id, version: of.version, day, supervised: false };
		const record: HandsOnRecord = {
			kind: 'hands-on', version: 1, id: this.id(), organisation: this.#organisation, person, scope: of.scope,
			checks: ['inspection', 'donning', 'connecting', 'anchorage-choice', 'rescue-plan'], place: 'Training yard', day, theory
		};
		const record_hash = createHash('sha256').update(canonicalJson(record)).digest('hex');
		const signature = { record: record_hash, signer: trainer.id, named: trainer.named, capacity: 'competent-person' as const, meaning: 'I saw this person do these things.', language: 'en' as const, at };
		this.append({ kind: 'hands-on', at, by: trainer.id, person, record, signature });
		this.#writer.put('sign_off', {
			id: record.id, organisation_id: this.#organisation, person_id: person, signer_id: trainer.id, capacity: 'competent-person',
			record: canonicalJson(record), record_hash, signed: canonicalJson(signature), language: 'en', at
		});
	}

	/** Everything of one person. */
	learner(nth: number, completions: number, lessons: boolean, trainer: { readonly id: string; readonly named: string }): string {
		const { id } = this.person('learner', nth);
		const course = this.#courses[this.below(this.#courses.length)];
		if (course === undefined) throw new Error('there is no model');
		let day = addDays(FIRST_DAY, this.below(SPREAD.first));
		this.#writer.put('course_start', { person_id: id, course: course.completed.course.id, version: course.completed.course.version, seed: String(nth), at: `${day}T08:00:00.000Z` });
		if (lessons) for (const one of course.lessons) this.check(one, id, day, 1);
		for (let n = 1; n <= completions; n += 1) {
			if (n > 1) {
				const due = addDays(day, SPREAD.next);
				this.append({ kind: 'retraining-ordered', at: `${day}T12:00:00.000Z`, by: trainer.id, person: id, id: this.id(), reason: 'yearly-review', day, due });
				day = due;
			}
			this.completion(course, id, day, n, trainer);
		}
		return id;
	}
}

/**
 * Makes an organisation.
 * @param file of the database, whose tables are there already
 * @param courses that people really took
 */
export async function fillHouse(db: Database, file: string, name: string, size: HouseSize, courses: readonly Course[], seed: number): Promise<House> {
	const organisation = await newOrganisation(db, name);
	const writer = new Writer(file);
	const builder = new Builder(writer, organisation, name, courses, seed);
	builder.append({ kind: 'opened', at: `${FIRST_DAY}T06:00:00.000Z`, by: null, organisation, version: 1 });
	const employer = builder.person('employer', 0);
	const trainer = builder.person('trainer', 0);
	const [first] = courses;
	if (first === undefined) throw new Error('there is no model');
	const finals = size.people * size.completions * first.final.answers;
	const withLessons = Math.max(0, size.answers - finals) / (first.lessons.reduce((sum, one) => sum + one.answers, 0) || 1);
	const people: string[] = [];
	for (let n = 0; n < size.people; n += 1) {
		people.push(builder.learner(n, size.completions, n < withLessons, trainer));
		if (n % 1000 === 999) writer.commit();
	}
	for (let n = 0; n < size.newcomers; n += 1) people.push(builder.person('learner', size.people + n).id);
	writer.put('record_head', { organisation_id: organisation, seq: builder.entries, hash: builder.hash });
	writer.put('record_settings', { organisation_id: organisation, validity_months: VALID_MONTHS, soon_days: 30, keep_months: 36, changed_at: `${FIRST_DAY}T06:00:00.000Z` });
	writer.close();
	for (let i = 0; i < people.length; i += STATES_AT_ONCE) {
		await db.transaction().execute((transaction) => renewStates(transaction, people.slice(i, i + STATES_AT_ONCE)));
	}
	return { organisation, employer: employer.id, people, completions: builder.completions, entries: builder.entries, answers: builder.answers };
}

