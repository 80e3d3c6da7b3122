import { error, fail } from '@sveltejs/kit';
import { choosePassRule, database, dayIn, enterReview, listPassRules, makePassRule, readForm, settingsOf, typedIn, type Person } from '#lib/server/index.ts';
import { employerOf } from '../../asking.ts';
import { fieldsOf, readCounts } from './counts.ts';
import { reviewForm } from './review.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = async ({ locals, url }) => ({
	rules: await listPassRules(await database(), employerOf(locals.who)),
	/** Ids of the rules whose form is open. */
	from: url.searchParams.get('from'),
	review: url.searchParams.get('review')
});

/** The rule that a form is about. @throws the error of a page that is not there */
async function listed(employer: Person, form: FormData, name: string) {
	const id = form.get(name);
	const found = (await listPassRules(await database(), employer)).find((one) => one.rule.id === id);
	if (found === undefined) error(404, 'Not Found');
	return found;
}

const NOTHING = { done: null, form: null, rule: null, typed: {} as Readonly<Record<string, string>>, problems: {} as Readonly<Record<string, string>>, lax: null };

export const actions: Actions = {
	async choose({ request, locals }) {
		const employer = employerOf(locals.who);
		const { rule } = await listed(employer, await request.formData(), 'rule');
		if (!(await choosePassRule(await database(), employer, rule.id, new Date()))) error(404, 'Not Found');
		return { ...NOTHING, done: 'chosen' as const };
	},

	async make({ request, locals }) {
		const employer = employerOf(locals.who);
		const form = await request.formData();
		const { rule } = await listed(employer, form, 'from');
		const refused = { ...NOTHING, form: 'make' as const, rule: rule.id, typed: typedIn(form, Object.keys(fieldsOf(rule))) };
		const read = readCounts(form, rule);
		if (read.kind === 'refused') return fail(400, { ...refused, problems: read.problems });
		const making = await makePassRule(await database(), employer, rule.id, read.counts, new Date());
		switch (making.kind) {
			case 'made':
				return { ...NOTHING, done: 'made' as const };
			case 'not-found':
				return error(404, 'Not Found');
			case 'refused':
				return fail(400, { ...refused, problems: making.problems });
			case 'lax': {
				const { rate, most, remedies } = making;
				return fail(400, { ...refused, lax: { rate, most, remedies } });
			}
		}
	},

	async review({ request, locals }) {
		const employer = employerOf(locals.who);
		const db = await database();
		const form = await request.formData();
		const { rule } = await listed(employer, form, 'rule');
		const now = new Date();
		const { zone } = await settingsOf(db, employer.organisation);
		const refused = { ...NOTHING, form: 'review' as const, rule: rule.id, typed: typedIn(form, ['date', 'judges', 'document']) };
		const read = readForm(form, reviewForm(dayIn(zone, now)));
		if (read.kind === 'refused') return fail(400, { ...refused, problems: read.problems });
		const { version, date, judges, document } = read.value;
		if (!(await enterReview(db, employer, { id: rule.id, version }, { date, judges, document }, now))) {
			return fail(409, { ...refused, problems: { '': 'changed-meanwhile' } });
		}
		return { ...NOTHING, done: 'reviewed' as const };
	}
};
