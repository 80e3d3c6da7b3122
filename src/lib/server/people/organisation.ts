import { randomUUID } from 'node:crypto';
import type { Database } from '../db/open.ts';
import { useEnrolment, voidEnrolments } from '../db/enrolments.ts';
import {
	findOrganisation,
	findStaffByEmail,
	hasOrganisation,
	insertOrganisation,
	isUniqueViolation,
	updateOrganisation,
	type OrganisationRow
} from '../db/people.ts';
import { enterPeople } from '../records/names.ts';
import { note } from './audit.ts';
import { codeHash, makeCode } from './code.ts';
import { hashSecret } from './secret.ts';
import { addressKey, mayTry, noteSuccess } from './throttle.ts';
import type { Person } from './who.ts';

/** What an organisation chooses. */
export interface Settings {
	readonly name: string;
	/** Id of a rule table. */
	readonly rules: string;
	readonly units: 'metric' | 'us';
	readonly language: 'en' | 'es';
	/** IANA zone. */
	readonly zone: string;
	/** Id of a pass rule. */
	readonly passRule: string;
}

/** An organisation and its first employer, as the set-up page sends them. */
export interface SetUp {
	readonly code: string;
	readonly settings: Settings;
	readonly person: { readonly name: string; readonly email: string; readonly password: string };
}

/** What came of a one-use code. */
export type Enrolled =
	| { readonly kind: 'enrolled'; readonly person: string }
	/** `code`: there is no such open code; `email`: the e-mail is taken; `wait`: too many tries from there. */
	| { readonly kind: 'refused'; readonly why: 'code' | 'email' }
	| { readonly kind: 'refused'; readonly why: 'wait'; readonly retryAfter: number };

/**
 * The code by which the first organisation is set up, made when there is none yet.
 * @returns the code, to be shown on the server's console; null when an organisation is there
 */
export async function firstSetUpCode(db: Database, now: Date): Promise<string | null> {
	return (await hasOrganisation(db)) ? null : makeCode(db, 'set-up', null, now);
}

/** A code by which a further organisation is set up. */
export async function furtherSetUpCode(db: Database, now: Date): Promise<string> {
	return makeCode(db, 'set-up', null, now);
}

/** What the page of the settings changes: the pass rule has a page of its own. */
export type ChangedSettings = Omit<Settings, 'passRule'>;

function rowOf(settings: ChangedSettings): Omit<OrganisationRow, 'id' | 'created_at' | 'pass_rule'> {
	const { name, rules, units, language, zone } = settings;
	return { name, rules, units, language, zone };
}

/** Thrown to roll a transaction back with what it came to. */
class Refused extends Error {
	readonly why: 'code' | 'email';
	constructor(why: 'code' | 'email') {
		super(why);
		this.why = why;
	}
}

/**
 * Makes an organisation with its first employer, and uses the code up: all or nothing. With the first organisation
 * every other open set-up code ends, for each start of the server had made one.
 * @param address of the visitor
 */
export async function setUpOrganisation(db: Database, given: SetUp, address: string, now: Date): Promise<Enrolled> {
	const keys = [addressKey(address)];
	const may = await mayTry(db, keys, now);
	if (may.kind !== 'may') return { kind: 'refused', why: 'wait', retryAfter: may.kind === 'wait' ? may.retryAfter : 1 };
	const secret = await hashSecret('password', given.person.password);
	const at = now.toISOString();
	try {
		const person = await db.transaction().execute(async (transaction) => {
			if ((await useEnrolment(transaction, 'set-up', codeHash(given.code), at)) === null) throw new Refused('code');
			if ((await findStaffByEmail(transaction, given.person.email)) !== null) throw new Refused('email');
			if (!(await hasOrganisation(transaction))) await voidEnrolments(transaction, 'set-up', null, at);
			const organisation = randomUUID();
			await insertOrganisation(transaction, { id: organisation, ...rowOf(given.settings), pass_rule: given.settings.passRule, created_at: at });
			const { name, email } = given.person;
			const [employer] = await enterPeople(transaction, organisation, [{ role: 'employer', name, email, secret }], null, now);
			if (employer === undefined) throw new Error('An organisation without an employer');
			await note(transaction, { kind: 'organisation-set-up', organisation, actor: employer, subject: organisation }, now);
			return employer;
		});
		await noteSuccess(db, keys);
		return { kind: 'enrolled', person };
	} catch (error) {
		if (error instanceof Refused) return { kind: 'refused', why: error.why };
		if (isUniqueViolation(error)) return { kind: 'refused', why: 'email' };
		throw error;
	}
}

/** What a person's organisation has chosen. @throws Error when the organisation is gone */
export async function settingsOf(db: Database, organisation: string): Promise<Settings> {
	const row = await findOrganisation(db, organisation);
	if (row === null) throw new Error('An organisation of a person is not there');
	return {
		name: row.name,
		rules: row.rules,
		units: row.units === 'us' ? 'us' : 'metric',
		language: row.language === 'es' ? 'es' : 'en',
		zone: row.zone,
		passRule: row.pass_rule
	};
}

/** Changes what the employer's organisation has chosen. */
export async function changeSettings(db: Database, employer: Person, settings: ChangedSettings, now: Date): Promise<void> {
	await db.transaction().execute(async (transaction) => {
		await updateOrganisation(transaction, employer.organisation, rowOf(settings));
		const { rules, units, language, zone } = settings;
		await note(
			transaction,
			{
				kind: 'settings-changed',
				organisation: employer.organisation,
				actor: employer.id,
				subject: employer.organisation,
				detail: { rules, units, language, zone }
			},
			now
		);
	});
}
