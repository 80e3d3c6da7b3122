import type { Kysely } from 'kysely';

/** Migration 0005: pass rules that organisations make, and what their judges reviewed. Released steps are never changed. */
export async function addPassRules(db: Kysely<unknown>): Promise<void> {
	await db.schema
		.createTable('own_pass_rule')
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('id', 'text', (column) => column.notNull())
		.addColumn('version', 'integer', (column) => column.notNull())
		.addColumn('rule', 'text', (column) => column.notNull())
		.addColumn('made_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('at', 'text', (column) => column.notNull())
		.addPrimaryKeyConstraint('own_pass_rule_key', ['organisation_id', 'id', 'version'])
		.execute();
	await db.schema
		.createTable('judges_review')
		.addColumn('id', 'text', (column) => column.primaryKey())
		.addColumn('organisation_id', 'text', (column) => column.notNull().references('organisation.id'))
		.addColumn('rule_id', 'text', (column) => column.notNull())
		.addColumn('rule_version', 'integer', (column) => column.notNull())
		.addColumn('date', 'text', (column) => column.notNull())
		.addColumn('judges', 'text', (column) => column.notNull())
		.addColumn('document', 'text', (column) => column.notNull())
		.addColumn('entered_by', 'text', (column) => column.notNull().references('person.id'))
		.addColumn('at', 'text', (column) => column.notNull())
		.execute();
	await db.schema.createIndex('judges_review_of_rule').on('judges_review').columns(['organisation_id', 'rule_id', 'rule_version', 'at']).execute();
}
