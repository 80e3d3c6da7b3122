import { fail } from '@sveltejs/kit';
import { recordLaw } from '#lib/rules/index.ts';
import { changeRecordSettings, database, recordSettings, SETTING_BOUNDS, settingsOf, typedIn } from '#lib/server/index.ts';
import { employerOf } from '../../asking.ts';
import type { Actions, PageServerLoad } from './$types';

const FIELDS = ['months', 'soonDays', 'keepMonths'] as const;

/** What law says of validity, and what the organisation has chosen, as the fields hold it. */
export const load: PageServerLoad = async ({ locals }) => {
	const employer = employerOf(locals.who);
	const db = await database();
	const { validityMonths, soonDays, keepMonths } = await recordSettings(db, employer.organisation);
	const law = recordLaw((await settingsOf(db, employer.organisation)).rules)?.validity;
	return {
		law: law === undefined ? null : { months: law.months, clause: law.clause, title: law.source.title, remembered: law.mark === 'memory' },
		now: { months: numeral(validityMonths), soonDays: numeral(soonDays), keepMonths: numeral(keepMonths) }
	};
};

function numeral(count: number | null): string {
	return count === null ? '' : String(count);
}

/** @returns the whole number that was typed; null for an empty field, undefined for anything else. */
function read(typed: string, { least, most }: { readonly least: number; readonly most: number }): number | null | undefined {
	const text = typed.trim();
	if (text === '') return null;
	const count = /^\d{1,4}$/.test(text) ? Number(text) : NaN;
	return count >= least && count <= most ? count : undefined;
}

export const actions: Actions = {
	async default({ request, locals }) {
		const employer = employerOf(locals.who);
		const typed = typedIn(await request.formData(), FIELDS);
		const refused = (problems: Readonly<Record<string, string>>) => fail(400, { saved: false, problems, typed });
		const validityMonths = read(typed['months'] ?? '', SETTING_BOUNDS.validityMonths);
		const soonDays = read(typed['soonDays'] ?? '', SETTING_BOUNDS.soonDays);
		const keepMonths = read(typed['keepMonths'] ?? '', SETTING_BOUNDS.keepMonths);
		if (validityMonths === undefined || soonDays === undefined || soonDays === null || keepMonths === undefined) {
			return refused({
				...(validityMonths === undefined ? { months: 'bad-months' } : {}),
				...(soonDays === undefined || soonDays === null ? { soonDays: 'bad-days' } : {}),
				...(keepMonths === undefined ? { keepMonths: 'bad-keep' } : {})
			});
		}
		const change = await changeRecordSettings(await database(), employer, { validityMonths, soonDays, keepMonths }, new Date());
		if (change.kind === 'not-stricter') return refused({ months: change.kind });
		return { saved: true, problems: {}, typed: null };
	}
};
