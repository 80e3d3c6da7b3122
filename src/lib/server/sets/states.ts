/** Where everyone is in a set: what the trainer's page shows live. */
import { createHash } from 'node:crypto';
import { isPassed, type SetContent } from '#lib/flow/index.ts';
import { dayIn } from '../course/day.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import { assignedPeople, assignmentsOf, roundsOf, type RoundRow } from '../db/set-states.ts';
import type { Person } from '../people/who.ts';
import { findSet } from './make.ts';

/** Where one person is in one assignment. */
export interface PersonSetState {
	readonly person: string;
	readonly name: string;
	/** Personal number. */
	readonly number: string;
	/** `done`: a round is passed. */
	readonly state: 'not-started' | 'under-way' | 'done';
	/** Not done and the due day is over; or done after it. */
	readonly late: boolean;
	/** Of the last round that is over; null if none is. */
	readonly passed: boolean | null;
	/** Of the round at hand; of the passed one, once a round is passed. */
	readonly answered: number;
	/** Problems in a round. */
	readonly of: number;
	readonly right: number;
	/** Answers on the unsafe side. */
	readonly critical: number;
	/** The round that these numbers are of, from 0. */
	readonly round: number;
	/** When something was answered last, ISO 8601. */
	readonly lastAt: string | null;
}

/** An assignment and where its people are. */
export interface AssignmentState {
	readonly id: string;
	/** Name of the crew or the person. */
	readonly target: string;
	/** Id of the crew; null for a person's. */
	readonly crew: string | null;
	readonly dueDay: string | null;
	readonly recalled: boolean;
	/** When it was assigned, ISO 8601. */
	readonly at: string;
	readonly people: readonly PersonSetState[];
}

export interface SetStates {
	/** Another one whenever anything below is. */
	readonly stamp: string;
	readonly assignments: readonly AssignmentState[];
}

/** @returns where everyone is in a set, as far as they are somebody's to see; null if the set is not. */
export async function setStates(db: Database, who: Person, set: string, now: Date): Promise<SetStates | null> {
	const found = await findSet(db, who, set);
	const organisation = await findOrganisation(db, who.organisation);
	if (found === null || organisation === null) return null;
	const { zone } = organisation;
	const today = dayIn(zone, now);
	const rows = (await assignmentsOf(db, who, set)).filter((one) => one.crewArchivedAt === null);
	const ids = rows.map(({ id }) => id);
	const [people, rounds] = await Promise.all([assignedPeople(db, ids), roundsOf(db, ids, found.content.count)]);
	const roundsBy = Map.groupBy(rounds, (one) => `${one.assignment} ${one.person}`);
	const peopleBy = Map.groupBy(people, (one) => one.assignment);
	const assignments = rows.map((row): AssignmentState => ({
		id: row.id,
		target: row.crewName ?? row.personName ?? '',
		crew: row.crew,
		dueDay: row.dueDay,
		recalled: row.recalledAt !== null,
		at: row.at,
		people: (peopleBy.get(row.id) ?? []).map(({ person, name, number }) => ({
			person,
			name,
			number,
			...standingOf(found.content, roundsBy.get(`${row.id} ${person}`) ?? [], { dueDay: row.dueDay, zone, today })
		}))
	}));
	return { stamp: createHash('sha256').update(JSON.stringify(assignments)).digest('base64url'), assignments };
}

/** When something is due, and which day it is where the person works. */
export interface Due {
	readonly dueDay: string | null;
	/** IANA zone of the organisation. */
	readonly zone: string;
	/** YYYY-MM-DD in that zone. */
	readonly today: string;
}

/** @param rounds of one person in one assignment, in order. @returns where that person is: the same as `replaySet` says. */
export function standingOf(content: SetContent, rounds: readonly Omit<RoundRow, 'assignment' | 'person'>[], { dueDay, zone, today }: Due): Omit<PersonSetState, 'person' | 'name' | 'number'> {
	const { count, rule } = content;
	const over = rounds.filter((one) => one.answered >= count);
	const passed = over.find((one) => isPassed(rule, one));
	const last = rounds.at(-1);
	const at = passed ?? (last !== undefined && last.answered < count ? last : undefined);
	const finished = (): string => (passed === undefined ? today : dayIn(zone, new Date(passed.lastAt)));
	return {
		state: passed !== undefined ? 'done' : last === undefined ? 'not-started' : 'under-way',
		late: dueDay !== null && finished() > dueDay,
		passed: passed !== undefined ? true : over.length === 0 ? null : false,
		answered: at?.answered ?? 0,
		of: count,
		right: at?.right ?? 0,
		critical: at?.critical ?? 0,
		round: at?.round ?? over.length,
		lastAt: last?.lastAt ?? null
	};
}
