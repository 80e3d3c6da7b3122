/** Entries of a chain, as the program makes them, for tests that need some of them. */
import { randomUUID } from 'node:crypto';
import { COURSE, LESSON_IDS } from '#lib/course/index.ts';
import { HANDS_ON_CHECKS, canonicalJson, type EntryOf } from '#lib/records/index.ts';
import { sha256 } from '#lib/server/records/chain.ts';

const EMPLOYER = randomUUID();
/** No digest of anything. */
const DIGEST = 'd'.repeat(64);

/** A passed final check. @param day local day of it, in UTC */
export function completedEntry(person: string, day: string, more: Partial<EntryOf<'completed'>> = {}): EntryOf<'completed'> {
	return {
		kind: 'completed',
		at: `${day}T10:00:00.000Z`,
		by: person,
		person,
		id: randomUUID(),
		employer: { id: EMPLOYER, name: 'Harrow Bridges' },
		course: { id: COURSE.id, version: COURSE.version, scope: COURSE.scope, notCovered: [...COURSE.notCovered], lessons: [...LESSON_IDS] },
		rules: 'us-construction',
		practice: 'us-two-foot',
		language: 'en',
		languageState: 'original',
		startedAt: `${day}T09:30:00.000Z`,
		endedAt: `${day}T10:00:00.000Z`,
		zone: 'UTC',
		day,
		check: randomUUID(),
		digest: DIGEST,
		tries: 1,
		asked: 16,
		right: 16,
		unsafe: 0,
		passRule: { id: 'staged', version: 1, provisional: true, rates: [{ right: 0.95, firstTry: 0.9, allowedTries: 0.99 }] },
		supervised: null,
		basis: 'own-training',
		validity: { months: null, by: 'nothing-fixed', until: null },
		...more
	};
}

/** A sign-off of the hands-on part. @param named the commitment to the signer's name */
export function handsOnEntry(person: string, day: string, { signer = randomUUID(), named = DIGEST }: { readonly signer?: string; readonly named?: string } = {}): EntryOf<'hands-on'> {
	const at = `${day}T11:00:00.000Z`;
	const record: EntryOf<'hands-on'>['record'] = {
		kind: 'hands-on',
		version: 1,
		id: randomUUID(),
		organisation: EMPLOYER,
		person,
		scope: COURSE.scope,
		checks: [...HANDS_ON_CHECKS],
		place: 'Training yard, bay 2',
		day,
		theory: null
	};
	return {
		kind: 'hands-on',
		at,
		by: signer,
		person,
		record,
		signature: { record: sha256(canonicalJson(record)), signer, named, capacity: 'competent-person', meaning: 'I saw it.', language: 'en', at }
	};
}

/** Training from before, that the employer judged adequate. */
export function priorTrainingEntry(person: string, judgedDay: string, validUntil: string | null = null): EntryOf<'prior-training'> {
	const at = `${judgedDay}T11:00:00.000Z`;
	const signer = randomUUID();
	const record: EntryOf<'prior-training'>['record'] = {
		kind: 'prior-training',
		version: 1,
		id: randomUUID(),
		organisation: EMPLOYER,
		person,
		scope: COURSE.scope,
		training: 'Two days with the union, harness and lanyard',
		trainedDay: null,
		judgedDay,
		document: null,
		validUntil
	};
	return {
		kind: 'prior-training',
		at,
		by: signer,
		person,
		record,
		signature: { record: sha256(canonicalJson(record)), signer, named: DIGEST, capacity: 'employer', meaning: 'I judged it.', language: 'en', at }
	};
}

/** An order of retraining. */
export function orderEntry(person: string, day: string, due: string, reason: EntryOf<'retraining-ordered'>['reason'] = 'yearly-review'): EntryOf<'retraining-ordered'> {
	return { kind: 'retraining-ordered', at: `${day}T08:00:00.000Z`, by: randomUUID(), person, id: randomUUID(), reason, day, due };
}
