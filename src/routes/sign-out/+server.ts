import { redirect } from '@sveltejs/kit';
import { database, endSession, note } from '#lib/server/index.ts';
import type { RequestHandler } from './$types';

/** Signs out on this browser. */
export const POST: RequestHandler = async ({ cookies, url, locals }) => {
	const db = await database();
	const { who } = locals;
	await endSession(db, cookies, url.protocol === 'https:');
	if (who.kind === 'person') await note(db, { kind: 'signed-out', organisation: who.organisation, actor: who.id, subject: who.id }, new Date());
	redirect(303, '/');
};
