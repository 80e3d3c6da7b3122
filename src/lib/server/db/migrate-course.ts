import type { Kysely } from 'kysely';

/** Migration 0003: what people do in the course. Released steps are never changed. */
export async function addCourse(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('course_start')
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('course', 'text', (column) => column.notNull())
		.addColumn('version', 'integer', (column) => column.notNull())
		.addColumn('seed', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.addPrimaryKeyConstraint('course_start_key', ['person_id', 'course', 'version'])
		.execute();
	await db.schema
		.createTable('course_event')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('seq', 'integer', (column) => column.notNull())
		.addColumn('lesson', 'text', (column) => column.notNull())
		.addColumn('kind', 'text', (column) => column.notNull())
		.addColumn('sent', 'text', (column) => column.notNull())
		.addColumn('payload', 'text', (column) => column.notNull())
		.addColumn('day', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.addUniqueConstraint('course_event_order', ['person_id', 'seq'])
		.execute();
	await db.schema
		.createTable('check_try')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('lesson', 'text', (column) => column.notNull())
		.addColumn('nth', 'integer', (column) => column.notNull())
		.addColumn('rule', 'text', (column) => column.notNull())
		.addColumn('seed', 'text', (column) => column.notNull())
		.addColumn('language', 'text', (column) => column.notNull())
		.addColumn('supervision', 'text')
		.addColumn('day', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.addUniqueConstraint('check_try_order', ['person_id', 'lesson', 'nth'])
		.execute();
	await db.schema
		.createTable('check_event')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('check_id', 'text', (column) => column.notNull().references('check_try.id'))
		.addColumn('seq', 'integer', (column) => column.notNull())
		.addColumn('kind', 'text', (column) => column.notNull())
		.addColumn('sent', 'text', (column) => column.notNull())
		.addColumn('payload', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.addUniqueConstraint('check_event_order', ['check_id', 'seq'])
		.execute();
	await db.schema
		.createTable('check_opening')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('trainer_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('place', 'text', (column) => column.notNull())
		.addColumn('identified', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.addColumn('expires_at', 'text', (column) => column.notNull())
		.addColumn('check_id', 'text', (column) => column.references('check_try.id'))
		.execute();
	await db.schema.createIndex('check_opening_of_person').on('check_opening').columns(['person_id', 'at']).execute();
	await db.schema
		.createTable('check_unlock')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('trainer_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('after', 'integer', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('check_unlock_of_person').on('check_unlock').columns(['person_id', 'at']).execute();
	await db.schema
		.createTable('completion')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('course', 'text', (column) => column.notNull())
		.addColumn('version', 'integer', (column) => column.notNull())
		.addColumn('check_id', 'text', (column) => column.notNull().unique().references('check_try.id'))
		.addColumn('supervised', 'integer', (column) => column.notNull())
		.addColumn('language', 'text', (column) => column.notNull())
		.addColumn('day', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('completion_of_person').on('completion').column('person_id').execute();
	await db.schema.createIndex('completion_of_organisation').on('completion').columns(['organisation_id', 'at']).execute();
}
