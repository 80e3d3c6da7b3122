import { error, fail } from '@sveltejs/kit';
import * as z from 'zod';
import { checkName, database, field, publicRecord, readForm, typedIn } from '#lib/server/index.ts';
import { PRIVATE_PAGE } from '../private.ts';
import type { Actions, PageServerLoad } from './$types';

/** What a stranger may see, and nothing else. */
export const load: PageServerLoad = async ({ params, setHeaders }) => {
	setHeaders(PRIVATE_PAGE);
	const shown = await publicRecord(await database(), params.code, new Date());
	if (shown === null) error(404, 'Not Found');
	return { shown };
};

const NAME = z.object({ name: field.name });

export const actions: Actions = {
	/** Says whether a name fits; it is not stored. */
	async name({ request, params, getClientAddress }) {
		const form = await request.formData();
		const typed = typedIn(form, ['name']);
		const read = readForm(form, NAME);
		if (read.kind === 'refused') return fail(400, { typed, problem: read.problems['name'] ?? null, told: null, wait: null });
		const checked = await checkName(await database(), params.code, read.value.name, getClientAddress(), new Date());
		if (checked.kind === 'unknown') error(404, 'Not Found');
		if (checked.kind === 'wait') return fail(429, { typed, problem: null, told: checked.kind, wait: checked.retryAfter });
		return { typed, problem: null, told: checked.kind, wait: null };
	}
};
