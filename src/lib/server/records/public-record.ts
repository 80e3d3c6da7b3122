/** What a stranger may see of a certificate: the least that says whether it holds. */
import { NO_END, lastDayOf, nameAt, standingOf, type PersonRecord, type Standing, type TrainingRecord } from '#lib/records/index.ts';
import { dayIn } from '../course/day.ts';
import { certificateByCode } from '../db/certificates.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import { identitiesOf } from '../db/records.ts';
import { sameName } from '../people/fields.ts';
import { mayTry, nameKeys, noteSuccess } from '../people/throttle.ts';
import { recordOf } from './found.ts';

/** All of it. Nothing else leaves the server. */
export interface PublicRecord {
	readonly standing: Standing;
	/** Id of the course; null for prior training, whose words are in `training`. */
	readonly course: string | null;
	readonly training: string | null;
	readonly scope: string;
	/** Day of completion, or on which prior training was judged adequate. */
	readonly day: string;
	/** Last day; null for no fixed end. */
	readonly until: string | null;
	/** Since when it is revoked. */
	readonly revokedOn: string | null;
	readonly employer: string;
	/** Null where the name is forgotten. */
	readonly initials: string | null;
}

/** What a code leads to, with what does not leave the server. */
interface Found {
	readonly shown: PublicRecord;
	/** The names under which the person is known. */
	readonly names: readonly string[];
}

/** A code as it is made: 128 bits, base64url. */
const CODE = /^[\w-]{22}$/;
/** Asked for where a code is none, so that an unknown one takes as long as one that is known. */
const NOBODY = '00000000-0000-4000-8000-000000000000';

/** @returns a typed code as it was made: without the spaces of its groups, or out of a whole address; null for what is none. */
export function readCertificateCode(typed: string): string | null {
	const code = typed.replace(/\s+/g, '').replace(/^https?:\/\/[^/]+\/v\//, '');
	return CODE.test(code) ? code : null;
}

/** @returns the first letters of a name: "W. A."; of scripts without capitals too. */
export function initialsOf(name: string): string {
	const words = name.split(/[\s.-]+/u).filter((word) => /\p{L}/u.test(word));
	return words.map((word) => `${/\p{L}\p{M}*/u.exec(word)?.[0].toUpperCase() ?? ''}.`).join(' ');
}

async function find(db: Database, code: string, now: Date): Promise<Found | null> {
	const row = await certificateByCode(db, code);
	const organisation = await findOrganisation(db, row?.organisation_id ?? NOBODY);
	const person = await recordOf(db, row?.person_id ?? NOBODY);
	const training = person.trainings.find((one) => one.id === row?.record_id);
	const held = [person.named, training === undefined ? undefined : nameAt(person, training.seq)].flatMap((one) => one ?? []);
	const identities = await identitiesOf(db, row?.organisation_id ?? NOBODY, held.length === 0 ? [NOBODY] : [...new Set(held)]);
	if (organisation === null || training === undefined) return null;
	const names = held.flatMap((one) => identities.get(one)?.name ?? []);
	return { names, shown: shownOf(person, training, organisation, names[0] ?? null, now) };
}

function shownOf(person: PersonRecord, training: TrainingRecord, organisation: { readonly name: string; readonly zone: string }, name: string | null, now: Date): PublicRecord {
	const { entry, revoked } = training;
	const until = lastDayOf(person, training);
	const common = {
		standing: standingOf(person, training, dayIn(organisation.zone, now)),
		until: until === NO_END ? null : until,
		revokedOn: revoked === undefined ? null : dayIn(organisation.zone, new Date(revoked.entry.at)),
		initials: name === null ? null : initialsOf(name)
	};
	if (entry.kind === 'completed') return { ...common, course: entry.course.id, training: null, scope: entry.course.scope, day: entry.day, employer: entry.employer.name };
	return { ...common, course: null, training: entry.record.training, scope: entry.record.scope, day: entry.record.judgedDay, employer: organisation.name };
}

/** @returns what a stranger may see; null for a code that leads nowhere. */
export async function publicRecord(db: Database, code: string, now: Date): Promise<PublicRecord | null> {
	return (await find(db, code, now))?.shown ?? null;
}

/** What came of comparing a name. */
export type NameCheck =
	| { readonly kind: 'fits' | 'differs'; readonly shown: PublicRecord }
	/** Too many names were tried. @property retryAfter seconds; null for much later */
	| { readonly kind: 'wait'; readonly retryAfter: number | null; readonly shown: PublicRecord }
	| { readonly kind: 'unknown' };

/**
 * Whether a name is that of a certificate's person: capitals, accents and the order of the words do not count. Few names
 * can be tried from one address.
 */
export async function checkName(db: Database, code: string, name: string, address: string, now: Date): Promise<NameCheck> {
	const found = await find(db, code, now);
	if (found === null) return { kind: 'unknown' };
	const keys = nameKeys(code, address);
	const may = await mayTry(db, keys, now);
	if (may.kind !== 'may') return { kind: 'wait', retryAfter: may.kind === 'wait' ? may.retryAfter : null, shown: found.shown };
	if (!found.names.some((one) => sameName(one, name))) return { kind: 'differs', shown: found.shown };
	await noteSuccess(db, keys);
	return { kind: 'fits', shown: found.shown };
}
