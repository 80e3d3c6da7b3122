import type { Kysely } from 'kysely';

/** Migration 0002: organisations, their people and crews, sign-in. Released steps are never changed. */
export async function addPeople(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('organisation')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('name', 'text', (column) => column.notNull())
		.addColumn('rules', 'text', (column) => column.notNull())
		.addColumn('units', 'text', (column) => column.notNull())
		.addColumn('language', 'text', (column) => column.notNull())
		.addColumn('zone', 'text', (column) => column.notNull())
		.addColumn('pass_rule', 'text', (column) => column.notNull())
		.addColumn('created_at', 'text', (column) => column.notNull())
		.execute();
	await db.schema
		.createTable('person')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('answerer_id', 'text', (column) => column.notNull().unique().references('guest.id'))
		.addColumn('role', 'text', (column) => column.notNull())
		.addColumn('name', 'text', (column) => column.notNull())
		.addColumn('personal_number', 'text')
		.addColumn('email', 'text', (column) => column.unique())
		.addColumn('secret', 'text')
		.addColumn('language', 'text')
		.addColumn('closed_at', 'text')
		.addColumn('created_at', 'text', (column) => column.notNull())
		.addUniqueConstraint('person_number', ['organisation_id', 'personal_number'])
		.execute();
	await db.schema.createIndex('person_by_number').on('person').column('personal_number').execute();
	await db.schema
		.createTable('crew')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('name', 'text', (column) => column.notNull())
		.addColumn('join_code', 'text', (column) => column.notNull().unique())
		.addColumn('archived_at', 'text')
		.addColumn('created_at', 'text', (column) => column.notNull())
		.execute();
	for (const table of ['crew_learner', 'crew_trainer']) {
		await db.schema
			.createTable(table)
			.addColumn('crew_id', 'text', (column) => column.notNull().references('crew.id'))
			.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
			.addColumn('since', 'text', (column) => column.notNull())
			.addPrimaryKeyConstraint(`${table}_key`, ['crew_id', 'person_id'])
			.execute();
		await db.schema.createIndex(`${table}_by_person`).on(table).column('person_id').execute();
	}
	await db.schema
		.createTable('session')
		.addColumn('token_hash', 'text', (column) => column.primaryKey())
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('created_at', 'text', (column) => column.notNull())
		.addColumn('seen_at', 'text', (column) => column.notNull())
		.addColumn('expires_at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('session_of_person').on('session').column('person_id').execute();
	await db.schema
		.createTable('enrolment')
		.addColumn('code_hash', 'text', (column) => column.primaryKey())
		.addColumn('kind', 'text', (column) => column.notNull())
		.addColumn('person_id', 'text', (column) => column.references('person.id'))
		.addColumn('created_at', 'text', (column) => column.notNull())
		.addColumn('expires_at', 'text', (column) => column.notNull())
		.addColumn('used_at', 'text')
		.execute();
	await db.schema
		.createTable('throttle')
		.addColumn('key', 'text', (column) => column.primaryKey())
		.addColumn('failures', 'integer', (column) => column.notNull())
		.addColumn('last_at', 'text', (column) => column.notNull())
		.addColumn('wait_until', 'text')
		.execute();
	await db.schema
		.createTable('audit')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text')
		.addColumn('actor_id', 'text')
		.addColumn('kind', 'text', (column) => column.notNull())
		.addColumn('subject_id', 'text')
		.addColumn('detail', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('audit_of_organisation').on('audit').columns(['organisation_id', 'at']).execute();
	await db.schema
		.createTable('joined_guest')
		.addColumn('guest_id', 'text', (column) => column.primaryKey().references('guest.id'))
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('joined_guest_of_person').on('joined_guest').column('person_id').execute();
}
