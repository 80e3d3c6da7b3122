import { Kysely, PostgresDialect, type CompiledQuery, type DatabaseConnection } from 'kysely';
import { Migrator } from 'kysely/migration';
import pg from 'pg';
import { migrations, type Engine } from './migrations.ts';
import type { Tables } from './schema.ts';
import { sqliteDialect } from './sqlite.ts';

/** The application's database, whichever of the two it is. */
export type Database = Kysely<Tables>;

/** Where the database is when nothing is said: one file beside the program. */
export const DEFAULT_ADDRESS = 'file:data/underfoot.sqlite';

/** Connections that one process keeps open to PostgreSQL. */
const POOL_SIZE = 8;

/** What stands in PostgreSQL for a zero character, which it takes in no text: a question that has one would be an error. */
const REPLACEMENT = '\ufffd';

/** @returns a parameter without zero characters. No text of ours is stored with one; people's may be looked up with one. */
function withoutZero(parameter: unknown): unknown {
	return typeof parameter === 'string' && parameter.includes('\0') ? parameter.replaceAll('\0', REPLACEMENT) : parameter;
}

/** Lets a connection to PostgreSQL take every text, as SQLite does. */
function withoutZeros(connection: DatabaseConnection): Promise<void> {
	const execute = connection.executeQuery.bind(connection);
	connection.executeQuery = <Row>(query: CompiledQuery, ...rest: [Parameters<DatabaseConnection['executeQuery']>[1]?]) =>
		execute<Row>({ ...query, parameters: query.parameters.map(withoutZero) }, ...rest);
	return Promise.resolve();
}

/** Which of the two databases an address names. @throws Error when it has another form */
export function engineOf(address: string): Engine {
	if (/^postgres(ql)?:\/\//.test(address)) return 'postgres';
	if (address.startsWith('file:')) return 'sqlite';
	throw new Error('DATABASE_URL must begin with postgres:// (a server) or file: (a SQLite file)');
}

/** Opens by address; the tables are as they were left. */
export function connect(address: string): { engine: Engine; db: Database } {
	const engine = engineOf(address);
	if (engine === 'postgres') {
		const pool = new pg.Pool({ connectionString: address, max: POOL_SIZE });
		// A connection that breaks while idle is replaced at the next query; unheard, it would end the process.
		pool.on('error', () => undefined);
		return { engine, db: new Kysely({ dialect: new PostgresDialect({ pool, onCreateConnection: withoutZeros }) }) };
	}
	const dialect = sqliteDialect(address.slice('file:'.length));
	return { engine, db: new Kysely({ dialect }) };
}

/**
 * Opens the database and brings its tables up to date.
 * @param address `file:PATH` for SQLite, `postgres://…` for PostgreSQL
 * @throws Error when the address has another form, the database cannot be reached, or a migration fails
 */
export async function openDatabase(address: string): Promise<Database> {
	const { engine, db } = connect(address);
	const provider = { getMigrations: () => Promise.resolve(migrations(engine)) };
	const { error } = await new Migrator({ db, provider }).migrateToLatest();
	if (error !== undefined) {
		await db.destroy();
		throw new Error('The tables of the database could not be brought up to date', { cause: error });
	}
	return db;
}
