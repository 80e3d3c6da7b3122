import { error, fail, redirect } from '@sveltejs/kit';
import * as z from 'zod';
import {
	archiveSet,
	assignSet,
	database,
	dayIn,
	field,
	findSet,
	readForm,
	recallAssignment,
	setScenarios,
	setStates,
	settingsOf,
	whomToAssign,
	type Change,
	type Database,
	type Person,
	type PracticeSet,
	type SetProblem
} from '#lib/server/index.ts';
import { staffOnly } from '../../staff.ts';
import { offerOf } from '../choosing.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

/** The most boxes of one name that are looked at. @reason more than are taken at once; the rest is refused as too many */
const MOST_BOXES = 1000;

/** A set, what is in it, who is how far with it, and to whom it can be assigned. */
export const load: PageServerLoad = async ({ locals: { who: asks, language }, params, url }) => {
	const who = staffOnly(asks);
	const db = await database();
	const now = new Date();
	const [set, states, settings] = await Promise.all([findSet(db, who, params.set), setStates(db, who, params.set, now), settingsOf(db, who.organisation)]);
	if (set === null || states === null) error(404, 'Not Found');
	const scenarios = await setScenarios(db, who.organisation, set.content);
	const recalling = states.assignments.find((one) => one.id === url.searchParams.get('recall') && !one.recalled);
	return {
		set: {
			id: set.id,
			name: set.name,
			content: set.content,
			madeBy: set.madeBy.name,
			madeOn: dayIn(settings.zone, new Date(set.createdAt)),
			away: set.archivedAt !== null,
			mayArchive: set.mayArchive
		},
		scenarios: set.content.scenarios.map(({ id, version, asks: asked }) => {
			const scenario = scenarios.find((one) => one.id === id && one.version === version);
			if (scenario === undefined) return null;
			const offer = offerOf(scenario, language);
			return { ...offer, asks: offer.asks.filter((ask) => asked.includes(ask.id)) };
		}),
		states,
		at: now.toISOString(),
		zone: settings.zone,
		whom: set.archivedAt === null ? await whomToAssign(db, who) : null,
		recalling: recalling === undefined ? null : { id: recalling.id, target: recalling.target },
		did: url.searchParams.get('did')
	};
};

/** @returns the set of the address, and who asks. @throws the error of a page that is not there, for a set that is not theirs */
async function setAt({ locals, params }: Pick<RequestEvent, 'locals' | 'params'>): Promise<{ readonly db: Database; readonly who: Person; readonly set: PracticeSet }> {
	const who = staffOnly(locals.who);
	const db = await database();
	const set = await findSet(db, who, params.set);
	if (set === null) error(404, 'Not Found');
	return { db, who, set };
}

/** Shows the page anew, so that a reload does nothing twice. */
function shown(set: string, did: string): never {
	redirect(303, `/crew/sets/${set}?${new URLSearchParams({ did })}`);
}

function done(change: Change, set: string, did: string): never {
	if (change.kind === 'not-found') error(404, 'Not Found');
	shown(set, did);
}

function boxesIn(form: FormData, name: string): readonly string[] {
	return form.getAll(name).slice(0, MOST_BOXES).flatMap((one) => (typeof one === 'string' ? [one.slice(0, 64)] : []));
}

/** By the form's fields: what is wrong, each once. */
function fieldsOf(problems: readonly SetProblem[]): Readonly<Record<string, string>> {
	return Object.fromEntries(problems.map(({ code }) => [code === 'day' || code === 'day-past' ? 'day' : code, code]));
}

const OF_ASSIGNMENT = z.object({ assignment: field.id });

export const actions: Actions = {
	async assign(event) {
		const { db, who, set } = await setAt(event);
		const form = await event.request.formData();
		const [crews, people] = [boxesIn(form, 'crew'), boxesIn(form, 'person')];
		const typed = form.get('day');
		const day = typeof typed === 'string' ? typed.trim().slice(0, 64) : '';
		const assigned = await assignSet(db, who, set.id, { crews, people, dueDay: day === '' ? null : day }, new Date());
		if (assigned.kind === 'not-found') error(404, 'Not Found');
		if (assigned.kind === 'refused') return fail(400, { crews, people, day, problems: fieldsOf(assigned.problems) });
		shown(set.id, 'assigned');
	},

	async recall(event) {
		const { db, who, set } = await setAt(event);
		const read = readForm(await event.request.formData(), OF_ASSIGNMENT);
		const now = new Date();
		// One of another set would be recalled unseen.
		const states = read.kind === 'read' ? await setStates(db, who, set.id, now) : null;
		if (read.kind === 'refused' || !states?.assignments.some((one) => one.id === read.value.assignment)) error(404, 'Not Found');
		done(await recallAssignment(db, who, read.value.assignment, now), set.id, 'recalled');
	},

	async archive(event) {
		const { db, who, set } = await setAt(event);
		done(await archiveSet(db, who, set.id, true, new Date()), set.id, 'put-away');
	},

	async restore(event) {
		const { db, who, set } = await setAt(event);
		done(await archiveSet(db, who, set.id, false, new Date()), set.id, 'taken-up');
	}
};
