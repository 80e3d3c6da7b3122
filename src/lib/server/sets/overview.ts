/** All sets with how far their people are: the trainer's list. */
import { dayIn } from '../course/day.ts';
import type { Database } from '../db/open.ts';
import { findOrganisation } from '../db/people.ts';
import { openOf } from '../db/set-overview.ts';
import { assignedPeople, roundsOf } from '../db/set-states.ts';
import type { Person } from '../people/who.ts';
import { listSets, type ListedSet } from './make.ts';
import { standingOf } from './states.ts';

/** An assignment in the list of sets. */
export interface OpenAssignmentBrief {
	/** Name of the crew or the person. */
	readonly target: string;
	readonly dueDay: string | null;
	/** Whether the due day is over at the site. */
	readonly over: boolean;
}

/** A set in the list, with to whom it is assigned and how many of them are how far. */
export interface SetBrief extends ListedSet {
	/** None for a set that is put away. */
	readonly assigned: readonly OpenAssignmentBrief[];
	/** Of all who have it; somebody who has it twice counts twice. */
	readonly counts: { readonly 'not-started': number; readonly 'under-way': number; readonly done: number; readonly late: number };
}

/** @returns the sets that somebody may see, those in use first, each with its open assignments. */
export async function overviewOf(db: Database, who: Person, now: Date): Promise<readonly SetBrief[]> {
	const [sets, open, organisation] = await Promise.all([listSets(db, who), openOf(db, who), findOrganisation(db, who.organisation)]);
	if (organisation === null) throw new Error('A person without an organisation');
	const { zone } = organisation;
	const today = dayIn(zone, now);
	const openBy = Map.groupBy(open, (one) => one.set);
	const people = await assignedPeople(db, open.map((one) => one.id));
	const peopleBy = Map.groupBy(people, (one) => one.assignment);
	return Promise.all(
		sets.map(async (set): Promise<SetBrief> => {
			const assigned = openBy.get(set.id) ?? [];
			const rounds = await roundsOf(db, assigned.map((one) => one.id), set.content.count);
			const roundsBy = Map.groupBy(rounds, (one) => `${one.assignment} ${one.person}`);
			const standings = assigned.flatMap(({ id, dueDay }) =>
				(peopleBy.get(id) ?? []).map(({ person }) => standingOf(set.content, roundsBy.get(`${id} ${person}`) ?? [], { dueDay, zone, today }))
			);
			const inState = (state: (typeof standings)[number]['state']): number => standings.filter((one) => one.state === state).length;
			return {
				...set,
				assigned: assigned.map(({ target, dueDay }) => ({ target, dueDay, over: dueDay !== null && dueDay < today })),
				counts: { 'not-started': inState('not-started'), 'under-way': inState('under-way'), done: inState('done'), late: standings.filter((one) => one.late).length }
			};
		})
	);
}
