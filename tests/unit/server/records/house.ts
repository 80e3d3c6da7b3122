/** An organisation in which everything happened that stands in records, made by the program's own functions. */
import { randomUUID } from 'node:crypto';
import { CHECK_TASKS } from '#lib/course/index.ts';
import { addDays } from '#lib/records/index.ts';
import { eventsOf } from '#lib/server/db/checks.ts';
import type { Database } from '#lib/server/db/open.ts';
import { addOpening } from '#lib/server/db/permits.ts';
import { courseInProcess, goThroughCourse } from '#lib/server/people/demo-course.ts';
import type { Person } from '#lib/server/people/who.ts';
import { handOutCertificate } from '#lib/server/records/certificate.ts';
import { makeCheckpoint } from '#lib/server/records/checkpoint.ts';
import { recordOf } from '#lib/server/records/found.ts';
import { forgetName } from '#lib/server/records/forgetting.ts';
import { renewSigningKey, signingKey } from '#lib/server/records/keys.ts';
import { markLeft, markReturned } from '#lib/server/records/leaving.ts';
import { commitmentOf } from '#lib/server/records/names.ts';
import { renamePerson } from '#lib/server/records/renaming.ts';
import { orderRetraining, withdrawRetraining } from '#lib/server/records/retraining.ts';
import { reinstateRecord, revokeRecord } from '#lib/server/records/revoking.ts';
import { acknowledgeForEmployer, acknowledgeTraining } from '#lib/server/records/acknowledging.ts';
import { beginCheck } from '#lib/server/course/checks.ts';
import { CourseDriver } from '../../../support/course-driver.ts';
import { NOW, aCrew, aLearner, aMember, anOrganisation, later } from '../people/organisation.ts';
import { aSignOff, priorTraining, withPassword } from './trained.ts';

const HOUR = 60 * 60;

/** What was made. */
export interface RecordHouse {
	readonly organisation: string;
	/** Another one, so that rows can be moved to it. */
	readonly other: string;
	readonly employer: Person;
	readonly trained: Person;
	/** Tokens of the checkpoints, in order. */
	readonly checkpoints: readonly string[];
}

async function asLearner(db: Database, organisation: string, id: string): Promise<Person> {
	const { answerer_id: answerer, name } = await db.selectFrom('person').select(['answerer_id', 'name']).where('id', '=', id).executeTakeFirstOrThrow();
	return { kind: 'person', id, organisation, role: 'learner', name, answerer, language: null };
}

function done<Result extends { readonly kind: string }>(result: Result, kind: Result['kind']): Result {
	if (result.kind !== kind) throw new Error(`The house was not made: ${result.kind}, not ${kind}`);
	return result;
}

async function checkpoint(db: Database, organisation: string, now: Date): Promise<string> {
	const made = await makeCheckpoint(db, organisation, now);
	if (made.kind !== 'made') throw new Error('The house has no checkpoint');
	return made.token;
}

/** Fills an empty database. */
export async function aRecordHouse(db: Database): Promise<RecordHouse> {
	const organisation = await anOrganisation(db);
	const other = await anOrganisation(db);
	const employer = await aMember(db, organisation, 'employer', 'Orla Finch');
	const trainer = await aMember(db, organisation, 'trainer');
	await withPassword(db, trainer);
	const crew = await aCrew(db, organisation, [trainer]);
	const learner = async (number: string, name: string): Promise<Person> => asLearner(db, organisation, await aLearner(db, organisation, number, [crew], name));

	// Passed under the eyes of the trainer, signed off, handed out, taken back, counted again; retraining ordered and withdrawn.
	const trained = await learner('E-1', 'Dario Penn');
	await addOpening(db, { id: randomUUID(), person: trained.id, trainer: trainer.id, place: 'Office 2', identified: 'Company card', now: NOW.toISOString(), expiresAt: later(400 * HOUR).toISOString() });
	await goThroughCourse(db, trained, NOW);
	const [completion] = (await recordOf(db, trained.id)).trainings;
	if (completion === undefined) throw new Error('The house has no completion');
	const signing = later(200 * HOUR);
	await aSignOff(db, trainer, crew, trained.id, '2026-12-01', signing);
	done(await handOutCertificate(db, employer, trained.id, completion.id, signing), 'handed-out');
	done(await acknowledgeTraining(db, trained, completion.id, 'en', signing), 'acknowledged');
	done(await acknowledgeForEmployer(db, employer, trained.id, completion.id, 'en', signing), 'acknowledged');
	await revokeRecord(db, employer, trained.id, completion.id, 'entered-by-mistake', signing);
	await reinstateRecord(db, employer, trained.id, completion.id, signing);
	done(await orderRetraining(db, employer, { people: [trained.id] }, { reason: 'yearly-review', due: addDays('2026-12-10', 30) }, signing), 'ordered');
	const [order] = (await recordOf(db, trained.id)).orders;
	await withdrawRetraining(db, employer, trained.id, order?.entry.id ?? '', signing);
	const first = await checkpoint(db, organisation, signing);

	// Failed a check, and is in the midst of another.
	const failing = await learner('E-2', 'Nadia Rook');
	const ofChecks = new Set(CHECK_TASKS.map(({ id }) => id));
	await goThroughCourse(db, failing, signing, 'stages', (_, { task }) => !ofChecks.has(task));
	const running = await learner('E-3', 'Wen Abara');
	const driver = new CourseDriver(courseInProcess(db, running, () => signing));
	await driver.practise('stages', await driver.show('stages'));
	await beginCheck(db, running, 'stages', 'en', signing);

	// Trained elsewhere, renamed, left and came back.
	const before = await learner('E-4', 'Jo Marchetti');
	const prior = await priorTraining(db, employer, await commitmentOf(db, employer.id), before.id, '2026-11-20');
	done(await handOutCertificate(db, employer, before.id, prior, signing), 'handed-out');
	await renamePerson(db, employer, before.id, { name: 'Jo Corvo', number: 'E-40' }, signing);
	await markLeft(db, employer, before.id, '2026-12-01', signing);
	await markReturned(db, employer, before.id, signing);

	// Left and forgotten, under two names.
	const forgotten = await learner('E-5', 'Amadou Vale');
	await renamePerson(db, employer, forgotten.id, { name: 'Amadou Lindt', number: 'E-5' }, signing);
	await markLeft(db, employer, forgotten.id, '2026-12-01', signing);
	done(await forgetName(db, employer, forgotten.id, 'asked-for', signing), 'forgotten');

	await aMember(db, other, 'employer', 'Tove Strand');
	await aLearner(db, other, 'E-1', [], 'Ilan Corvo');
	await signingKey(db, 'credential', signing);
	await renewSigningKey(db, 'checkpoint', later(310 * HOUR));
	await checkpoint(db, other, later(320 * HOUR));
	const second = await checkpoint(db, organisation, later(320 * HOUR));
	return { organisation, other, employer, trained, checkpoints: [first, second] };
}

/** @returns ids of the tries that ended. */
export async function endedTries(db: Database): Promise<ReadonlySet<string>> {
	const ended = new Set<string>();
	for (const { id } of await db.selectFrom('check_try').select('id').execute()) {
		const last = (await eventsOf(db, id)).at(-1);
		if (last?.kind === 'handed-in' && !last.payload.includes('"standing":{"kind":"more"')) ended.add(id);
	}
	return ended;
}
