import { error, fail } from '@sveltejs/kit';
import * as z from 'zod';
import {
	closeAccount,
	database,
	emailField,
	field,
	findLearners,
	findPerson,
	inviteStaff,
	listStaff,
	readForm,
	resetPerson,
	typedIn,
	unlockPerson,
	type Person
} from '#lib/server/index.ts';
import { employerOf } from '../asking.ts';
import type { Actions, PageServerLoad } from './$types';

const INVITATION = z.object({ name: field.name, email: emailField, role: z.enum(['trainer', 'employer'], { error: 'not-listed' }) });
const SOMEBODY = z.object({ person: field.id });

export const load: PageServerLoad = async ({ locals, url }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const search = (url.searchParams.get('search') ?? '').trim().slice(0, 100);
	const asked = Number(url.searchParams.get('page') ?? '1');
	return { staff: await listStaff(db, employer), search, learners: await findLearners(db, employer, search, Number.isSafeInteger(asked) ? asked : 1) };
};

/** @returns the id that a form names; where it names none, nothing is found. */
async function personIn(request: Request): Promise<string> {
	const read = readForm(await request.formData(), SOMEBODY);
	if (read.kind === 'refused') error(404, 'Not Found');
	return read.value.person;
}

const NOTHING_WRONG = { problems: {} as Readonly<Record<string, string>>, typed: null };

export const actions: Actions = {
	async invite({ request, locals }) {
		const employer = employerOf(locals.who);
		const form = await request.formData();
		const typed = typedIn(form, ['name', 'email', 'role']);
		const read = readForm(form, INVITATION);
		if (read.kind === 'refused') return fail(400, { done: null, problems: read.problems, typed });
		const code = await inviteStaff(await database(), employer, read.value, new Date());
		if (code === null) return fail(400, { done: null, problems: { email: 'email-taken' }, typed });
		return { done: { kind: 'code' as const, name: read.value.name, code }, ...NOTHING_WRONG };
	},

	async reset({ request, locals }) {
		const employer = employerOf(locals.who);
		const db = await database();
		const id = await personIn(request);
		const reset = await resetPerson(db, employer, id, new Date());
		if (reset.kind === 'not-found') error(404, 'Not Found');
		const name = await nameOf(employer, id);
		return { done: reset.kind === 'code' ? { kind: 'code' as const, name, code: reset.code } : { kind: 'pin' as const, name }, ...NOTHING_WRONG };
	},

	async unlock({ request, locals }) {
		const employer = employerOf(locals.who);
		const id = await personIn(request);
		if (!(await unlockPerson(await database(), employer, id, new Date()))) error(404, 'Not Found');
		return { done: { kind: 'unlocked' as const, name: await nameOf(employer, id) }, ...NOTHING_WRONG };
	},

	async close({ request, locals }) {
		const employer = employerOf(locals.who);
		const id = await personIn(request);
		if (!(await closeAccount(await database(), employer, id, new Date()))) error(404, 'Not Found');
		return { done: { kind: 'closed' as const, name: await nameOf(employer, id) }, ...NOTHING_WRONG };
	}
};

async function nameOf(employer: Person, id: string): Promise<string> {
	return (await findPerson(await database(), employer.organisation, id))?.name ?? '';
}
