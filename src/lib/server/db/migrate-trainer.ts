import { sql, type Kysely } from 'kysely';

/** Migration 0006: own scenarios, practice sets, what answers came to, paper, sign-offs. Released steps are never changed. */
export async function addTrainer(db: Kysely<unknown>): Promise<void> {
	await addScenarios(db);
	await addSets(db);
	await addOutcomes(db);
	await addPaper(db);
	await addSignOffs(db);
}

async function addScenarios(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('own_scenario')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('made_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('draft', 'text')
		.addColumn('revision', 'integer', (column) => column.notNull())
		.addColumn('changed_at', 'text', (column) => column.notNull())
		.addColumn('retired_at', 'text')
		.addColumn('created_at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('own_scenario_of_organisation').on('own_scenario').columns(['organisation_id', 'changed_at']).execute();
	await db.schema
		.createTable('own_scenario_version')
		.addColumn('scenario_id', 'text', (column) => column.notNull().references('own_scenario.id'))
		.addColumn('version', 'integer', (column) => column.notNull())
		.addColumn('document', 'text', (column) => column.notNull())
		.addColumn('published_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('at', 'text', (column) => column.notNull())
		.addPrimaryKeyConstraint('own_scenario_version_key', ['scenario_id', 'version'])
		.execute();
}

async function addSets(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('practice_set')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('made_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('name', 'text', (column) => column.notNull())
		.addColumn('content', 'text', (column) => column.notNull())
		.addColumn('archived_at', 'text')
		.addColumn('created_at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('practice_set_of_organisation').on('practice_set').columns(['organisation_id', 'created_at']).execute();
	await db.schema
		.createTable('set_assignment')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('set_id', 'text', (column) => column.notNull().references('practice_set.id'))
		.addColumn('crew_id', 'text', (column) => column.references('crew.id'))
		.addColumn('person_id', 'text', (column) => column.references('person.id'))
		.addColumn('seed', 'text', (column) => column.notNull())
		.addColumn('due_day', 'text')
		.addColumn('assigned_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('at', 'text', (column) => column.notNull())
		.addColumn('recalled_at', 'text')
		.execute();
	await db.schema.createIndex('set_assignment_of_set').on('set_assignment').column('set_id').execute();
	await db.schema.createIndex('set_assignment_of_crew').on('set_assignment').column('crew_id').execute();
	await db.schema.createIndex('set_assignment_of_person').on('set_assignment').column('person_id').execute();
	// Nobody has a set twice at the same time. Nulls are all different: each index sees its own kind of row.
	await db.schema.createIndex('set_of_crew_once').on('set_assignment').columns(['set_id', 'crew_id']).unique().where(sql.ref('recalled_at'), 'is', null).execute();
	await db.schema.createIndex('set_of_person_once').on('set_assignment').columns(['set_id', 'person_id']).unique().where(sql.ref('recalled_at'), 'is', null).execute();
	await db.schema
		.createTable('set_answer')
		.addColumn('attempt_id', 'text', (column) => column.primaryKey().references('attempt.id'))
		.addColumn('assignment_id', 'text', (column) => column.notNull().references('set_assignment.id'))
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('place', 'integer', (column) => column.notNull())
		.addColumn('all_right', 'integer', (column) => column.notNull())
		.addColumn('critical', 'integer', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.addUniqueConstraint('set_answer_order', ['assignment_id', 'person_id', 'place'])
		.execute();
}

async function addOutcomes(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('outcome')
		.addColumn('answer_id', 'text', (column) => column.notNull())
		.addColumn('ask', 'text', (column) => column.notNull())
		.addColumn('answerer_id', 'text', (column) => column.notNull().references('guest.id'))
		.addColumn('way', 'text', (column) => column.notNull())
		.addColumn('assignment_id', 'text')
		.addColumn('scenario_id', 'text', (column) => column.notNull())
		.addColumn('cell', 'text', (column) => column.notNull())
		.addColumn('skill', 'text', (column) => column.notNull())
		.addColumn('wrong', 'integer', (column) => column.notNull())
		.addColumn('critical', 'integer', (column) => column.notNull())
		.addColumn('slip', 'text', (column) => column.notNull())
		.addColumn('week', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.addPrimaryKeyConstraint('outcome_key', ['answer_id', 'ask'])
		.execute();
	// Each question of the crew's picture is answered from an index alone, one person after the other.
	await db.schema
		.createIndex('outcome_by_cell')
		.on('outcome')
		.columns(['answerer_id', 'cell', 'week', 'at', 'ask', 'wrong', 'critical', 'skill', 'scenario_id', 'assignment_id'])
		.execute();
	await db.schema
		.createIndex('outcome_wrong')
		.on('outcome')
		.columns(['answerer_id', 'slip', 'critical', 'at', 'scenario_id', 'assignment_id'])
		.where(sql.ref('wrong'), '=', sql.lit(1))
		.execute();
	await db.schema
		.createTable('done_once')
		.addColumn('name', 'text', (column) => column.primaryKey())
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
}

async function addPaper(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('paper_sheet')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('code', 'text', (column) => column.notNull().unique())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('set_id', 'text', (column) => column.notNull().references('practice_set.id'))
		.addColumn('made_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('copies', 'integer', (column) => column.notNull())
		.addColumn('alike', 'integer', (column) => column.notNull())
		.addColumn('seed', 'text', (column) => column.notNull())
		.addColumn('language', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('paper_sheet_of_set').on('paper_sheet').columns(['set_id', 'at']).execute();
	await db.schema
		.createTable('paper_answer')
		.addColumn('attempt_id', 'text', (column) => column.primaryKey().references('attempt.id'))
		.addColumn('sheet_id', 'text', (column) => column.notNull().references('paper_sheet.id'))
		.addColumn('copy', 'integer', (column) => column.notNull())
		.addColumn('place', 'integer', (column) => column.notNull())
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('typed_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('at', 'text', (column) => column.notNull())
		.addUniqueConstraint('paper_answer_once', ['sheet_id', 'copy', 'place', 'person_id'])
		.execute();
}

async function addSignOffs(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('sign_off')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('person_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('signer_id', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('capacity', 'text', (column) => column.notNull())
		.addColumn('record', 'text', (column) => column.notNull())
		.addColumn('record_hash', 'text', (column) => column.notNull())
		.addColumn('signed', 'text', (column) => column.notNull())
		.addColumn('language', 'text', (column) => column.notNull())
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('sign_off_of_person').on('sign_off').columns(['person_id', 'at']).execute();
}
