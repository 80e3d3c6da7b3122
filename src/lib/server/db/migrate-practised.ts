import type { Kysely } from 'kysely';

/** Migration 0004: what guests who joined had practised, graded again. Released steps are never changed. */
export async function addPractised(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('practised')
		.addColumn('attempt_id', 'text', (column) => column.primaryKey().references('attempt.id'))
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('all_right', 'integer', (column) => column.notNull())
		.addColumn('regraded', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('practised_of_person').on('practised').column('person_id').execute();
}
