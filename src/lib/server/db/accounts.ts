/** Who may sign in, as employers look them up: staff whole, learners by what is typed. */
import { sql, type SqlBool } from 'kysely';
import type { Database } from './open.ts';
import type { PersonRow } from './people.ts';

/** @returns the staff of an organisation, by name; forgotten ones are left out. */
export async function staffRows(db: Database, organisation: string): Promise<readonly PersonRow[]> {
	return db
		.selectFrom('person')
		.selectAll()
		.where('organisation_id', '=', organisation)
		.where('role', 'in', ['trainer', 'employer'])
		.where('name', '!=', '')
		.orderBy('name')
		.orderBy('id')
		.execute();
}

/** Learners in whose name or number all words stand. @param words folded, none of them empty */
function fitting(db: Database, organisation: string, words: readonly string[]) {
	let query = db.selectFrom('training_state').where('training_state.organisation_id', '=', organisation);
	for (const word of words) query = query.where((eb) => sql<SqlBool>`${eb.ref('search')} like ${`%${word.replace(/[!%_]/g, '!$&')}%`} escape '!'`);
	return query;
}

/** @returns how many learners fit. @param words folded, none of them empty */
export async function countAccounts(db: Database, organisation: string, words: readonly string[]): Promise<number> {
	const { n } = await fitting(db, organisation, words)
		.select((eb) => eb.fn.countAll<number | string>().as('n'))
		.executeTakeFirstOrThrow();
	return Number(n);
}

/** @returns learners who fit, those who are there first, by name. @param words folded, none of them empty */
export async function accountsOf(db: Database, organisation: string, words: readonly string[], { from, most }: { readonly from: number; readonly most: number }): Promise<readonly PersonRow[]> {
	return fitting(db, organisation, words)
		.innerJoin('person', 'person.id', 'training_state.person_id')
		.selectAll('person')
		.orderBy('gone')
		.orderBy('sort_name')
		.orderBy('training_state.person_id')
		.limit(most)
		.offset(from)
		.execute();
}
