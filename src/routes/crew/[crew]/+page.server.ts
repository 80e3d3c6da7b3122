import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import {
	addToCrew,
	assignTrainer,
	crewPeople,
	database,
	field,
	findCrew,
	findTaughtCrew,
	grouped,
	listCrews,
	moveToCrew,
	nameCrew,
	openCheck,
	progressOf,
	qrCode,
	readForm,
	releaseTrainer,
	resetPin,
	setArchived,
	settingsOf,
	signedOff,
	staffOf,
	takeOffCrew,
	trainersOf,
	trainingOf,
	typedIn,
	unlockCheck,
	type Change,
	type CrewPerson,
	type Database,
	type FieldProblems,
	type Person,
	type SignedOff
} from '#lib/server/index.ts';
import { staffOnly } from '../staff.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

/** What a form is told when it is refused: which one it was, of whom, what was typed and what is wrong. */
interface Refusal {
	readonly form: string;
	readonly person: string;
	readonly typed: Readonly<Record<string, string>>;
	readonly problems: FieldProblems;
}

/** What a person on the list is said to be; the most pressing comes first. */
function statesOf(person: CrewPerson): readonly ('joined' | 'not-joined' | 'locked' | 'used-up' | 'open')[] {
	const states: ReturnType<typeof statesOf>[number][] = [];
	if (person.locked) states.push('locked');
	if (person.usedUp) states.push('used-up');
	if (person.openings.length > 0) states.push('open');
	return states.length > 0 ? states : [person.joined ? 'joined' : 'not-joined'];
}

/** The crew with its people, and what an employer may choose for it. */
export const load: PageServerLoad = async ({ locals, params, url }) => {
	const who = staffOnly(locals.who);
	const db = await database();
	const crew = await findCrew(db, who, params.crew);
	if (crew === null) error(404, 'Not Found');
	const now = new Date();
	const people = await crewPeople(db, who, crew.id, now);
	const chosen = people.find((one) => one.id === url.searchParams.get('person'));
	const trainers = await trainersOf(db, who, crew.id);
	const ids = people.map((one) => one.id);
	const progress = await progressOf(db, ids, now);
	const handsOn = handsOnDays(await signedOff(db, who.organisation, ids));
	const due = new Map((await trainingOf(db, who.organisation, ids)).map((one) => [one.id, one.due]));
	return {
		crew: { id: crew.id, name: crew.name, code: grouped(crew.joinCode), putAway: crew.archivedAt !== null },
		address: `${url.origin}/join`,
		qr: qrCode(`${url.origin}/join?code=${crew.joinCode}`),
		people: people.map((one) => ({ id: one.id, name: one.name, number: one.number, states: statesOf(one), progress: progress.get(one.id) ?? null, handsOn: handsOn.get(one.id) ?? null, due: due.get(one.id) ?? null })),
		chosen: chosen === undefined ? null : await chosenPerson(db, who, crew.id, chosen),
		staff: who.role === 'employer' ? await staffing(db, who, trainers.map((one) => one.id)) : null,
		trainers: trainers.map(({ id, name }) => ({ id, name })),
		/** Whether they teach this crew: then they see what it gets wrong. */
		taught: (await findTaughtCrew(db, who, crew.id)) !== null,
		did: url.searchParams.get('did'),
		/** How many were added by a list. */
		added: Number(url.searchParams.get('n') ?? 0)
	};
};

/** @returns the day of each person's last sign-off of the hands-on part that counts. */
function handsOnDays(all: readonly SignedOff[]): ReadonlyMap<string, string> {
	return new Map(all.filter((one) => !one.revoked).toReversed().map(({ person, record }) => [person, record.day]));
}

/** What can be done with one person. Times are told in the zone of the sites. */
async function chosenPerson(db: Database, who: Person, crew: string, person: CrewPerson) {
	const { zone } = await settingsOf(db, who.organisation);
	const others = (await listCrews(db, who)).filter((one) => one.id !== crew && one.archivedAt === null);
	return {
		id: person.id,
		name: person.name,
		number: person.number,
		usedUp: person.usedUp,
		openings: person.openings.map(({ id, place, expiresAt }) => ({ id, place, until: clock(expiresAt, zone) })),
		others: others.map(({ id, name }) => ({ id, name }))
	};
}

/** @returns the time of day as a site's clock shows it: `14:20`. */
function clock(at: string, zone: string): string {
	return new Intl.DateTimeFormat('en-GB', { timeZone: zone, hour: '2-digit', minute: '2-digit' }).format(new Date(at));
}

/** Staff who are not in charge of a crew yet. */
async function staffing(db: Database, who: Person, inCharge: readonly string[]) {
	const staff = await staffOf(db, who.organisation);
	return staff.filter((one) => !inCharge.includes(one.id)).map(({ id, name, email }) => ({ id, name, email }));
}

