import { randomInt, randomUUID } from 'node:crypto';
import { PASS_RULES } from '#lib/mastery/index.ts';
import { addTrainer, addCrew } from '../db/crews.ts';
import { putOnList } from '../db/crew-list.ts';
import type { Database } from '../db/open.ts';
import { findStaffByEmail, hasOrganisation, insertOrganisation } from '../db/people.ts';
import { enterPeople } from '../records/names.ts';
import { note } from './audit.ts';
import { grouped, randomCode } from './code.ts';
import { demoBegan, fillDemoRecords } from './demo-records.ts';
import { fillDemoSet } from './demo-set.ts';
import { hashSecret, PIN_LENGTH, weakPin } from './secret.ts';
import type { Person } from './who.ts';

/** Characters of an invented password. @reason 80 bits, and longer in groups than a password has to be. */
const PASSWORD_CHARACTERS = 16;
const CODE_CHARACTERS = 8;

const EMPLOYER = { name: 'Orla Finch', email: 'employer@demo.example' };
const CREWS = [
	{
		name: 'Bridges North',
		trainer: { name: 'Helle Brandt', email: 'north@demo.example' },
		learners: ['Dario Penn', 'Nadia Rook', 'Amadou Vale', 'Marit Oslo', 'Ilan Corvo', 'Sefa Lindt']
	},
	{
		name: 'Towers and Tanks',
		trainer: { name: 'Tomás Herrero Vidal', email: 'towers@demo.example' },
		learners: ['Tomas Eik', 'Jo Marchetti', 'Wen Abara', 'Priya Holm', 'Lucía Campos Rey', 'نادية روك']
	}
] as const;

/** Somebody of the invented organisation, with what they sign in with: said once. */
export interface DemoStaff {
	readonly role: 'employer' | 'trainer';
	readonly name: string;
	readonly email: string;
	readonly password: string;
}

export interface DemoLearner {
	readonly name: string;
	readonly number: string;
	readonly pin: string;
}

/** An invented organisation. */
export interface Demo {
	readonly organisation: string;
	readonly staff: readonly DemoStaff[];
	readonly crews: readonly { readonly name: string; readonly code: string; readonly trainer: string; readonly learners: readonly DemoLearner[] }[];
}

function newPin(number: string): string {
	for (;;) {
		const pin = String(randomInt(10 ** PIN_LENGTH)).padStart(PIN_LENGTH, '0');
		if (!weakPin(pin, number)) return pin;
	}
}

/**
 * Fills an empty database with an invented organisation: one employer, two trainers, two crews of six learners, of whom
 * the first has a practice set and has answered part of it, and the second has been trained, some long ago.
 * Passwords and PINs are made by chance, and told once: the database keeps their hashes.
 * @returns null, and nothing is changed, when there is an organisation already
 */
export async function fillDemo(db: Database, now: Date): Promise<Demo | null> {
	if (await hasOrganisation(db)) return null;
	const staff: readonly DemoStaff[] = [
		{ role: 'employer', ...EMPLOYER, password: grouped(randomCode(PASSWORD_CHARACTERS)) },
		...CREWS.map(({ trainer }) => ({ role: 'trainer' as const, ...trainer, password: grouped(randomCode(PASSWORD_CHARACTERS)) }))
	];
	const crews = CREWS.map(({ name, trainer, learners }, i) => ({
		name,
		joinCode: randomCode(CODE_CHARACTERS),
		trainer: trainer.email,
		learners: learners.map((learner, j): DemoLearner => {
			const number = `D-${String((i + 1) * 100 + j + 1)}`;
			return { name: learner, number, pin: newPin(number) };
		})
	}));
	// Hashing takes its time, and is done before the transaction.
	const hashes = new Map<string, string>();
	for (const one of staff) hashes.set(one.email, await hashSecret('password', one.password));
	for (const one of crews.flatMap((crew) => crew.learners)) hashes.set(one.number, await hashSecret('pin', one.pin));
	const filled = await db.transaction().execute(async (transaction) => {
		if (await hasOrganisation(transaction)) return null;
		return fill(transaction, staff, crews, hashes, demoBegan(now));
	});
	if (filled === null) return null;
	const [practising, trained] = filled;
	if (practising === undefined || trained === undefined) throw new Error('The demo has too few crews');
	const password = staff.find(({ email }) => email === trained.email)?.password ?? '';
	await fillDemoRecords(db, { ...trained, password }, now);
	await fillDemoSet(db, practising.trainer, practising.crew, practising.learners, now);
	return { organisation: NAME, staff, crews: crews.map(({ joinCode, ...crew }) => ({ ...crew, code: grouped(joinCode) })) };
}

const NAME = 'Harrow Bridge Works (invented)';

/** A crew as it was filled. */
interface FilledCrew {
	readonly crew: string;
	readonly trainer: Person;
	/** Of the trainer. */
	readonly email: string;
	/** Ids, in the order of the list. */
	readonly learners: readonly string[];
}

async function fill(
	db: Database,
	staff: readonly DemoStaff[],
	crews: readonly { readonly name: string; readonly joinCode: string; readonly trainer: string; readonly learners: readonly DemoLearner[] }[],
	hashes: ReadonlyMap<string, string>,
	now: Date
): Promise<readonly FilledCrew[]> {
	const at = now.toISOString();
	const organisation = randomUUID();
	const passRule = PASS_RULES[0]?.id ?? '';
	await insertOrganisation(db, { id: organisation, name: NAME, rules: 'us-construction', units: 'metric', language: 'en', zone: 'UTC', pass_rule: passRule, created_at: at });
	await note(db, { kind: 'organisation-set-up', organisation, actor: null, subject: organisation, detail: { demo: true } }, now);
	const people = staff.map(({ role, name, email }) => ({ role, name, email, secret: hashOf(hashes, email) }));
	const entered = await enterPeople(db, organisation, people, null, now);
	const ids = new Map(staff.map(({ email }, i) => [email, entered[i] ?? '']));
	const filled: FilledCrew[] = [];
	for (const crew of crews) {
		const id = randomUUID();
		await addCrew(db, { id, organisation, name: crew.name, joinCode: crew.joinCode, now: at });
		await addTrainer(db, id, ids.get(crew.trainer) ?? '', at);
		const newcomers = crew.learners.map(({ name, number }) => ({ role: 'learner' as const, name, personalNumber: number, secret: hashOf(hashes, number) }));
		const learners = await enterPeople(db, organisation, newcomers, null, now);
		for (const person of learners) await putOnList(db, id, person, at);
		const trainer = await findStaffByEmail(db, crew.trainer);
		if (trainer === null) throw new Error('A crew of the demo has no trainer');
		const { id: person, name, answerer_id: answerer } = trainer;
		filled.push({ crew: id, email: crew.trainer, learners, trainer: { kind: 'person', id: person, organisation, role: 'trainer', name, answerer, language: null } });
	}
	return filled;
}

function hashOf(hashes: ReadonlyMap<string, string>, key: string): string {
	const hash = hashes.get(key);
	if (hash === undefined) throw new Error(`No secret was made for ${key}`);
	return hash;
}
