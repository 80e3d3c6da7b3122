/** How the page of a set lays out who is how far. */
import { expect, test } from 'vitest';
import type { AssignmentState, PersonSetState } from '#lib/server/index.ts';
import { countsOf, groupsOf } from '../../../../../src/routes/crew/sets/[set]/groups.ts';

function person(name: string, state: PersonSetState['state'], late = false): PersonSetState {
	return { person: name, name, number: 'K-1', state, late, passed: null, answered: 0, of: 6, right: 0, critical: 0, round: 0, lastAt: null };
}

function assigned(id: string, target: string, of: Partial<AssignmentState>): AssignmentState {
	return { id, target, crew: null, dueDay: null, recalled: false, at: '2026-11-30T08:00:00.000Z', people: [], ...of };
}

const ASSIGNMENTS = [
	assigned('a', 'Sefa Lindt', { dueDay: '2026-12-04', people: [person('Sefa Lindt', 'done')] }),
	assigned('b', 'Bridges North', { crew: 'north', people: [person('Dario Penn', 'not-started', true), person('Marit Oslo', 'under-way')] }),
	assigned('c', 'Ada Reed', { people: [person('Ada Reed', 'not-started')] }),
	assigned('d', 'Night shift', { crew: 'night', recalled: true, people: [person('Tomas Eik', 'done')] }),
	assigned('e', 'Day shift', { crew: 'day' })
];

test('each crew has a group, all single people have one, and what was recalled has none', () => {
	const groups = groupsOf(ASSIGNMENTS);
	expect(groups.map(({ id, name, rows }) => [id, name, rows.map((row) => row.name)])).toEqual([
		['b', 'Bridges North', ['Dario Penn', 'Marit Oslo']],
		['e', 'Day shift', []],
		['single', null, ['Ada Reed', 'Sefa Lindt']]
	]);
	expect(groups.at(-1)?.rows.map(({ assignment, dueDay }) => [assignment, dueDay])).toEqual([['c', null], ['a', '2026-12-04']]);
});

test('counts who is how far, and apart from that who is late', () => {
	expect(countsOf(ASSIGNMENTS.flatMap((one) => one.people))).toEqual({ 'not-started': 2, 'under-way': 1, done: 2, late: 1 });
	expect(countsOf([])).toEqual({ 'not-started': 0, 'under-way': 0, done: 0, late: 0 });
});
