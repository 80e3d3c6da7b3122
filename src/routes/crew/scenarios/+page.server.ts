import { error, fail, redirect } from '@sveltejs/kit';
import {
	copyScenario,
	database,
	dayIn,
	importScenario,
	listedOwn,
	listedShipped,
	LONGEST_DOCUMENT,
	makeOwn,
	settingsOf,
	type InputProblem,
	type Made
} from '#lib/server/index.ts';
import { staffOnly } from '../staff.ts';
import type { Actions, PageServerLoad } from './$types';

/** The longest form that is read, bytes: the document twice, as a file and as a text, and what a form adds. */
const LONGEST_FORM = 6 * LONGEST_DOCUMENT;

/** The scenarios of the organisation, and those that can be copied. */
export const load: PageServerLoad = async ({ locals, url }) => {
	const who = staffOnly(locals.who);
	const db = await database();
	const { zone } = await settingsOf(db, who.organisation);
	const own = await listedOwn(db, who, locals.language);
	return {
		own: own.map(({ changedAt, retiredAt, ...one }) => ({ ...one, day: dayIn(zone, new Date(changedAt)), retired: retiredAt !== null })),
		shipped: listedShipped(locals.language),
		did: url.searchParams.get('did')
	};
};

/** What a form is told that made nothing: why, the fields at fault, and the text, to be mended. */
interface Refusal {
	readonly why: Extract<Made, { kind: 'refused' }>['why'] | 'full';
	readonly most: number;
	readonly problems: readonly InputProblem[];
	readonly text: string;
}

function refuse(status: number, refusal: Partial<Refusal> & Pick<Refusal, 'why'>) {
	const told: Refusal = { most: 0, problems: [], text: '', ...refusal };
	return fail(status, told);
}

/** Shows what was made, or why nothing was. @throws the error of a page that is not there, for what is not theirs */
function toldOf(made: Made, text = '') {
	if (made.kind === 'made') redirect(303, `/crew/scenarios/${made.id}`);
	if (made.kind === 'not-found') error(404, 'Not Found');
	if (made.kind === 'full') return refuse(409, { why: 'full', most: made.most, text });
	return refuse(400, { why: made.why, problems: made.problems, text });
}

/** What was sent: the file, if one was chosen, else the pasted text. */
async function sentDocument(form: FormData): Promise<string | Uint8Array> {
	const file = form.get('file');
	if (file instanceof File && file.size > 0) return new Uint8Array(await file.arrayBuffer());
	const pasted = form.get('text');
	return typeof pasted === 'string' ? pasted : '';
}

/** The text of what was sent, to stand in the field; nothing where it is too long to be mended there. */
function textOf(source: string | Uint8Array): string {
	if (source.length > LONGEST_DOCUMENT) return '';
	return typeof source === 'string' ? source : new TextDecoder().decode(source);
}

export const actions: Actions = {
	async make({ locals }) {
		return toldOf(await makeOwn(await database(), staffOnly(locals.who), new Date()));
	},

	async copy({ request, locals }) {
		const who = staffOnly(locals.who);
		const id = (await request.formData()).get('scenario');
		return toldOf(await copyScenario(await database(), who, typeof id === 'string' ? id : '', new Date()));
	},

	async import({ request, locals }) {
		const who = staffOnly(locals.who);
		// Told before it is read: what is longer would be cut off, and read as something else.
		if (Number(request.headers.get('content-length')) > LONGEST_FORM) return refuse(413, { why: 'too-long' });
		const source = await sentDocument(await request.formData());
		return toldOf(await importScenario(await database(), who, source, new Date()), textOf(source));
	}
};
