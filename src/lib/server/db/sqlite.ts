import { mkdirSync } from 'node:fs';
import { dirname } from 'node:path';
import { DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite';
import { SqliteDialect, type SqliteDatabase, type SqliteStatement } from 'kysely';

/** Statements kept ready for their next use; the application has far fewer. */
const KEPT_STATEMENTS = 200;

/** How long a writer waits for another process's transaction, ms. */
const BUSY_TIMEOUT = 5000;

/** What node:sqlite takes: it refuses `undefined`, and would take a Date for a list of named parameters. */
function bind(value: unknown): SQLInputValue {
	if (value === undefined || value === null) return null;
	if (typeof value === 'boolean') return Number(value);
	if (value instanceof Date) return value.toISOString();
	if (typeof value === 'string' || typeof value === 'number' || typeof value === 'bigint') return value;
	if (value instanceof Uint8Array) return value;
	throw new TypeError(`SQLite cannot store a value of type ${typeof value}`);
}

function statement(prepared: StatementSync): SqliteStatement {
	return {
		reader: prepared.columns().length > 0,
		all: (parameters) => prepared.all(...parameters.map(bind)),
		run: (parameters) => prepared.run(...parameters.map(bind)),
		iterate: (parameters) => prepared.iterate(...parameters.map(bind))
	};
}

/**
 * Where the disk is full, SQLite rolls a transaction back by itself. To roll back once more would be an error, and hide
 * the one that says why.
 */
function rollback(database: DatabaseSync): SqliteStatement {
	const made = statement(database.prepare('rollback'));
	return { ...made, run: (parameters) => (database.isTransaction ? made.run(parameters) : { changes: 0, lastInsertRowid: 0 }) };
}

/** Node's own SQLite in the form that Kysely's dialect expects. */
function forKysely(database: DatabaseSync, begin = 'begin immediate'): SqliteDatabase {
	const kept = new Map<string, SqliteStatement>();
	return {
		close: () => database.close(),
		prepare(sql) {
			// A plain `begin` takes the write lock only at the first write, and then fails at once when another
			// process has written since; asking for it at the start makes the timeout count.
			const text = sql === 'begin' ? begin : sql;
			const known = kept.get(text);
			if (known !== undefined) return known;
			const made = text === 'rollback' ? rollback(database) : statement(database.prepare(text));
			if (kept.size >= KEPT_STATEMENTS) kept.clear();
			kept.set(text, made);
			return made;
		}
	};
}

/**
 * A dialect over one SQLite file, made with its folder if missing.
 * Every commit is on the disk before it returns (WAL, synchronous FULL).
 * @param path file, or `:memory:`
 */
export function sqliteDialect(path: string): SqliteDialect {
	if (path !== ':memory:') mkdirSync(dirname(path), { recursive: true });
	const database = new DatabaseSync(path, {
		enableForeignKeyConstraints: true,
		timeout: BUSY_TIMEOUT
	});
	// recursive_triggers: without it, INSERT OR REPLACE would delete a row past the triggers that forbid it.
	// secure_delete: a name that is forgotten is overwritten in the file too.
	database.exec(
		'PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL; PRAGMA recursive_triggers = ON; PRAGMA secure_delete = ON;'
	);
	return new SqliteDialect({ database: forKysely(database) });
}

/**
 * A dialect over one SQLite file that is only read, by a connection of its own: writers do not wait for it. All that one
 * transaction reads is of one moment.
 * @throws Error where there is no such file
 */
export function sqliteReader(path: string): SqliteDialect {
	return new SqliteDialect({ database: forKysely(new DatabaseSync(path, { readOnly: true, timeout: BUSY_TIMEOUT }), 'begin deferred') });
}
