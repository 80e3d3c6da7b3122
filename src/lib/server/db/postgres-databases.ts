/** Whole databases of a PostgreSQL server: a moment of one held fast, new ones made, and one put in the place of another. */
import { sql } from 'kysely';
import pg from 'pg';
import type { Database } from './open.ts';

/**
 * Holds one moment of the database fast while something reads it.
 * @param read is given the name of the moment, for other connections, and a connection that sees it
 */
export async function atOneMoment<Value>(db: Database, read: (snapshot: string, transaction: Database) => Promise<Value>): Promise<Value> {
	return db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only').execute(async (transaction) => {
		const { rows } = await sql<{ name: string }>`select pg_export_snapshot() as name`.execute(transaction);
		return read(rows[0]?.name ?? '', transaction);
	});
}

/** @returns the address of another database on the same server. */
export function siblingAddress(address: string, name: string): string {
	const url = new URL(address);
	url.pathname = `/${encodeURIComponent(name)}`;
	return url.href;
}

/** @returns the name of the database that an address leads to. */
export function databaseName(address: string): string {
	const { pathname, username } = new URL(address);
	const name = decodeURIComponent(pathname.slice(1));
	// PostgreSQL takes the user's name where none is given. https://www.postgresql.org/docs/current/libpq-connect.html
	return name === '' ? decodeURIComponent(username) : name;
}

/** Runs statements about whole databases, from one that none of them is about. */
async function onServer(address: string, statements: readonly string[]): Promise<void> {
	// Both are made with every server, and nobody stays connected to the second.
	const client = new pg.Client({ connectionString: siblingAddress(address, databaseName(address) === 'postgres' ? 'template1' : 'postgres') });
	await client.connect();
	try {
		for (const statement of statements) await client.query(statement);
	} finally {
		await client.end();
	}
}

const quoted = (name: string): string => pg.escapeIdentifier(name);

/** Whether there is a database of this address. */
export async function isThere(address: string): Promise<boolean> {
	const client = new pg.Client({ connectionString: address });
	try {
		await client.connect();
		return true;
	} catch (error) {
		// invalid_catalog_name. https://www.postgresql.org/docs/current/errcodes-appendix.html
		if (error instanceof Error && 'code' in error && error.code === '3D000') return false;
		throw error;
	} finally {
		await client.end();
	}
}

/** Whether anybody is connected to the database that somebody of ours is connected to. */
export async function othersConnected(db: Database): Promise<boolean> {
	const { rows } = await sql`select 1 from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid() and backend_type = 'client backend' limit 1`.execute(db);
	return rows.length > 0;
}

/** Makes an empty database on the server of an address. */
export function makeDatabase(address: string, name: string): Promise<void> {
	return onServer(address, [`create database ${quoted(name)} template template0 encoding 'UTF8'`]);
}

/** Drops a database that a restore has made, and that was not put in place. */
export function dropDatabase(address: string, name: string): Promise<void> {
	return onServer(address, [`drop database if exists ${quoted(name)}`]);
}

/**
 * Puts one database in the place of the one of an address, which is kept under another name.
 * @param aside the name that the old one gets; null where there is none
 * @returns false while somebody is connected to the old one: nothing is changed then
 * @throws Error when the new one cannot take the name, as while somebody is connected to it: the old one has it again
 */
export async function putInPlace(address: string, made: string, aside: string | null): Promise<boolean> {
	const name = databaseName(address);
	if (aside !== null) {
		try {
			await onServer(address, [`alter database ${quoted(name)} rename to ${quoted(aside)}`]);
		} catch (error) {
			// object_in_use
			if (error instanceof Error && 'code' in error && error.code === '55006') return false;
			throw error;
		}
	}
	try {
		await onServer(address, [`alter database ${quoted(made)} rename to ${quoted(name)}`]);
	} catch (error) {
		if (aside !== null) await onServer(address, [`alter database ${quoted(aside)} rename to ${quoted(name)}`]);
		throw error;
	}
	return true;
}
