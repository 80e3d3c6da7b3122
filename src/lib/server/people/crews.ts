/** What trainers and employers do with crews. Each change is noted; what is not theirs is not found. */
import { randomUUID } from 'node:crypto';
import { addCrew, addTrainer, archiveCrew, findCrew, removeTrainer, renameCrew, staffOf, type Crew } from '../db/crews.ts';
import type { Database } from '../db/open.ts';
import { note, type AuditKind } from './audit.ts';
import { randomCode } from './code.ts';
import type { Person } from './who.ts';

/** Characters of a join code: 40 bits. @reason short enough to write on a board; guesses are few, and a name and a number are needed too. */
const CODE_LENGTH = 8;

/** What came of a change. */
export type Change =
	| { readonly kind: 'done' }
	/** Not there, or not theirs. */
	| { readonly kind: 'not-found' };

export const DONE = { kind: 'done' } as const;
export const NOT_FOUND = { kind: 'not-found' } as const;

/** Notes what a member of staff did. */
export async function noteDeed(
	db: Database,
	who: Person,
	kind: AuditKind,
	subject: string,
	now: Date,
	detail: Readonly<Record<string, string | number | boolean>> = {}
): Promise<void> {
	await note(db, { kind, organisation: who.organisation, actor: who.id, subject, detail }, now);
}

/**
 * Makes a crew with a new join code; a trainer is in charge of it from the start.
 * @returns its id; null for somebody who may not make crews
 */
export async function makeCrew(db: Database, who: Person, name: string, now: Date): Promise<string | null> {
	if (who.role === 'learner') return null;
	return db.transaction().execute((transaction) => makeCrewIn(transaction, who, name, now));
}

/** As `makeCrew`, within a transaction, for staff. @returns its id */
export async function makeCrewIn(transaction: Database, who: Person, name: string, now: Date): Promise<string> {
	const crew = { id: randomUUID(), organisation: who.organisation, name, now: now.toISOString() };
	// Codes are as good as never alike; one that is, is taken again.
	while (!(await addCrew(transaction, { ...crew, joinCode: randomCode(CODE_LENGTH) })));
	if (who.role === 'trainer') await addTrainer(transaction, crew.id, who.id, crew.now);
	await noteDeed(transaction, who, 'crew-made', crew.id, now);
	return crew.id;
}

/** Gives a crew another name. */
export async function nameCrew(db: Database, who: Person, crew: string, name: string, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if (!(await renameCrew(transaction, who, crew, name))) return NOT_FOUND;
		await noteDeed(transaction, who, 'crew-changed', crew, now, { change: 'name' });
		return DONE;
	});
}

/** Puts a crew away, so that nobody joins it, or takes it up again. Twice is as once. */
export async function setArchived(db: Database, who: Person, crew: string, archived: boolean, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if ((await findCrew(transaction, who, crew)) === null) return NOT_FOUND;
		if (await archiveCrew(transaction, who, crew, archived ? now.toISOString() : null)) {
			if (archived) await noteDeed(transaction, who, 'crew-archived', crew, now);
			else await noteDeed(transaction, who, 'crew-changed', crew, now, { change: 'taken-up-again' });
		}
		return DONE;
	});
}

/** The crew that an employer may put trainers in charge of. */
async function crewToStaff(db: Database, who: Person, crew: string): Promise<Crew | null> {
	return who.role === 'employer' ? findCrew(db, who, crew) : null;
}

/** Puts a member of the organisation's staff in charge of a crew: employers only. Twice is as once. */
export async function assignTrainer(db: Database, who: Person, crew: string, trainer: string, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if ((await crewToStaff(transaction, who, crew)) === null) return NOT_FOUND;
		const staff = await staffOf(transaction, who.organisation);
		if (!staff.some((one) => one.id === trainer)) return NOT_FOUND;
		if (await addTrainer(transaction, crew, trainer, now.toISOString())) {
			await noteDeed(transaction, who, 'crew-changed', crew, now, { change: 'trainer-assigned', trainer });
		}
		return DONE;
	});
}

/** Takes a crew from a trainer: employers only. Twice is as once. */
export async function releaseTrainer(db: Database, who: Person, crew: string, trainer: string, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		if ((await crewToStaff(transaction, who, crew)) === null) return NOT_FOUND;
		if (await removeTrainer(transaction, crew, trainer)) {
			await noteDeed(transaction, who, 'crew-changed', crew, now, { change: 'trainer-released', trainer });
		}
		return DONE;
	});
}
