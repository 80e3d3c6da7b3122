/** People of an organisation, put into the database file of a server that is not started yet. */
import { randomUUID } from 'node:crypto';
import { putOnList } from '#lib/server/db/crew-list.ts';
import { addCrew, addTrainer } from '#lib/server/db/crews.ts';
import { openDatabase } from '#lib/server/db/open.ts';
import { insertOrganisation } from '#lib/server/db/people.ts';
import { startSession } from '#lib/server/people/session.ts';
import { enterPeople } from '#lib/server/records/names.ts';

const PIN = '482917';
const CODE = 'HARR0W23';

/** Somebody on a crew's list who has not joined yet, and all that joining and signing in ask for. */
export interface CourseLearner {
	readonly person: string;
	readonly name: string;
	readonly number: string;
	readonly code: string;
	readonly pin: string;
}

export interface CoursePeople {
	readonly learners: readonly CourseLearner[];
	/** Cookies of staff who are signed in. */
	readonly trainer: string;
	readonly employer: string;
}

/** Makes an organisation with a crew of learners who have not joined yet, and its staff. */
export async function coursePeople(file: string, names: readonly string[]): Promise<CoursePeople> {
	const db = await openDatabase(`file:${file}`);
	const now = new Date();
	const organisation = randomUUID();
	const of = { id: organisation, name: 'Harrow Bridges', rules: 'us-construction', units: 'metric', language: 'en', zone: 'UTC', pass_rule: 'staged' };
	await insertOrganisation(db, { ...of, created_at: now.toISOString() });
	const staff = async (role: 'trainer' | 'employer'): Promise<{ id: string; cookie: string }> => {
		const [id = ''] = await db.transaction().execute((transaction) => enterPeople(transaction, organisation, [{ role, name: 'Helle Brandt', email: `${role}@example.org` }], null, now));
		let token = '';
		const cookies = { get: () => undefined, set: (_: string, value: string) => void (token = value), delete: () => undefined };
		await startSession(db, cookies, false, id, now);
		return { id, cookie: `session=${token}` };
	};
	const [trainer, employer] = [await staff('trainer'), await staff('employer')];
	const crew = randomUUID();
	await addCrew(db, { id: crew, organisation, name: 'Bridges North', joinCode: CODE, now: now.toISOString() });
	await addTrainer(db, crew, trainer.id, now.toISOString());
	const learners: CourseLearner[] = [];
	for (const [i, name] of names.entries()) {
		const number = `K-${i + 1}`;
		const [person = ''] = await db.transaction().execute((transaction) => enterPeople(transaction, organisation, [{ role: 'learner', name, personalNumber: number }], null, now));
		await putOnList(db, crew, person, now.toISOString());
		learners.push({ person, name, number, code: CODE, pin: PIN });
	}
	await db.destroy();
	return { learners, trainer: trainer.cookie, employer: employer.cookie };
}
