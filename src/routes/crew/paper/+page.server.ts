import { fail, redirect } from '@sveltejs/kit';
import { storyOf } from '#lib/scenario/index.ts';
import {
	database,
	dayIn,
	findCopy,
	printedCode,
	settingsOf,
	typeIn,
	typedIn,
	whomToAssign,
	type CopyPlace,
	type Database,
	type FoundCopy,
	type PaperCopy,
	type Person
} from '#lib/server/index.ts';
import { messages, staffMessages, type Messages } from '#lib/text/index.ts';
import type { Speech } from '../../learn/problem/model/names.ts';
import { staffOnly } from '../staff.ts';
import { readEntries, type Typed } from './entry.ts';
import { faultTexts } from './faults.ts';
import { fieldsOf } from './fields.ts';
import { toldAsks } from './told.ts';
import type { Actions, PageServerLoad } from './$types';

/** Codes and ids are short: nothing longer is looked at. */
const LONGEST = 80;

type Language = 'en' | 'es';

/** People whose answers may be typed in, each once, by name. */
async function people(db: Database, who: Person) {
	const { people } = await whomToAssign(db, who);
	return [...new Map(people.map(({ id, name, number }) => [id, { id, name, number }])).values()].sort((a, b) => a.name.localeCompare(b.name));
}

function asked(url: URL, name: 'code' | 'person'): string {
	return (url.searchParams.get(name) ?? '').slice(0, LONGEST);
}

/** A problem as it is typed in, or as what was typed in came out. */
function shownPlace(place: CopyPlace, language: Language, m: Messages, zone: string, taught: boolean) {
	const { problem, asks, typed } = place;
	const speech: Speech = { problem, language, m };
	const told = typed === null ? null : toldAsks(speech, asks, typed.grades, taught);
	return {
		place: place.place,
		title: storyOf(problem, language).title,
		fields: told === null ? fieldsOf(speech, asks) : [],
		told,
		allRight: told !== null && told.every((one) => one.isRight),
		day: typed === null ? '' : dayIn(zone, new Date(typed.at))
	};
}

async function shownCopy(db: Database, who: Person, copy: PaperCopy, language: Language) {
	const [m, { zone }] = await Promise.all([messages(language), settingsOf(db, who.organisation)]);
	return {
		code: printedCode(copy.sheet.code, copy.copy),
		set: copy.set.name,
		language: copy.sheet.language,
		person: { id: copy.person.id, name: copy.person.name, number: copy.person.number },
		others: copy.others,
		places: copy.places.map((place) => shownPlace(place, language, m, zone, copy.taught))
	};
}

/** Which field a copy that was not found is told at. */
function problemOf(found: Exclude<FoundCopy, { kind: 'found' }>): { readonly code?: string; readonly person?: string } {
	return found.kind === 'no-person' ? { person: found.kind } : { code: found.kind };
}

/** Who may be typed in for; and, once code and person are known, the copy. */
export const load: PageServerLoad = async ({ locals: { who: asks, language }, url }) => {
	const who = staffOnly(asks);
	const db = await database();
	const [code, person] = [asked(url, 'code'), asked(url, 'person')];
	const found = code === '' || person === '' ? null : await findCopy(db, who, code, person);
	return {
		people: await people(db, who),
		code,
		person,
		copy: found?.kind === 'found' ? await shownCopy(db, who, found.copy, language) : null,
		problems: found === null || found.kind === 'found' ? {} : problemOf(found),
		did: url.searchParams.get('did')
	};
};

/** What a form is told when it is not taken. */
interface Refusal {
	readonly form: 'find' | 'enter';
	/** By name of the field: a key of the catalogue when finding, words when typing in. */
	readonly problems: Readonly<Record<string, string>>;
	readonly typed: Typed;
	/** Over the form. */
	readonly message: 'refused' | 'nothing' | 'typedTwice' | null;
}

function refuse(refusal: Refusal) {
	return fail(400, refusal);
}

export const actions: Actions = {
	async find({ request, locals }) {
		const who = staffOnly(locals.who);
		const form = await request.formData();
		const typed = typedIn(form, ['code', 'person']);
		const [code = '', person = ''] = [typed['code']?.slice(0, LONGEST), typed['person']?.slice(0, LONGEST)];
		const refused = (problems: Refusal['problems']) => refuse({ form: 'find', problems, typed, message: null });
		if (code.trim() === '') return refused({ code: 'missing', ...(person === '' ? { person: 'no-person' } : {}) });
		const found = await findCopy(await database(), who, code, person);
		if (found.kind !== 'found') return refused({ ...problemOf(found) });
		const { sheet, copy } = found.copy;
		redirect(303, `/crew/paper?${new URLSearchParams({ code: printedCode(sheet.code, copy), person })}`);
	},

	async enter({ request, locals, url }) {
		const who = staffOnly(locals.who);
		const db = await database();
		const [code, person] = [asked(url, 'code'), asked(url, 'person')];
		const found = await findCopy(db, who, code, person);
		// The person was taken off the list meanwhile, or the set is not theirs any more.
		if (found.kind !== 'found') return refuse({ form: 'find', problems: { ...problemOf(found) }, typed: { code, person }, message: null });
		const { copy } = found;
		const read = readEntries(await request.formData(), copy.places);
		const [m, staff] = await Promise.all([messages(locals.language), staffMessages(locals.language)]);
		const refused = (message: Refusal['message'], problems: Refusal['problems'] = {}) => refuse({ form: 'enter', problems, typed: read.typed, message });
		if (read.tooLong.length > 0) return refused('refused', Object.fromEntries(read.tooLong.map((name) => [name, staff.paper.tooLong])));
		const outcome = await typeIn(db, who, copy, read.entries, new Date());
		switch (outcome.kind) {
			case 'nothing':
				return refused('nothing');
			case 'typed-before':
				return refused('typedTwice');
			case 'refused': {
				const speechOf = (place: number): Speech | undefined => {
					const problem = copy.places.find((one) => one.place === place)?.problem;
					return problem === undefined ? undefined : { problem, language: copy.sheet.language, m };
				};
				const rest = (place: number): boolean => read.entries.some((one) => one.place === place && one.restEmpty);
				return refused('refused', faultTexts(outcome.faults, staff.paper, speechOf, rest));
			}
			case 'typed':
				redirect(303, `/crew/paper?${new URLSearchParams({ code, person, did: 'stored' })}`);
		}
	}
};
