/** Handing a set out, and taking it back. */
import { randomBytes, randomUUID } from 'node:crypto';
import { dayNumber } from '#lib/mastery/index.ts';
import { dayIn } from '../course/day.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation, isUniqueViolation } from '../db/people.ts';
import { assignableTo, findSetRow, insertAssignments, openAssignments, recallOpen, type Assignable, type OpenAssignment } from '../db/sets.ts';
import { DONE, NOT_FOUND, noteDeed, type Change } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { refusedFor, setProblem, type SetProblem, type SetRefused } from './problem.ts';

/** To whom a set goes, and until when. */
export interface Assigning {
	/** Ids of crews: everyone on their lists, and whoever joins later. */
	readonly crews: readonly string[];
	/** Ids of learners. */
	readonly people: readonly string[];
	/** YYYY-MM-DD, local at the site; null for none. */
	readonly dueDay: string | null;
}

export type Assigned =
	| { readonly kind: 'assigned'; readonly assignments: readonly string[] }
	| { readonly kind: 'not-found' }
	| SetRefused;

/** To whom somebody may assign a set. */
export type { Assignable } from '../db/sets.ts';

/** Most crews and people at once. @reason more than an organisation has crews; keeps a hostile form cheap. */
const MOST_AT_ONCE = 200;
const SEED_BYTES = 12;

/** @returns crews of theirs that work, and the learners on their lists. */
export async function whomToAssign(db: Database, who: Person): Promise<Assignable> {
	return assignableTo(db, who);
}

/**
 * Assigns a set to crews and people of one's own: all or none. Whoever has it already, open and with the same due day,
 * keeps it as it is; with another due day it is refused.
 */
export async function assignSet(db: Database, who: Person, set: string, to: Assigning, now: Date): Promise<Assigned> {
	const organisation = await findOrganisation(db, who.organisation);
	if (organisation === null) throw new Error('A person without an organisation');
	const today = dayIn(organisation.zone, now);
	try {
		return await assignAll(db, who, set, to, today, now);
	} catch (error) {
		// Somebody assigned it at the same moment: by now that is seen.
		if (isUniqueViolation(error)) return assignAll(db, who, set, to, today, now);
		throw error;
	}
}

/** Assigns what may be assigned: all or none. @throws a unique violation where somebody assigned the same meanwhile */
async function assignAll(db: Database, who: Person, set: string, to: Assigning, today: string, now: Date): Promise<Assigned> {
	return db.transaction().execute(async (transaction) => {
		const found = await findSetRow(transaction, who, set);
		if (found === null) return NOT_FOUND;
		const crews = [...new Set(to.crews)];
		const people = [...new Set(to.people)];
		const bounded = crews.length + people.length <= MOST_AT_ONCE;
		const open = await openAssignments(transaction, set);
		const unknown = bounded ? targetProblems(await assignableTo(transaction, who), crews, people) : [];
		const problems = [
			...(found.archived_at === null ? [] : [setProblem('archived', 'set', 'was put away', 'take it up again first')]),
			...(crews.length + people.length > 0 ? [] : [setProblem('nobody', 'crews', 'names nobody', 'choose a crew or a person')]),
			...(bounded ? [] : [setProblem('too-many', 'crews', `names more than ${MOST_AT_ONCE}`, `choose at most ${MOST_AT_ONCE} at once`)]),
			...dayProblems(to.dueDay, today),
			...unknown,
			// Of whom they do not know, nothing is told.
			...(bounded && unknown.length === 0 ? againProblems(open, crews, people, to.dueDay) : [])
		];
		if (problems.length > 0) return refusedFor(...problems);
		const rows = [...crews.map((crew) => ({ crew_id: crew, person_id: null })), ...people.map((person) => ({ crew_id: null, person_id: person }))].map((target) => {
			const before = open.find((one) => one.crew_id === target.crew_id && one.person_id === target.person_id);
			return { ...target, before, id: before?.id ?? randomUUID() };
		});
		const fresh = rows.filter(({ before }) => before === undefined);
		await insertAssignments(
			transaction,
			fresh.map(({ id, crew_id, person_id }) => ({
				id,
				set_id: set,
				crew_id,
				person_id,
				seed: randomBytes(SEED_BYTES).toString('base64url'),
				due_day: to.dueDay,
				assigned_by: who.id,
				at: now.toISOString(),
				recalled_at: null
			}))
		);
		for (const { id, crew_id, person_id } of fresh) {
			await noteDeed(transaction, who, 'set-assigned', set, now, { assignment: id, ...(crew_id === null ? { person: person_id } : { crew: crew_id }) });
		}
		return { kind: 'assigned', assignments: rows.map(({ id }) => id) };
	});
}

function dayProblems(day: string | null, today: string): readonly SetProblem[] {
	if (day === null) return [];
	const day_ = numberOf(day);
	if (day_ === undefined) return [setProblem('day', 'dueDay', 'is no day of the calendar', 'write it as YYYY-MM-DD')];
	return day_ < dayNumber(today) ? [setProblem('day-past', 'dueDay', 'is over', `give ${today} or a later day`)] : [];
}

function numberOf(day: string): number | undefined {
	try {
		return dayNumber(day);
	} catch {
		return undefined;
	}
}

function targetProblems(may: Assignable, crews: readonly string[], people: readonly string[]): readonly SetProblem[] {
	return [
		...crews
			.filter((crew) => !may.crews.some((one) => one.id === crew))
			.map((crew) => setProblem('crew', 'crews', 'names a crew that is not known here', 'choose crews that work from the list', crew)),
		...people
			.filter((person) => !may.people.some((one) => one.id === person))
			.map((person) => setProblem('person', 'people', 'names somebody who is not known here', 'choose people from the lists of your crews', person))
	];
}

function againProblems(open: readonly OpenAssignment[], crews: readonly string[], people: readonly string[], dueDay: string | null): readonly SetProblem[] {
	return open
		.filter(({ crew_id, person_id, due_day }) => due_day !== dueDay && ((crew_id !== null && crews.includes(crew_id)) || (person_id !== null && people.includes(person_id))))
		.map(({ crew_id, person_id }) =>
			setProblem('has-it', crew_id === null ? 'people' : 'crews', 'names somebody who has this set already', 'recall it first, or leave them out', crew_id ?? person_id ?? undefined)
		);
}

/** Takes an assignment back: learners see it no more, what they answered stays. Twice is as once. */
export async function recallAssignment(db: Database, who: Person, assignment: string, now: Date): Promise<Change> {
	return db.transaction().execute(async (transaction) => {
		const outcome = await recallOpen(transaction, who, assignment, now.toISOString());
		if (outcome === null) return NOT_FOUND;
		if (outcome.changed) await noteDeed(transaction, who, 'set-recalled', outcome.set, now, { assignment });
		return DONE;
	});
}
