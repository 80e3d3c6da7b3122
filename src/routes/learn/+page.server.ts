import {
	checkDesk,
	completionsOf,
	courseBook,
	courseOf,
	database,
	dayIn,
	findOrganisation,
	frequentSlips,
	practisedBefore,
	setsOf,
	type Person
} from '#lib/server/index.ts';
import type { PageServerLoad } from './$types';

/** Where somebody stands in the course, what is due, what goes wrong, and what is still missing. A guest's own is on the device. */
export const load: PageServerLoad = async ({ locals: { who } }) => ({
	book: courseBook(),
	own: who.kind === 'guest' ? null : await ownOf(who)
});

async function ownOf(who: Person) {
	const db = await database();
	const now = new Date();
	const organisation = await findOrganisation(db, who.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	const { state } = await courseOf(db, who.id, now);
	const desk = who.role === 'learner' ? await checkDesk(db, who, 'final', now) : undefined;
	const [completion] = await completionsOf(db, who.id);
	const before = await practisedBefore(db, who.id, now);
	return {
		person: who.id,
		state,
		day: dayIn(organisation.zone, now),
		sets: await setsOf(db, who, now),
		slips: await frequentSlips(db, who.answerer),
		final:
			desk === undefined
				? null
				: { tries: desk.tries, shut: desk.shut ?? null, running: desk.view !== undefined && desk.view.end === undefined },
		completion: completion === undefined ? null : { day: completion.day, supervised: completion.supervised === 1 },
		before: { answered: before.length, right: before.filter((one) => one.right).length }
	};
}
