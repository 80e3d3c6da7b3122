import type { Database } from '../db/open.ts';
import { accountsOf, countAccounts, staffRows } from '../db/accounts.ts';
import type { PersonRow } from '../db/people.ts';
import { folded } from '../records/folded.ts';
import { LONGEST } from './fields.ts';
import { lockedAmong } from './throttle.ts';
import type { Person, Role } from './who.ts';

/** A person as the employer sees them. */
export interface ListedPerson {
	readonly id: string;
	readonly name: string;
	readonly role: Role;
	/** Personal number or e-mail. */
	readonly signsInWith: string;
	readonly state: 'active' | 'invited' | 'locked' | 'closed';
	/** The employer who looks. */
	readonly self: boolean;
}

/** Learners of one page. */
const PAGE = 25;

/** Words of a search that are looked at. @reason more than any name and number have; each costs a look at all people */
const MOST_WORDS = 8;

function listedPerson(row: PersonRow, locked: ReadonlySet<string>, employer: Person): ListedPerson {
	const state = row.closed_at !== null ? 'closed' : locked.has(row.id) ? 'locked' : row.secret === null ? 'invited' : 'active';
	return { id: row.id, name: row.name, role: row.role, signsInWith: row.email ?? row.personal_number ?? '', state, self: row.id === employer.id };
}

async function listed(db: Database, rows: readonly PersonRow[], employer: Person): Promise<readonly ListedPerson[]> {
	const locked = await lockedAmong(db, rows.map(({ id }) => id));
	return rows.map((row) => listedPerson(row, locked, employer));
}

/** @returns the staff of the employer's organisation: those who belong to it first, employers before trainers, by name. */
export async function listStaff(db: Database, employer: Person): Promise<readonly ListedPerson[]> {
	const staff = await listed(db, await staffRows(db, employer.organisation), employer);
	return staff.toSorted((a, b) => Number(a.state === 'closed') - Number(b.state === 'closed') || Number(a.role === 'trainer') - Number(b.role === 'trainer'));
}

/** Learners whose name or number fits what was typed. */
export interface FoundLearners {
	readonly people: readonly ListedPerson[];
	readonly count: number;
	/** From 1; the last one where a later was asked for. */
	readonly page: number;
	/** At least 1. */
	readonly pages: number;
}

/**
 * Learners of the employer's organisation whose accounts are asked for: those who are there first, by name. There may be
 * a hundred thousand, so that nothing typed finds nobody.
 * @param page from 1
 */
export async function findLearners(db: Database, employer: Person, typed: string, page: number): Promise<FoundLearners> {
	const words = folded(typed.slice(0, LONGEST.name)).split(/[\s,;]+/u).filter((word) => word !== '').slice(0, MOST_WORDS);
	if (words.length === 0) return { people: [], count: 0, page: 1, pages: 1 };
	const count = await countAccounts(db, employer.organisation, words);
	if (count === 0) return { people: [], count, page: 1, pages: 1 };
	const pages = Math.ceil(count / PAGE);
	const shown = Math.min(Math.max(1, page), pages);
	const rows = await accountsOf(db, employer.organisation, words, { from: (shown - 1) * PAGE, most: PAGE });
	return { people: await listed(db, rows, employer), count, page: shown, pages };
}
