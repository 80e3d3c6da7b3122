import { auditOf } from '../db/audit.ts';
import type { Database } from '../db/open.ts';
import { peopleOf } from '../db/people.ts';
import { lockedAccounts } from './throttle.ts';
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

/** An event of the organisation, with names. */
export interface ToldEvent {
	readonly id: string;
	readonly kind: string;
	/** ISO 8601, UTC. */
	readonly at: string;
	readonly actor: string | null;
	readonly subject: string | null;
}

/** The order in which roles are listed. */
const ORDER: Readonly<Record<Role, number>> = { employer: 0, trainer: 1, learner: 2 };

/** @returns everyone of the employer's organisation: those who belong to it first, then by role and name. */
export async function listPeople(db: Database, employer: Person): Promise<readonly ListedPerson[]> {
	const people = await peopleOf(db, employer.organisation);
	const locked = await lockedAccounts(db, employer.organisation);
	return people
		.map((one) => ({
			id: one.id,
			name: one.name,
			role: one.role,
			signsInWith: one.email ?? one.personal_number ?? '',
			state: one.closed_at !== null ? ('closed' as const) : locked.has(one.id) ? ('locked' as const) : one.secret === null ? ('invited' as const) : ('active' as const),
			self: one.id === employer.id
		}))
		.sort((a, b) => Number(a.state === 'closed') - Number(b.state === 'closed') || ORDER[a.role] - ORDER[b.role]);
}

/** @returns the newest events of the employer's organisation, with the names of people as they are now. */
export async function recentEvents(db: Database, employer: Person, most: number): Promise<readonly ToldEvent[]> {
	const names = new Map((await peopleOf(db, employer.organisation)).map((one) => [one.id, one.name]));
	const rows = await auditOf(db, employer.organisation, most);
	return rows.map((row) => ({
		id: row.id,
		kind: row.kind,
		at: row.at,
		actor: names.get(row.actor_id ?? '') ?? null,
		subject: names.get(row.subject_id ?? '') ?? null
	}));
}
