import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import { database, field, grouped, listCrews, makeCrew, readForm, typedIn } from '#lib/server/index.ts';
import { staffOnly } from './staff.ts';
import type { Actions, PageServerLoad } from './$types';

const FORM = z.object({ name: field.name });

/** The crews that this person may see. */
export const load: PageServerLoad = async ({ locals }) => {
	const who = staffOnly(locals.who);
	const crews = await listCrews(await database(), who);
	return {
		employer: who.role === 'employer',
		crews: crews.map(({ id, name, joinCode, archivedAt, learners, trainers }) => ({
			id,
			name,
			code: grouped(joinCode),
			putAway: archivedAt !== null,
			learners,
			trainers
		}))
	};
};

export const actions: Actions = {
	async make({ request, locals }) {
		const who = staffOnly(locals.who);
		const form = await request.formData();
		const read = readForm(form, FORM);
		if (read.kind === 'refused') return fail(400, { problems: read.problems, typed: typedIn(form, ['name']) });
		const id = await makeCrew(await database(), who, read.value.name, new Date());
		if (id === null) error(404, 'Not Found');
		redirect(303, `/crew/${id}?did=made`);
	}
};