const NO_FIELDS = z.object({});
const OF_PERSON = z.object({ person: field.id });
const FORMS = {
	rename: z.object({ name: field.name }),
	add: z.object({ name: field.name, number: field.number }),
	move: z.object({ person: field.id, to: field.id }),
	open: z.object({ person: field.id, place: field.place, identified: field.place }),
	trainer: z.object({ trainer: field.id })
} as const;

/** What a deed came to: done, as the page is to say; or refused at a field. */
type Deed = { readonly did: string; readonly person?: string } | { readonly problems: FieldProblems };

/** A change as a deed. @throws the error of a page that is not there, for what is not theirs */
function deedOf(change: Change, did: string, person?: string): Deed {
	if (change.kind === 'not-found') error(404, 'Not Found');
	return person === undefined ? { did } : { did, person };
}

/**
 * Makes an action: reads its form, does the deed, and shows the page anew, so that a reload does nothing twice.
 * @param form name of the form, for what is told when it is refused
 */
function action<Value>(
	form: string,
	schema: z.ZodType<Value>,
	deed: (db: Database, who: Person, crew: string, entry: Value, now: Date) => Promise<Deed>
) {
	return async ({ request, locals, params }: RequestEvent) => {
		const who = staffOnly(locals.who);
		const db = await database();
		// Before the form is looked at: what is wrong with it says nothing of a crew that is not theirs.
		if ((await findCrew(db, who, params.crew)) === null) error(404, 'Not Found');
		const sent = await request.formData();
		const [person] = Object.values(typedIn(sent, ['person']));
		const refuse = (problems: FieldProblems) => {
			const refusal: Refusal = { form, person: person ?? '', typed: typedIn(sent, ['name', 'number', 'place', 'identified', 'to', 'trainer']), problems };
			return fail(400, refusal);
		};
		const read = readForm(sent, schema);
		if (read.kind === 'refused') return refuse(read.problems);
		const done = await deed(db, who, params.crew, read.value, new Date());
		if ('problems' in done) return refuse(done.problems);
		const query = new URLSearchParams({ did: done.did, ...(done.person === undefined ? {} : { person: done.person }) });
		redirect(303, `/crew/${params.crew}?${query}`);
	};
}

export const actions: Actions = {
	rename: action('rename', FORMS.rename, async (db, who, crew, { name }, now) => deedOf(await nameCrew(db, who, crew, name, now), 'renamed')),
	archive: action('archive', NO_FIELDS, async (db, who, crew, _entry, now) => deedOf(await setArchived(db, who, crew, true, now), 'put-away')),
	restore: action('restore', NO_FIELDS, async (db, who, crew, _entry, now) => deedOf(await setArchived(db, who, crew, false, now), 'taken-up')),

	add: action('add', FORMS.add, async (db, who, crew, entry, now) => {
		const adding = await addToCrew(db, who, crew, entry, now);
		switch (adding.kind) {
			case 'added':
				return { did: 'added' };
			case 'not-found':
				return deedOf(adding, 'added');
			case 'on-list':
			case 'number-taken':
			case 'archived':
				return { problems: { number: adding.kind } };
		}
	}),

	move: action('move', FORMS.move, async (db, who, crew, { person, to }, now) => {
		// A crew that cannot be moved to is wrong in the form; a person who is not here is not there.
		const target = await findCrew(db, who, to);
		if (target === null || target.archivedAt !== null || to === crew) return { problems: { to: 'no-crew' } };
		return deedOf(await moveToCrew(db, who, crew, person, to, now), 'moved');
	}),

	'take-off': action('take-off', OF_PERSON, async (db, who, crew, { person }, now) =>
		deedOf(await takeOffCrew(db, who, crew, person, now), 'taken-off')
	),
	'reset-pin': action('reset-pin', OF_PERSON, async (db, who, crew, { person }, now) =>
		deedOf(await resetPin(db, who, crew, person, now), 'pin-reset', person)
	),

	unlock: action('unlock', OF_PERSON, async (db, who, crew, { person }, now) => {
		const change = await unlockCheck(db, who, crew, person, now);
		return change.kind === 'not-used-up' ? { problems: { unlock: change.kind } } : deedOf(change, 'unlocked', person);
	}),

	open: action('open', FORMS.open, async (db, who, crew, { person, ...opening }, now) =>
		deedOf(await openCheck(db, who, crew, person, opening, now), 'opened', person)
	),

	assign: action('assign', FORMS.trainer, async (db, who, crew, { trainer }, now) => {
		const change = await assignTrainer(db, who, crew, trainer, now);
		return change.kind === 'not-found' ? { problems: { trainer: 'no-trainer' } } : deedOf(change, 'assigned');
	}),
	release: action('release', FORMS.trainer, async (db, who, crew, { trainer }, now) => deedOf(await releaseTrainer(db, who, crew, trainer, now), 'released'))
};
