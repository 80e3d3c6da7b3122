import { fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import { codeField, database, enrolStaff, newPasswordField, readForm, startOf, startSession, typedIn, type FieldProblems } from '#lib/server/index.ts';
import type { Actions } from './$types';

const FORM = z.object({ code: codeField, password: newPasswordField });

export const actions: Actions = {
	async default({ request, cookies, url, getClientAddress }) {
		const form = await request.formData();
		const typed = typedIn(form, ['code']);
		const refuse = (problems: FieldProblems, wait: number | null = null) => fail(wait === null ? 400 : 429, { problems, typed, wait });
		const read = readForm(form, FORM);
		if (read.kind === 'refused') return refuse(read.problems);
		const db = await database();
		const now = new Date();
		const result = await enrolStaff(db, read.value, getClientAddress(), now);
		if (result.kind === 'refused') {
			return result.why === 'wait' ? refuse({}, result.retryAfter) : refuse({ [result.why]: result.why });
		}
		const { role } = await startSession(db, cookies, url.protocol === 'https:', result.person, now);
		redirect(303, startOf(role));
	}
};
