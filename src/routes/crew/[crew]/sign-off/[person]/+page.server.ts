import { randomUUID } from 'node:crypto';
import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import { CAPACITIES, HANDS_ON_CHECKS } from '#lib/records/index.ts';
import {
	crewPeople,
	database,
	dayIn,
	field,
	findCrew,
	openOrderOf,
	recordOf,
	settingsOf,
	signedOff,
	signHandsOn,
	theoryOf,
	toSign,
	typedIn,
	type Database,
	type FieldProblems,
	type HandsOnEntry,
	type Person
} from '#lib/server/index.ts';
import { staffOnly } from '../../../staff.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

const DAY = z.iso.date({ error: 'no-day' });

/** What a trainer enters; the messages are keys of the catalogue. */
const ENTRY = z.object({
	id: z.uuid({ error: 'changed' }),
	checks: z.array(z.enum(HANDS_ON_CHECKS)).length(HANDS_ON_CHECKS.length, { error: 'all-checks' }),
	place: field.place,
	day: DAY,
	capacity: z.enum(CAPACITIES, { error: 'no-capacity' })
});

async function findPerson(db: Database, who: Person, crew: string, person: string, now: Date) {
	if ((await findCrew(db, who, crew)) === null) error(404, 'Not Found');
	const found = (await crewPeople(db, who, crew, now)).find((one) => one.id === person);
	if (found === undefined) error(404, 'Not Found');
	return found;
}

/** The person, the theory passed, what was signed before, and an empty form. */
export const load: PageServerLoad = async ({ locals, params, url }) => {
	const who = staffOnly(locals.who);
	const db = await database();
	const now = new Date();
	const person = await findPerson(db, who, params.crew, params.person, now);
	const { zone } = await settingsOf(db, who.organisation);
	const kept = await recordOf(db, person.id);
	const today = dayIn(zone, now);
	return {
		crew: params.crew,
		person: { id: person.id, name: person.name, number: person.number },
		theory: theoryOf(kept),
		/** Until when retraining is to be done, where it is ordered. */
		due: openOrderOf(kept, today)?.due ?? null,
		before: (await signedOff(db, who.organisation, [person.id])).map(({ id, record, signature, signer, revoked, whole }) => ({
			id,
			day: record.day,
			place: record.place,
			name: signer,
			capacity: signature.capacity,
			revoked,
			whole
		})),
		today,
		/** The record that this form becomes: sent twice, it is signed once. */
		id: randomUUID(),
		signer: who.name,
		did: url.searchParams.get('did') === 'signed'
	};
};

/** What the page shows after a form was sent. */
interface Told {
	readonly typed: Readonly<Record<string, string>>;
	readonly ticked: readonly string[];
	readonly problems: FieldProblems;
	readonly wait: number | null;
	/** What is about to be signed; null while the form is not in order. */
	readonly toSign: { readonly hash: string; readonly shown: string; readonly meaning: string; readonly entry: HandsOnEntry } | null;
}

/** Reads the form and builds what would be signed. */
async function readForm({ request, locals, params }: RequestEvent) {
	const who = staffOnly(locals.who);
	const db = await database();
	const now = new Date();
	await findPerson(db, who, params.crew, params.person, now);
	const form = await request.formData();
	const told: Told = { typed: typedIn(form, ['id', 'place', 'day', 'capacity']), ticked: form.getAll('check').map(String), problems: {}, wait: null, toSign: null };
	const read = ENTRY.safeParse({ ...told.typed, checks: HANDS_ON_CHECKS.filter((one) => told.ticked.includes(one)) });
	if (!read.success) {
		const problems: Record<string, string> = {};
		for (const issue of read.error.issues) problems[String(issue.path[0] ?? '')] ??= issue.message;
		const refused: Told = { ...told, problems };
		return { kind: 'refused', told: refused } as const;
	}
	const entry: HandsOnEntry = read.data;
	const built = await toSign(db, who, params.crew, params.person, entry, locals.language, now);
	if (built.kind === 'not-found') error(404, 'Not Found');
	const refused: Told = { ...told, problems: { day: 'day-to-come' } };
	if (built.kind === 'day-to-come') return { kind: 'refused', told: refused } as const;
	const { hash, meaning, record } = built;
	const shown: Told = { ...told, toSign: { hash, shown: built.shown, meaning, entry: { ...entry, id: record.id } } };
	return { kind: 'read', who, db, now, form, entry, told: shown } as const;
}

export const actions: Actions = {
	/** Shows what would be signed, or the form again to change it; nothing is stored. */
	async read(event) {
		const read = await readForm(event);
		if (read.kind === 'refused') return fail(400, read.told);
		const back: Told = { ...read.told, toSign: null };
		return read.form.has('change') ? back : read.told;
	},

	async sign(event) {
		const read = await readForm(event);
		if (read.kind === 'refused') return fail(400, read.told);
		const { db, who, form, entry, told, now } = read;
		const { params, locals } = event;
		const shown = String(form.get('shown') ?? '');
		const password = String(form.get('password') ?? '').slice(0, 1024);
		const refused = (more: Partial<Told>): Told => ({ ...told, ...more });
		const signing = await signHandsOn(db, who, params.crew, params.person, { entry, shown, password, language: locals.language }, event.getClientAddress(), now);
		switch (signing.kind) {
			case 'signed':
				redirect(303, `/crew/${params.crew}/sign-off/${params.person}?did=signed`);
				break;
			case 'not-found':
				error(404, 'Not Found');
				break;
			case 'wait':
				return fail(429, refused({ wait: signing.retryAfter }));
			case 'day-to-come':
				return fail(400, refused({ problems: { day: signing.kind }, toSign: null }));
			case 'changed':
			case 'wrong-password':
			case 'locked':
				return fail(400, refused({ problems: { password: signing.kind } }));
		}
	}
};
