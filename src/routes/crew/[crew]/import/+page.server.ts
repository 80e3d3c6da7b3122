import { error, fail, redirect } from '@sveltejs/kit';
import { database, decodeList, enterRoster, findCrew, LONGEST_LIST, lookAtRoster, type Looking } from '#lib/server/index.ts';
import { staffOnly } from '../../staff.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

export const load: PageServerLoad = async ({ locals, params }) => {
	const crew = await findCrew(await database(), staffOnly(locals.who), params.crew);
	if (crew === null) error(404, 'Not Found');
	return { crew: { id: crew.id, name: crew.name, putAway: crew.archivedAt !== null } };
};

/** What was sent: the file, if one was chosen, else the pasted text. */
async function sentList(form: FormData): Promise<{ readonly kind: 'text'; readonly text: string } | { readonly kind: 'too-long' }> {
	const file = form.get('file');
	if (file instanceof File && file.size > 0) {
		if (file.size > LONGEST_LIST) return { kind: 'too-long' };
		return { kind: 'text', text: decodeList(new Uint8Array(await file.arrayBuffer())) };
	}
	const pasted = form.get('list');
	return { kind: 'text', text: typeof pasted === 'string' ? pasted : '' };
}

/** Why a list was not taken, as the page says it. @throws the error of a page that is not there */
function refusal(looking: Exclude<Looking, { kind: 'looked' }>, text: string) {
	if (looking.kind === 'not-found') error(404, 'Not Found');
	if (looking.kind === 'archived') return fail(400, { refused: looking.kind, openIn: null, text, lines: null });
	// What is no text is no use in the field either.
	return fail(400, { refused: looking.why, openIn: looking.why === 'open-quote' ? looking.line : null, text: looking.why === 'not-text' ? '' : text, lines: null });
}

async function listOf({ request, locals, params }: RequestEvent) {
	const who = staffOnly(locals.who);
	const db = await database();
	// Before the form is looked at: what is wrong with it says nothing of a crew that is not theirs.
	if ((await findCrew(db, who, params.crew)) === null) error(404, 'Not Found');
	return { who, db, sent: await sentList(await request.formData()) };
}

export const actions: Actions = {
	/** Shows what every line would do; nothing is changed. */
	async look(event) {
		const { who, db, sent } = await listOf(event);
		if (sent.kind === 'too-long') return fail(400, { refused: sent.kind, openIn: null, text: '', lines: null });
		const looking = await lookAtRoster(db, who, event.params.crew, sent.text);
		if (looking.kind !== 'looked') return refusal(looking, sent.text);
		return { refused: null, openIn: null, text: sent.text, lines: looking.lines };
	},

	/** Enters the people whose lines can be taken; read anew, whatever was shown before. */
	async enter(event) {
		const { who, db, sent } = await listOf(event);
		if (sent.kind === 'too-long') return fail(400, { refused: sent.kind, openIn: null, text: '', lines: null });
		const entering = await enterRoster(db, who, event.params.crew, sent.text, new Date());
		if (entering.kind !== 'entered') return refusal(entering, sent.text);
		redirect(303, `/crew/${event.params.crew}?${new URLSearchParams({ did: 'entered', n: String(entering.added) })}`);
	}
};
