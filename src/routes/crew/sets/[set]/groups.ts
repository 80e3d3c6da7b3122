/** Where everyone is in a set, as the page lays it out: a group for each crew, one for all single people. */
import type { AssignmentState, PersonSetState } from '#lib/server/index.ts';

/** One person in one assignment. */
export interface Row extends PersonSetState {
	readonly assignment: string;
	readonly dueDay: string | null;
}

/** People who are shown in one table. */
export interface Group {
	/** Of the assignment; `single` for all people to whom the set was assigned one by one. */
	readonly id: string;
	/** Name of the crew; null for single people. */
	readonly name: string | null;
	readonly dueDay: string | null;
	readonly rows: readonly Row[];
}

/** How many are how far. */
export interface Counts {
	readonly 'not-started': number;
	readonly 'under-way': number;
	readonly done: number;
	/** Of all of them. */
	readonly late: number;
}

function rowsOf({ id, dueDay, people }: AssignmentState): readonly Row[] {
	return people.map((one) => ({ ...one, assignment: id, dueDay }));
}

/** @returns the groups of assignments that are open. */
export function groupsOf(assignments: readonly AssignmentState[]): readonly Group[] {
	const open = assignments.filter((one) => !one.recalled);
	const single = open.filter((one) => one.crew === null).flatMap(rowsOf);
	return [
		...open.filter((one) => one.crew !== null).map((one) => ({ id: one.id, name: one.target, dueDay: one.dueDay, rows: rowsOf(one) })),
		...(single.length > 0 ? [{ id: 'single', name: null, dueDay: null, rows: single.toSorted((a, b) => a.name.localeCompare(b.name)) }] : [])
	];
}

/** @returns how many are how far. */
export function countsOf(people: readonly Pick<PersonSetState, 'state' | 'late'>[]): Counts {
	const inState = (state: PersonSetState['state']): number => people.filter((one) => one.state === state).length;
	return { 'not-started': inState('not-started'), 'under-way': inState('under-way'), done: inState('done'), late: people.filter((one) => one.late).length };
}
