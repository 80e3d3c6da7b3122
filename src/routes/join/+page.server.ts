import { fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import {
	currentGuest,
	database,
	field,
	findOnList,
	forgetGuest,
	hasJoined,
	joinCrew,
	readForm,
	rememberLanguage,
	startOf,
	startSession,
	typedIn,
	type FieldProblems,
	type OnList
} from '#lib/server/index.ts';
import type { Actions, PageServerLoad } from './$types';

/** Who somebody says to be. */
const CLAIM = z.object({ code: field.code, name: field.name, number: field.number });

/** What comes with it at the end; what a PIN must be is checked when it is known whose it will be. */
const WITH_PIN = z.object({ ...CLAIM.shape, pin: field.secret, again: field.secret });

const TYPED = ['code', 'name', 'number'];

/** What the page shows after a form was sent: the step at hand, what was typed, what is wrong. */
interface Told {
	readonly step: 'find' | 'pin' | 'has-pin';
	readonly typed: Readonly<Record<string, string>>;
	readonly problems: FieldProblems;
	readonly notOnList: boolean;
	/** Seconds to wait, where waiting helps. */
	readonly wait: number | null;
}

function told(step: Told['step'], form: FormData, more: Partial<Told> = {}): Told {
	return { step, typed: typedIn(form, TYPED), problems: {}, notOnList: false, wait: null, ...more };
}

/** What is told of somebody who was not found. */
function notFound(found: Exclude<OnList, { kind: 'on-list' | 'has-pin' }>, form: FormData) {
	return found.kind === 'wait' ? fail(429, told('find', form, { wait: found.retryAfter })) : fail(400, told('find', form, { notOnList: true }));
}

export const load: PageServerLoad = async ({ locals, url, cookies }) => {
	if (locals.who.kind === 'person') redirect(303, startOf(locals.who.role));
	const guest = await currentGuest(await database(), cookies, url.protocol === 'https:');
	return { code: (url.searchParams.get('code') ?? '').slice(0, 40), practised: guest !== null };
};

export const actions: Actions = {
	/** Looks for somebody on a crew's list. */
	async find({ request, locals, getClientAddress }) {
		if (locals.who.kind === 'person') redirect(303, startOf(locals.who.role));
		const form = await request.formData();
		const read = readForm(form, CLAIM);
		if (read.kind === 'refused') return fail(400, told('find', form, { problems: read.problems }));
		const found = await findOnList(await database(), read.value, getClientAddress(), new Date());
		if (found.kind === 'on-list') return told('pin', form);
		if (found.kind === 'has-pin') return told('has-pin', form);
		return notFound(found, form);
	},

	/** Sets the PIN, takes along what was practised, and signs in. */
	async join({ request, locals, cookies, url, getClientAddress }) {
		// Sent twice: the first has joined.
		if (locals.who.kind === 'person') redirect(303, startOf(locals.who.role));
		const form = await request.formData();
		const claim = readForm(form, CLAIM);
		if (claim.kind === 'refused') return fail(400, told('find', form, { problems: claim.problems }));
		const read = readForm(form, WITH_PIN);
		if (read.kind === 'refused') return fail(400, told('pin', form, { problems: read.problems }));
		const db = await database();
		const secure = url.protocol === 'https:';
		const now = new Date();
		const { pin, again } = read.value;
		const guest = await currentGuest(db, cookies, secure);
		const joining = await joinCrew(db, { claim: claim.value, pin, again, guest }, getClientAddress(), now);
		switch (joining.kind) {
			case 'joined':
				await startSession(db, cookies, secure, joining.person, now);
				forgetGuest(cookies, secure);
				// Who joins in a language reads it: it stays, on every device, whatever the organisation's is.
				await rememberLanguage(db, joining.person, locals.language);
				redirect(303, startOf('learner'));
				break;
			case 'pin':
				return fail(400, told('pin', form, { problems: { [joining.problem === 'differs' ? 'again' : 'pin']: joining.problem } }));
			case 'has-pin':
				// Sent twice, and the first answer with its cookies got lost: the guest of this browser has joined.
				if (guest !== null && (await hasJoined(db, guest))) forgetGuest(cookies, secure);
				return told('has-pin', form);
			case 'not-on-list':
			case 'wait':
				return notFound(joining, form);
		}
	}
};
