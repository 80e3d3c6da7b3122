import { createHash, randomUUID } from 'node:crypto';
import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import {
	database,
	dayIn,
	findPerson,
	findPersonRecord,
	priorMonths,
	priorToSign,
	settingsOf,
	signPrior,
	tidy,
	typedIn,
	type FieldProblems,
	type PriorEntry,
	type PriorToSign
} from '#lib/server/index.ts';
import { employerOf } from '../../../asking.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

/** The largest document, bytes. @reason with the rest of the form it stays below the next bound */
const LARGEST_DOCUMENT = 400 * 1024;
/** The largest form, bytes. @reason the server reads no request of more than 512 kB, and would say so on a page of its own */
const LARGEST_FORM = 500 * 1024;
/** Characters. @reason a few sentences; the chain keeps them for good */
const LONGEST_TRAINING = 1000;
/** Characters of a provider or programme. @reason a name and a number */
const LONGEST_NAME = 200;

const DAY = z.iso.date({ error: 'no-day' });
const noneOr = (schema: z.ZodType<string>) => z.union([z.literal('').transform(() => null), schema]);

const NAME_OR_NONE = z
	.string()
	.transform(tidy)
	.pipe(z.string().max(LONGEST_NAME, { error: 'too-long' }))
	.transform((name) => (name === '' ? null : name));

/** What an employer enters; the messages are keys of the catalogue. */
const ENTRY = z.object({
	id: z.uuid({ error: 'changed' }),
	training: z.string().transform(tidy).pipe(z.string().min(1, { error: 'missing' }).max(LONGEST_TRAINING, { error: 'too-long' })),
	provider: NAME_OR_NONE,
	programme: NAME_OR_NONE,
	trainedDay: noneOr(DAY),
	judgedDay: DAY,
	validUntil: noneOr(DAY),
	document: noneOr(z.string().regex(/^[0-9a-f]{64}$/, { error: 'changed' }))
});

const FIELDS = ['id', 'training', 'provider', 'programme', 'trainedDay', 'judgedDay', 'validUntil', 'document'] as const;

/** The learner of the organisation. @throws the error of a page that is not there */
async function found({ locals, params }: Pick<RequestEvent, 'locals' | 'params'>) {
	const who = employerOf(locals.who);
	const db = await database();
	const person = await findPerson(db, who.organisation, params.person);
	if (person?.role !== 'learner') error(404, 'Not Found');
	return { who, db, person };
}

/** The person, an empty form, and for how long such training may count. */
export const load: PageServerLoad = async ({ locals, params, url }) => {
	const { who, db, person } = await found({ locals, params });
	const record = (await findPersonRecord(db, who.organisation, person.id))?.record;
	const { zone } = await settingsOf(db, who.organisation);
	return {
		person: { id: person.id, name: record?.erased === undefined ? person.name : null, number: record?.erased === undefined ? person.personal_number : null },
		/** Left or forgotten: nothing is entered. */
		gone: record?.left !== undefined || record?.erased !== undefined || person.closed_at !== null,
		today: dayIn(zone, new Date()),
		months: await priorMonths(db, who.organisation),
		/** The record that this form becomes: sent twice, it is signed once. */
		id: randomUUID(),
		signer: who.name,
		did: url.searchParams.get('did') === 'signed'
	};
};

/** What the page shows after a form was sent. */
interface Told {
	readonly typed: Readonly<Record<string, string>>;
	readonly problems: FieldProblems;
	readonly wait: number | null;
	readonly gone: boolean;
	/** What is about to be signed; null while the form is not in order. */
	readonly toSign: (Pick<PriorToSign, 'hash' | 'shown' | 'meaning'> & { readonly entry: PriorEntry }) | null;
}

/** @returns what was sent under a name; empty for a file or nothing. */
function textIn(form: FormData, name: string): string {
	const value = form.get(name);
	return typeof value === 'string' ? value : '';
}

/** What was sent of a document: its hash, the one that was taken before, or that it is too large. */
async function documentOf(form: FormData, before: string): Promise<{ readonly kind: 'hash'; readonly hash: string } | { readonly kind: 'large' }> {
	const file = form.get('file');
	if (!(file instanceof File) || file.size === 0) return { kind: 'hash', hash: before };
	if (file.size > LARGEST_DOCUMENT) return { kind: 'large' };
	return { kind: 'hash', hash: createHash('sha256').update(new Uint8Array(await file.arrayBuffer())).digest('hex') };
}

/** Reads the form and builds what would be signed. */
async function readForm(event: RequestEvent) {
	const { who, db, person } = await found(event);
	const now = new Date();
	const large: Told = { typed: { id: randomUUID() }, problems: { file: 'document-large' }, wait: null, gone: false, toSign: null };
	if (Number(event.request.headers.get('content-length') ?? 0) > LARGEST_FORM) return { kind: 'refused', told: large } as const;
	const form = await event.request.formData();
	const sent: Readonly<Record<string, string>> = { ...typedIn(form, FIELDS), training: textIn(form, 'training').slice(0, LONGEST_TRAINING * 4) };
	const document = await documentOf(form, sent['document'] ?? '');
	const told: Told = { typed: { ...sent, document: document.kind === 'hash' ? document.hash : '' }, problems: {}, wait: null, gone: false, toSign: null };
	const refused = (more: Partial<Told>) => ({ kind: 'refused', told: { ...told, ...more } }) as const;
	const read = ENTRY.safeParse(told.typed);
	const problems: Record<string, string> = document.kind === 'large' ? { file: 'document-large' } : {};
	if (!read.success) for (const issue of read.error.issues) problems[String(issue.path[0] ?? '')] ??= issue.message;
	if (!read.success || document.kind === 'large') return refused({ problems });
	const entry: PriorEntry = read.data;
	const built = await priorToSign(db, who, person.id, entry, event.locals.language, now);
	switch (built.kind) {
		case 'not-found':
			return error(404, 'Not Found');
		case 'gone':
			return refused({ gone: true });
		case 'fault':
			return refused({ problems: { [built.field]: built.fault } });
		case 'to-sign': {
			const { hash, shown, meaning } = built;
			const ready: Told = { ...told, toSign: { hash, shown, meaning, entry } };
			return { kind: 'read', who, db, now, form, entry, person, told: ready } as const;
		}
	}
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
		const { db, who, form, entry, told, now, person } = read;
		const given = { entry, shown: textIn(form, 'shown'), password: textIn(form, 'password').slice(0, 1024), language: event.locals.language };
		const refused = (more: Partial<Told>): Told => ({ ...told, ...more });
		const signing = await signPrior(db, who, person.id, given, event.getClientAddress(), now);
		switch (signing.kind) {
			case 'signed':
				redirect(303, `/records/person/${person.id}/prior?did=signed`);
				break;
			case 'not-found':
				error(404, 'Not Found');
				break;
			case 'gone':
				return fail(400, refused({ gone: true, toSign: null }));
			case 'fault':
				return fail(400, refused({ problems: { [signing.field]: signing.fault }, toSign: null }));
			case 'wait':
				return fail(429, refused({ wait: signing.retryAfter }));
			case 'changed':
			case 'wrong-password':
			case 'locked':
				return fail(400, refused({ problems: { password: signing.kind } }));
		}
	}
};
