import type { Kysely } from 'kysely';

/** Migration 0007: the chain of records. Released steps are never changed. */
export async function addRecords(db: Kysely<unknown>): Promise<void> {
	await addChain(db);
	await addNames(db);
	await addReadModels(db);
	await orderAudit(db);
	await findPeople(db);
}

async function addChain(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('record_head')
		.addColumn('organisation_id', 'text', (column) => column.primaryKey().references('organisation.id'))
		.addColumn('seq', 'integer', (column) => column.notNull())
		.addColumn('hash', 'text', (column) => column.notNull())
		.execute();
	await db.schema
		.createTable('record_entry')
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('seq', 'integer', (column) => column.notNull())
		.addColumn('kind', 'text', (column) => column.notNull())
		.addColumn('person_id', 'text', (column) => column.references('person.id'))
		.addColumn('at', 'text', (column) => column.notNull())
		.addColumn('payload', 'text', (column) => column.notNull())
		.addColumn('prev', 'text', (column) => column.notNull())
		.addColumn('hash', 'text', (column) => column.notNull())
		.addPrimaryKeyConstraint('record_entry_key', ['organisation_id', 'seq'])
		.execute();
	await db.schema.createIndex('record_entry_of_person').on('record_entry').columns(['person_id', 'seq']).execute();
	await db.schema.createIndex('record_entry_of_kind').on('record_entry').columns(['organisation_id', 'kind', 'seq']).execute();
	await db.schema
		.createTable('record_checkpoint')
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('size', 'integer', (column) => column.notNull())
		.addColumn('root', 'text', (column) => column.notNull())
		.addColumn('kid', 'text', (column) => column.notNull())
		.addColumn('token', 'text', (column) => column.notNull())
		.addColumn('edge', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.addPrimaryKeyConstraint('record_checkpoint_key', ['organisation_id', 'size'])
		.execute();
	await db.schema
		.createTable('signing_key')
		.addColumn('kid', 'text', (column) => column.primaryKey())
		.addColumn('use', 'text', (column) => column.notNull())
		.addColumn('alg', 'text', (column) => column.notNull())
		.addColumn('jwk', 'text', (column) => column.notNull())
		.addColumn('since', 'text', (column) => column.notNull())
		.addColumn('retired_at', 'text')
		.execute();
}

async function addNames(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('identity')
		.addColumn('commitment', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('salt', 'text', (column) => column.notNull())
		.addColumn('name', 'text', (column) => column.notNull())
		.addColumn('personal_number', 'text')
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('identity_of_person').on('identity').column('person_id').execute();
	await db.schema
		.createTable('certificate')
		.addColumn('code', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('record_id', 'text', (column) => column.notNull())
		.addColumn('status_index', 'integer', (column) => column.notNull())
		.addColumn('made_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('at', 'text', (column) => column.notNull())
		.addUniqueConstraint('certificate_of_record', ['organisation_id', 'record_id'])
		.addUniqueConstraint('certificate_status', ['organisation_id', 'status_index'])
		.execute();
}

async function addReadModels(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('training_state')
		.addColumn('person_id', 'text', (column) => column.primaryKey().references('person.id'))
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('gone', 'integer', (column) => column.notNull())
		.addColumn('sort_name', 'text', (column) => column.notNull())
		.addColumn('search', 'text', (column) => column.notNull())
		.addColumn('name_key', 'text', (column) => column.notNull())
		.addColumn('begun', 'integer', (column) => column.notNull())
		.addColumn('until', 'text')
		.addColumn('record_id', 'text')
		.addColumn('record_day', 'text')
		.addColumn('due', 'text')
		.addColumn('detail', 'text', (column) => column.notNull())
		.addColumn('erased', 'integer', (column) => column.notNull())
		.execute();
	// Whatever a list asks stands in either index, so that no row is looked up before those that are shown.
	await db.schema
		.createIndex('training_state_by_name')
		.on('training_state')
		.columns(['organisation_id', 'gone', 'sort_name', 'person_id', 'until', 'begun', 'search'])
		.execute();
	await db.schema
		.createIndex('training_state_by_end')
		.on('training_state')
		.columns(['organisation_id', 'gone', 'until', 'sort_name', 'person_id', 'begun', 'search'])
		.execute();
	await db.schema.createIndex('training_state_by_due').on('training_state').columns(['organisation_id', 'gone', 'due', 'sort_name', 'person_id']).execute();
	await db.schema.createIndex('training_state_by_key').on('training_state').columns(['organisation_id', 'name_key']).execute();
	await db.schema
		.createTable('record_settings')
		.addColumn('organisation_id', 'text', (column) => column.primaryKey().references('organisation.id'))
		.addColumn('validity_months', 'integer')
		.addColumn('soon_days', 'integer', (column) => column.notNull())
		.addColumn('keep_months', 'integer')
		.addColumn('changed_at', 'text', (column) => column.notNull())
		.execute();
	await db.schema
		.createTable('job_report')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('job', 'text', (column) => column.notNull())
		.addColumn('organisation_id', 'text', (column) => column.references('organisation.id'))
		.addColumn('began_at', 'text', (column) => column.notNull())
		.addColumn('ended_at', 'text', (column) => column.notNull())
		.addColumn('outcome', 'text', (column) => column.notNull())
		.addColumn('detail', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('job_report_of_job').on('job_report').columns(['job', 'organisation_id', 'ended_at']).execute();
}

/**
 * What happened is read newest first: all of it, what one person did, what was done to one, and one kind. Of two that
 * look as good, SQLite takes the index that was made first: the most selective ones come first.
 */
async function orderAudit(db: Kysely<unknown>): Promise<void> {
	await db.schema.dropIndex('audit_of_organisation').execute();
	await db.schema.createIndex('audit_by_subject').on('audit').columns(['organisation_id', 'subject_id', 'at', 'id']).execute();
	await db.schema.createIndex('audit_by_actor').on('audit').columns(['organisation_id', 'actor_id', 'at', 'id', 'kind']).execute();
	await db.schema.createIndex('audit_by_kind').on('audit').columns(['organisation_id', 'kind', 'at', 'id']).execute();
	await db.schema.createIndex('audit_in_order').on('audit').columns(['organisation_id', 'at', 'id']).execute();
}

/** Whose signature stands on kept records is asked before a name is forgotten; staff, and who is there or has left, are found without a look at everybody. */
async function findPeople(db: Kysely<unknown>): Promise<void> {
	// Pages of people in the order of their ids, and some people of an organisation by id: by any other index SQLite reads everybody.
	await db.schema.createIndex('person_of_organisation').on('person').columns(['organisation_id', 'id']).execute();
	await db.schema.createIndex('person_by_role').on('person').columns(['organisation_id', 'role', 'closed_at', 'id']).execute();
	await db.schema.createIndex('sign_off_of_signer').on('sign_off').column('signer_id').execute();
	await db.schema.createIndex('check_opening_of_trainer').on('check_opening').column('trainer_id').execute();
}
