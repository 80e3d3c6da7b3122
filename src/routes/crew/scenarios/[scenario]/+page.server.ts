import { error, fail } from '@sveltejs/kit';
import * as z from 'zod';
import { database, discardDraft, findOwn, LONGEST_DOCUMENT, publish, readForm, restore, retire, saveDraft, type Database, type Person } from '#lib/server/index.ts';
import { staffOnly } from '../../staff.ts';
import { authorChoices } from './choices.server.ts';
import type { DeedResult } from './deeds.svelte.ts';
import type { Actions, PageServerLoad, RequestEvent } from './$types';

/** The scenario as it stands, and what its author can choose from. */
export const load: PageServerLoad = async ({ locals, params }) => {
	const who = staffOnly(locals.who);
	const own = await findOwn(await database(), who, params.scenario);
	if (own === null) error(404, 'Not Found');
	const { id, maker, revision, published, retiredAt, mayChange, document, draft } = own;
	return { scenario: { id, maker, revision, published, retired: retiredAt !== null, mayChange, document, draft: draft !== null }, choices: authorChoices() };
};

const REVISION = z.coerce.number().int().min(0);
const SAVE = z.object({ text: z.string().max(LONGEST_DOCUMENT * 2), revision: REVISION });
const OF_REVISION = z.object({ revision: REVISION });
const NO_FIELDS = z.object({});

const NOT_FOUND: DeedResult = { did: 'refused', why: 'not-found' };

/** Deeds that came to nothing, with the status of their answer. */
function refused(status: number, result: DeedResult, text?: string) {
	return fail(status, { result, text: text ?? null });
}

/** What is told to whoever changed an older text than the one that stands: that one. */
async function conflict(db: Database, who: Person, id: string, text?: string) {
	const own = await findOwn(db, who, id);
	if (own === null) return refused(404, NOT_FOUND, text);
	return refused(409, { did: 'conflict', revision: own.revision, document: own.document, published: own.published }, text);
}

/**
 * Makes an action: reads its form, does the deed. Scripts are told what came of it; without them the page comes anew,
 * and what was typed stays in it.
 */
function action<Value>(schema: z.ZodType<Value>, deed: (db: Database, who: Person, id: string, entry: Value, now: Date) => Promise<DeedResult | ReturnType<typeof refused>>) {
	return async ({ request, locals, params }: RequestEvent) => {
		const who = staffOnly(locals.who);
		const db = await database();
		const read = readForm(await request.formData(), schema);
		if (read.kind === 'refused') return refused(400, { did: 'refused', why: 'problems', problems: [{ field: 'document', problem: 'is too long or not whole', remedy: 'make it shorter and save it again' }] });
		const came = await deed(db, who, params.scenario, read.value, new Date());
		return 'did' in came ? { result: came, text: null } : came;
	};
}

export const actions: Actions = {
	save: action(SAVE, async (db, who, id, { text, revision }, now) => {
		const saving = await saveDraft(db, who, id, revision, text, now);
		switch (saving.kind) {
			case 'saved':
				return { did: 'saved', revision: saving.revision };
			case 'changed-meanwhile':
				return await conflict(db, who, id, text);
			case 'refused':
				return refused(400, { did: 'refused', why: 'problems', problems: saving.problems }, text);
			case 'not-found':
				return refused(404, NOT_FOUND, text);
		}
	}),

	publish: action(OF_REVISION, async (db, who, id, { revision }, now) => {
		const publishing = await publish(db, who, id, revision, now);
		switch (publishing.kind) {
			case 'published': {
				const own = await findOwn(db, who, id);
				return { did: 'published', published: publishing.version, ...(own === null ? {} : { revision: own.revision }) };
			}
			case 'refused':
				return refused(400, { did: 'refused', why: publishing.problems.length > 0 ? 'problems' : 'findings', problems: publishing.problems, findings: publishing.findings });
			case 'busy':
				return refused(409, { did: 'refused', why: 'busy' });
			case 'too-slow':
				return refused(400, { did: 'refused', why: 'too-slow' });
			case 'changed-meanwhile':
				return await conflict(db, who, id);
			case 'not-found':
				return refused(404, NOT_FOUND);
		}
	}),

	retire: action(NO_FIELDS, async (db, who, id, _entry, now) => ((await retire(db, who, id, now)).kind === 'done' ? { did: 'retired' } : refused(404, NOT_FOUND))),
	restore: action(NO_FIELDS, async (db, who, id, _entry, now) => ((await restore(db, who, id, now)).kind === 'done' ? { did: 'restored' } : refused(404, NOT_FOUND))),

	discard: action(OF_REVISION, async (db, who, id, { revision }, now) => {
		const discarding = await discardDraft(db, who, id, revision, now);
		switch (discarding.kind) {
			case 'discarded': {
				const own = await findOwn(db, who, id);
				return { did: 'discarded', revision: discarding.revision, ...(own === null ? {} : { document: own.document }) };
			}
			case 'gone':
				return { did: 'gone' };
			case 'changed-meanwhile':
				return await conflict(db, who, id);
			case 'not-found':
				return refused(404, NOT_FOUND);
		}
	})
};
