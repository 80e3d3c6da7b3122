import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import { database, field, findPerson, forgetName, FORGETTING_REASONS, isMeant, mayForget, readForm, typedIn, type Person } from '#lib/server/index.ts';
import { employerOf } from '../../../asking.ts';
import type { Actions, PageServerLoad } from './$types';

async function found(employer: Person, id: string) {
	const db = await database();
	const person = await findPerson(db, employer.organisation, id);
	if (person === null) error(404, 'Not Found');
	return { db, person };
}

/** What the address says was done: told on the page that follows. */
const DID = ['forgotten', 'reduced', 'refused'] as const;

export const load: PageServerLoad = async ({ locals, params, url }) => {
	const employer = employerOf(locals.who);
	const { db, person } = await found(employer, params.person);
	const may = await mayForget(db, employer, person.id, new Date());
	if (may === null) error(404, 'Not Found');
	return { person: { id: person.id, name: person.name, number: person.personal_number }, may, did: DID.find((one) => one === url.searchParams.get('did')) ?? null };
};

const CONFIRMATION = z.object({
	typed: field.name.or(field.number),
	why: z.enum(FORGETTING_REASONS, { error: 'not-listed' })
});

export const actions: Actions = {
	async forget({ request, locals, params }) {
		const employer = employerOf(locals.who);
		const { db, person } = await found(employer, params.person);
		const form = await request.formData();
		const typed = typedIn(form, ['typed', 'why']);
		const read = readForm(form, CONFIRMATION);
		if (read.kind === 'refused') return fail(400, { problems: read.problems, typed });
		if (!isMeant(person, read.value.typed)) return fail(400, { problems: { typed: 'not-meant' }, typed });
		const did = await forgetName(db, employer, person.id, read.value.why, new Date());
		if (did.kind === 'not-found') error(404, 'Not Found');
		redirect(303, `/records/person/${person.id}/forget?did=${did.kind === 'before' ? 'forgotten' : did.kind}`);
	}
};
