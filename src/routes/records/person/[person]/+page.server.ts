import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import { RETRAINING_REASONS, REVOCATION_REASONS } from '#lib/records/index.ts';
import {
	acknowledgeForEmployer,
	database,
	field,
	markLeft,
	markReturned,
	orderRetraining,
	personPage,
	readForm,
	reinstateRecord,
	revokeRecord,
	typedIn,
	withdrawRetraining,
	type FieldProblems
} from '#lib/server/index.ts';
import { employerOf } from '../../asking.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

const ORDER = z.object({ reason: z.enum(RETRAINING_REASONS, { error: 'no-reason' }), due: z.iso.date({ error: 'no-due' }) });
const REVOCATION = z.object({ record: field.id, reason: z.enum(REVOCATION_REASONS, { error: 'no-reason' }) });
const ONE_RECORD = z.object({ record: field.id });
const ONE_ORDER = z.object({ order: field.id });
const LEAVING = z.object({ day: z.iso.date({ error: 'no-day' }) });

/** What was done, as the address says it after the deed. */
const DEEDS = ['order', 'withdraw', 'revoke', 'reinstate', 'acknowledge', 'leave', 'return'] as const;
type Deed = (typeof DEEDS)[number];

export const load: PageServerLoad = async ({ locals, params, url }) => {
	const page = await personPage(await database(), employerOf(locals.who), params.person, new Date());
	if (page === null) error(404, 'Not Found');
	return { page, did: DEEDS.find((one) => one === url.searchParams.get('did')) ?? null };
};

/** Back to the page, which says what was done: to load it again does nothing again. */
function done(event: RequestEvent, deed: Deed): never {
	redirect(303, `/records/person/${event.params.person}?did=${deed}`);
}

/** A form that was not taken: which one, about what, what is wrong with which field, and what was typed. */
function refused(form: Deed, about: string, problems: FieldProblems, typed: Readonly<Record<string, string>>) {
	return fail(400, { form, about, problems, typed });
}

/** What every form needs. */
async function asked(event: RequestEvent) {
	return { employer: employerOf(event.locals.who), db: await database(), person: event.params.person, form: await event.request.formData(), now: new Date() };
}

function unlessFound(kind: string): void {
	if (kind === 'not-found') error(404, 'Not Found');
}

export const actions: Actions = {
	async order(event) {
		const { employer, db, person, form, now } = await asked(event);
		const typed = typedIn(form, ['reason', 'due']);
		const read = readForm(form, ORDER);
		// Whose person it is, is asked before anything is said of the form.
		if ((await personPage(db, employer, person, now)) === null) error(404, 'Not Found');
		if (read.kind === 'refused') return refused('order', '', read.problems, typed);
		const ordering = await orderRetraining(db, employer, { people: [person] }, read.value, now);
		unlessFound(ordering.kind);
		if (ordering.kind === 'due-past' || ordering.kind === 'due-far') return refused('order', '', { due: ordering.kind }, typed);
		return done(event, 'order');
	},

	async withdraw(event) {
		const { employer, db, person, form, now } = await asked(event);
		const read = readForm(form, ONE_ORDER);
		if (read.kind === 'refused') error(404, 'Not Found');
		unlessFound((await withdrawRetraining(db, employer, person, read.value.order, now)).kind);
		return done(event, 'withdraw');
	},

	async revoke(event) {
		const { employer, db, person, form, now } = await asked(event);
		const typed = typedIn(form, ['record', 'reason']);
		const read = readForm(form, REVOCATION);
		if (read.kind === 'refused') {
			if ((await personPage(db, employer, person, now)) === null || read.problems['record'] !== undefined) error(404, 'Not Found');
			return refused('revoke', typed['record'] ?? '', read.problems, typed);
		}
		unlessFound((await revokeRecord(db, employer, person, read.value.record, read.value.reason, now)).kind);
		return done(event, 'revoke');
	},

	async reinstate(event) {
		const { employer, db, person, form, now } = await asked(event);
		const read = readForm(form, ONE_RECORD);
		if (read.kind === 'refused') error(404, 'Not Found');
		unlessFound((await reinstateRecord(db, employer, person, read.value.record, now)).kind);
		return done(event, 'reinstate');
	},

	async acknowledge(event) {
		const { employer, db, person, form, now } = await asked(event);
		const read = readForm(form, ONE_RECORD);
		if (read.kind === 'refused') error(404, 'Not Found');
		unlessFound((await acknowledgeForEmployer(db, employer, person, read.value.record, event.locals.language, now)).kind);
		return done(event, 'acknowledge');
	},

	async leave(event) {
		const { employer, db, person, form, now } = await asked(event);
		const typed = typedIn(form, ['day']);
		if ((await personPage(db, employer, person, now)) === null) error(404, 'Not Found');
		const read = readForm(form, LEAVING);
		if (read.kind === 'refused') return refused('leave', '', read.problems, typed);
		const leaving = await markLeft(db, employer, person, read.value.day, now);
		unlessFound(leaving.kind);
		if (leaving.kind === 'no-day') return refused('leave', '', { day: 'no-day' }, typed);
		return done(event, 'leave');
	},

	async return(event) {
		const { employer, db, person, now } = await asked(event);
		if ((await personPage(db, employer, person, now)) === null) error(404, 'Not Found');
		const returning = await markReturned(db, employer, person, now);
		unlessFound(returning.kind);
		if (returning.kind === 'erased') return refused('return', '', { day: 'erased' }, {});
		return done(event, 'return');
	}
};
