import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import type { SetContent } from '#lib/flow/index.ts';
import { database, field, findSet, makeSet, MOST_SET_PROBLEMS, readForm, scenariosToChoose, settingsOf, type Database, type Person } from '#lib/server/index.ts';
import { offerOf, skillsOf, type Offer } from '../choosing.ts';
import { staffOnly } from '../../staff.ts';
import { contentOf, emptyEntry, entryOf, readEntry, type EntryProblems, type SetEntry } from './entry.ts';
import type { Actions, PageServerLoad } from './$types';

const NAME = z.object({ name: field.name });

/**
 * What can be put into a set, and what the form holds: what its address says (so that the list can be narrowed
 * without scripts, and other pages can lead here), what a set has that is to be copied, or what is usual.
 */
export const load: PageServerLoad = async ({ locals: { who: asks, language }, url }) => {
	const who = staffOnly(asks);
	const db = await database();
	const [{ units }, scenarios] = await Promise.all([settingsOf(db, who.organisation), scenariosToChoose(db, who)]);
	const offers = scenarios.map((one) => offerOf(one, language));
	const usual = emptyEntry(units);
	const copied = url.searchParams.get('copy');
	const copy = copied === null ? null : await copyOf(db, who, copied, offers);
	return {
		offers,
		entry: copy?.entry ?? readEntry(url.searchParams, usual),
		/** The set that is copied: its name, and how many of its scenarios are offered no longer. */
		copy: copy === null ? null : { name: copy.name, leftOut: copy.leftOut },
		mostProblems: MOST_SET_PROBLEMS
	};
};

/** The form that makes a set like another one. @throws the error of a page that is not there, for a set that is not theirs */
async function copyOf(db: Database, who: Person, id: string, offers: readonly Offer[]): Promise<{ readonly name: string; readonly leftOut: number; readonly entry: SetEntry }> {
	const set = await findSet(db, who, id);
	if (set === null) error(404, 'Not Found');
	const { scenarios } = set.content;
	const offered = scenarios.filter((one) => offers.some((offer) => offer.id === one.id));
	const content: SetContent = { ...set.content, scenarios: offered };
	const skills = skillsOf(offers, new Map(offered.map((one) => [one.id, one.asks])));
	return { name: set.name, leftOut: scenarios.length - offered.length, entry: entryOf('', content, skills) };
}

/** What a form is told that made no set: it comes back as it was. */
interface Refusal {
	readonly entry: SetEntry;
	readonly problems: EntryProblems;
}

export const actions: Actions = {
	async make({ request, locals }) {
		const who = staffOnly(locals.who);
		const db = await database();
		const sent = await request.formData();
		const [{ units }, scenarios] = await Promise.all([settingsOf(db, who.organisation), scenariosToChoose(db, who)]);
		const entry = readEntry(sent, emptyEntry(units));
		const name = readForm(sent, NAME);
		const chosen = contentOf(entry, scenarios.map((one) => offerOf(one, locals.language)));
		const refuse = (problems: EntryProblems) => {
			const refusal: Refusal = { entry, problems: { ...problems, fields: { ...(name.kind === 'refused' ? name.problems : {}), ...problems.fields } } };
			return fail(400, refusal);
		};
		if (chosen.kind === 'refused') return refuse(chosen.problems);
		if (name.kind === 'refused') return refuse({ fields: {}, unfit: [] });
		const made = await makeSet(db, who, { name: name.value.name, content: chosen.content }, new Date());
		// A scenario was retired in the same moment: the list tells what is still there.
		if (made.kind === 'refused') return refuse({ fields: { scenarios: 'gone' }, unfit: [] });
		redirect(303, `/crew/sets/${made.id}?did=made`);
	}
};
