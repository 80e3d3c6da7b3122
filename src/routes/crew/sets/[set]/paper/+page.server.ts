import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import { PAGE_SIZES } from '#lib/paper/index.ts';
import { database, dayIn, findSet, grouped, listSheets, mostCopies, printSheet, readForm, setScenarios, settingsOf, typedIn } from '#lib/server/index.ts';
import { staffOnly } from '../../../staff.ts';
import type { Actions, PageServerLoad } from './$types';

/** The sheets of a set, and how another one can be made. */
export const load: PageServerLoad = async ({ locals: { who: asks, language }, params, url }) => {
	const who = staffOnly(asks);
	const db = await database();
	const set = await findSet(db, who, params.set);
	if (set === null) error(404, 'Not Found');
	const [sheets, scenarios, { zone }] = await Promise.all([listSheets(db, who, set.id), setScenarios(db, who.organisation, set.content), settingsOf(db, who.organisation)]);
	const size = PAGE_SIZES.find((one) => one === url.searchParams.get('size'));
	return {
		set: { id: set.id, name: set.name },
		/** The language of the sheet, unless another is chosen. */
		usual: set.content.language ?? language,
		alike: set.content.sameForAll,
		most: mostCopies(set.content.count),
		canDraw: scenarios.length === set.content.scenarios.length,
		// The size that was chosen stands first.
		sizes: [...PAGE_SIZES].sort((a, b) => Number(b === size) - Number(a === size)),
		sheets: sheets.map(({ id, code, copies, alike, language, at, people }) => ({ id, code: grouped(code), copies, alike, language, day: dayIn(zone, new Date(at)), people })),
		made: url.searchParams.get('made')
	};
};

const FORM = z.object({
	kind: z.enum(['own', 'alike']),
	/** A common sheet has one copy, whatever stands here. */
	copies: z.string().max(20).optional(),
	language: z.enum(['en', 'es']),
	size: z.enum(PAGE_SIZES)
});

const FIELDS = ['kind', 'copies', 'language', 'size'];

/** A whole number of copies, as it was typed; undefined for what is none, or too many. */
function copiesIn(text: string, most: number): number | undefined {
	const copies = /^\s*\d{1,3}\s*$/.test(text) ? Number(text) : 0;
	return copies >= 1 && copies <= most ? copies : undefined;
}

export const actions: Actions = {
	async print({ request, locals, params }) {
		const who = staffOnly(locals.who);
		const db = await database();
		const set = await findSet(db, who, params.set);
		if (set === null) error(404, 'Not Found');
		const form = await request.formData();
		const read = readForm(form, FORM);
		const refused = (problem: 'copies' | 'other' | 'cannot-draw') => fail(400, { problem, typed: typedIn(form, FIELDS) });
		if (read.kind === 'refused') return refused('other');
		const { kind, copies: typed = '', language, size } = read.value;
		const copies = kind === 'alike' ? 1 : copiesIn(typed, mostCopies(set.content.count));
		if (copies === undefined) return refused('copies');
		if ((await setScenarios(db, who.organisation, set.content)).length < set.content.scenarios.length) return refused('cannot-draw');
		const sheet = await printSheet(db, who, set.id, { copies, alike: kind === 'alike', language }, new Date());
		if (sheet === null) error(404, 'Not Found');
		redirect(303, `/crew/sets/${set.id}/paper?${new URLSearchParams({ made: sheet.id, size })}`);
	}
};
