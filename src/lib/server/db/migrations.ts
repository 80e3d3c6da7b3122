import { sql, type Kysely } from 'kysely';
import type { Migration } from 'kysely/migration';
import { addCourse } from './migrate-course.ts';
import { addPassRules } from './migrate-pass-rules.ts';
import { addPeople } from './migrate-people.ts';
import { addRecords } from './migrate-records.ts';
import { addPractised } from './migrate-practised.ts';
import { addTrainer } from './migrate-trainer.ts';

/** Which of the two databases a migration runs on. */
export type Engine = 'sqlite' | 'postgres';

/** Forbids changing and deleting rows of a table, on either database, with a message that names the table. */
async function makeInsertOnly(db: Kysely<unknown>, engine: Engine, table: string): Promise<void> {
	const message = sql.lit(`${table} is insert-only`);
	if (engine === 'sqlite') {
		for (const event of ['update', 'delete']) {
			await sql`
				create trigger ${sql.id(`${table}_no_${event}`)} before ${sql.raw(event)} on ${sql.id(table)}
				begin select raise(abort, ${message}); end
			`.execute(db);
		}
		return;
	}
	const refuse = sql.id(`${table}_refuse_change`);
	await sql`
		create function ${refuse}() returns trigger language plpgsql as $$
		begin raise exception ${message}; end
		$$
	`.execute(db);
	await sql`
		create trigger ${sql.id(`${table}_insert_only`)}
		before update or delete or truncate on ${sql.id(table)}
		for each statement execute function ${refuse}()
	`.execute(db);
}

/** Forbids changing rows of a table; deleting them stays allowed. */
async function refuseUpdates(db: Kysely<unknown>, engine: Engine, table: string): Promise<void> {
	const message = sql.lit(`${table} is not changed`);
	if (engine === 'sqlite') {
		await sql`
			create trigger ${sql.id(`${table}_no_update`)} before update on ${sql.id(table)}
			begin select raise(abort, ${message}); end
		`.execute(db);
		return;
	}
	const refuse = sql.id(`${table}_refuse_update`);
	await sql`
		create function ${refuse}() returns trigger language plpgsql as $$
		begin raise exception ${message}; end
		$$
	`.execute(db);
	await sql`
		create trigger ${sql.id(`${table}_not_changed`)} before update on ${sql.id(table)}
		for each statement execute function ${refuse}()
	`.execute(db);
}

/**
 * Every step that the tables have gone through, in the order of the names. A step that has been released is
 * never changed: what it did wrong, a later step puts right.
 */
export function migrations(engine: Engine): Record<string, Migration> {
	return {
		'0001-guests-and-attempts': {
			async up(db: Kysely<unknown>) {
				await db.schema
					.createTable('guest')
					.addColumn('id', 'text', (column) => column.primaryKey())
					.addColumn('token_hash', 'text', (column) => column.notNull().unique())
					.addColumn('created_at', 'text', (column) => column.notNull())
					.execute();
				await db.schema
					.createTable('attempt')
					.addColumn('id', 'text', (column) => column.primaryKey())
					.addColumn('guest_id', 'text', (column) => column.notNull().references('guest.id'))
					.addColumn('scenario_id', 'text', (column) => column.notNull())
					.addColumn('scenario_version', 'integer', (column) => column.notNull())
					.addColumn('draw_version', 'integer', (column) => column.notNull())
					.addColumn('slip_set_version', 'integer', (column) => column.notNull())
					.addColumn('engine_version', 'text', (column) => column.notNull())
					.addColumn('seed', 'text', (column) => column.notNull())
					.addColumn('accepted_try', 'integer', (column) => column.notNull())
					.addColumn('plan', 'text', (column) => column.notNull())
					.addColumn('answers', 'text', (column) => column.notNull())
					.addColumn('result', 'text', (column) => column.notNull())
					.addColumn('language', 'text', (column) => column.notNull())
					.addColumn('units', 'text', (column) => column.notNull())
					.addColumn('created_at', 'text', (column) => column.notNull())
					.execute();
				await db.schema
					.createIndex('attempt_of_guest')
					.on('attempt')
					.columns(['guest_id', 'created_at'])
					.execute();
				await makeInsertOnly(db, engine, 'attempt');
			}
		},
		'0002-people': {
			async up(db: Kysely<unknown>) {
				await addPeople(db);
				await makeInsertOnly(db, engine, 'audit');
				await makeInsertOnly(db, engine, 'joined_guest');
			}
		},
		'0003-course': {
			async up(db: Kysely<unknown>) {
				await addCourse(db);
				for (const table of ['course_start', 'course_event', 'check_try', 'check_event', 'check_unlock', 'completion']) {
					await makeInsertOnly(db, engine, table);
				}
			}
		},
		'0004-practised': {
			async up(db: Kysely<unknown>) {
				await addPractised(db);
				await makeInsertOnly(db, engine, 'practised');
			}
		},
		'0005-pass-rules': {
			async up(db: Kysely<unknown>) {
				await addPassRules(db);
				await makeInsertOnly(db, engine, 'own_pass_rule');
				await makeInsertOnly(db, engine, 'judges_review');
			}
		},
		'0006-trainer': {
			async up(db: Kysely<unknown>) {
				await addTrainer(db);
				for (const table of ['own_scenario_version', 'set_answer', 'paper_answer', 'sign_off']) {
					await makeInsertOnly(db, engine, table);
				}
			}
		},
		'0007-records': {
			async up(db: Kysely<unknown>) {
				await addRecords(db);
				for (const table of ['record_entry', 'record_checkpoint', 'certificate', 'job_report']) {
					await makeInsertOnly(db, engine, table);
				}
				// Names can be forgotten, so rows of this one may go.
				await refuseUpdates(db, engine, 'identity');
			}
		}
	};
}
