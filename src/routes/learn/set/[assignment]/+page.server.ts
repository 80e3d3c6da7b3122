import { error } from '@sveltejs/kit';
import { database, dayIn, findOrganisation, setDesk } from '#lib/server/index.ts';
import type { PageServerLoad } from './$types';

/**
 * A practice set of the learner who asks: where it stands, and the problems of the round at hand with the scenarios
 * that they are drawn from, so that the device goes on without signal. A set in another language than the learner's
 * brings its page in that language.
 */
export const load: PageServerLoad = async ({ params, locals }) => {
	const { who, language: ownLanguage } = locals;
	const db = await database();
	const now = new Date();
	const desk = who.kind === 'person' ? await setDesk(db, who, params.assignment, now) : null;
	if (who.kind !== 'person' || desk === null) error(404, 'no-such-set');
	const organisation = await findOrganisation(db, who.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	const language = desk.language ?? ownLanguage;
	// The page's own tag follows.
	locals.language = language;
	return { desk, person: who.id, day: dayIn(organisation.zone, now), language, ownLanguage };
};
