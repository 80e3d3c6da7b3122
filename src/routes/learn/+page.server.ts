import {
	checkDesk,
	completionsOf,
	courseBook,
	courseOf,
	database,
	dayIn,
	findOrganisation,
	frequentSlips,
	openOrderOf,
	practisedBefore,
	recordOf,
	runsOf,
	setsOf,
	type Database,
	type Person
} from '#lib/server/index.ts';
import { recordMessages } from '#lib/text/index.ts';
import { dayText } from '../day-text.ts';
import type { PageServerLoad } from './$types';

/** Where somebody stands in the course, what is due, what goes wrong, and what is still missing. A guest's own is on the device. */
export const load: PageServerLoad = async ({ locals: { who, language } }) => ({
	book: courseBook(),
	own: who.kind === 'guest' ? null : await ownOf(who, language)
});

async function ownOf(who: Person, language: 'en' | 'es') {
	const db = await database();
	const now = new Date();
	const organisation = await findOrganisation(db, who.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	const { state } = await courseOf(db, who.id, now);
	const desk = who.role === 'learner' ? await checkDesk(db, who, 'final', now) : undefined;
	const run = (await runsOf(db, [who.id])).get(who.id);
	// What was passed before retraining was ordered is on the own record; here it is done again.
	const completion = (await completionsOf(db, who.id)).find((one) => run?.endedBefore.has(one.check_id) !== true);
	const day = dayIn(organisation.zone, now);
	const before = await practisedBefore(db, who.id, now);
	return {
		person: who.id,
		state,
		day,
		record: who.role === 'learner' ? await ownWords(db, who, run !== undefined, day, language) : null,
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

/**
 * What is said of the own record: the link, and until when retraining is to be done, if any is open. Said here, so that the
 * page loads no words of records.
 */
async function ownWords(db: Database, who: Person, ordered: boolean, today: string, language: 'en' | 'es') {
	const { ownRecord } = await recordMessages(language);
	const order = ordered ? openOrderOf(await recordOf(db, who.id), today) : undefined;
	if (order === undefined) return { link: ownRecord.link, order: null };
	return { link: ownRecord.link, order: (order.late ? ownRecord.orderedLate : ownRecord.ordered)({ day: dayText(order.due, language) }) };
}
