/** Changes to a database file as somebody makes them who has the file: nothing keeps them from any of it. */
import { randomUUID } from 'node:crypto';
import { sql } from 'kysely';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';
import type { Database } from '#lib/server/db/open.ts';

type Cell = string | number | null;
export type AnyRow = Readonly<Record<string, Cell>>;

/** A table whose rows are records. */
export interface RecordTable {
	readonly table: string;
	/** Its primary key. */
	readonly key: readonly string[];
	/** Columns that are records. */
	readonly columns: readonly string[];
	/** Which rows; all without it. */
	readonly where?: (row: AnyRow) => boolean;
}

/** What was done, and to which rows. */
export interface Change {
	readonly what: 'cell' | 'row deleted' | 'row inserted' | 'cells swapped' | 'tail cut';
	readonly table: string;
	readonly column: string | null;
	/** As they were before and are after. */
	readonly rows: readonly AnyRow[];
}

/** Takes away what the database forbids. */
export async function disarm(db: Database): Promise<void> {
	const { rows } = await sql<{ name: string }>`select name from sqlite_master where type = 'trigger'`.execute(db);
	for (const { name } of rows) await sql`drop trigger ${sql.id(name)}`.execute(db);
	await sql`pragma foreign_keys = off`.execute(db);
}

/** Makes changes drawn from a seed. */
export class Tamperer {
	readonly #db: Database;
	readonly #random: RandomGenerator;

	constructor(db: Database, random: RandomGenerator) {
		this.#db = db;
		this.#random = random;
	}

	#below(most: number): number {
		return uniformInt(this.#random, 0, most - 1);
	}

	#one<Item>(items: readonly Item[]): Item {
		const item = items[this.#below(items.length)];
		if (item === undefined) throw new Error('Nothing to choose from');
		return item;
	}

	async #rows({ table, where }: RecordTable): Promise<readonly AnyRow[]> {
		const { rows } = await sql<AnyRow>`select * from ${sql.table(table)}`.execute(this.#db);
		return where === undefined ? rows : rows.filter(where);
	}

	/** Changes one cell: one character, or to what stands in another row, or to nothing. */
	async cell(of: RecordTable, column: string): Promise<Change | null> {
		const rows = await this.#rows(of);
		const row = this.#one(rows);
		const before = row[column] ?? null;
		const others = [...new Set(rows.map((one) => one[column] ?? null))].filter((one) => one !== before);
		const value = others.length > 0 && this.#below(3) === 0 ? this.#one(others) : this.#changed(before);
		if (value === before) return null;
		return this.#set(of, row, column, value);
	}

	#changed(before: Cell): Cell {
		if (before === null) return this.#one(['', randomUUID(), '2026-12-24T00:00:00.000Z']);
		if (typeof before === 'number') return before + this.#one([-1000, 1, 1000]);
		if (before === '') return 'x';
		const at = this.#below(before.length);
		const other = this.#one([...'0123456789abcdefghijklmnopqrstuvwxyz -_."'].filter((one) => one !== before[at]));
		return this.#one([before.slice(0, at) + other + before.slice(at + 1), before.slice(0, at) + before.slice(at + 1), before.slice(0, at) + other + before.slice(at)]);
	}

	async #set({ table, key }: RecordTable, row: AnyRow, column: string, value: Cell): Promise<Change> {
		await sql`update ${sql.table(table)} set ${sql.ref(column)} = ${value} where ${this.#is(key, row)}`.execute(this.#db);
		return { what: 'cell', table, column, rows: [row, { ...row, [column]: value }] };
	}

	#is(key: readonly string[], row: AnyRow) {
		return sql.join(key.map((name) => sql`${sql.ref(name)} = ${row[name] ?? null}`), sql` and `);
	}

	async deletion(of: RecordTable): Promise<Change> {
		const row = this.#one(await this.#rows(of));
		await sql`delete from ${sql.table(of.table)} where ${this.#is(of.key, row)}`.execute(this.#db);
		return { what: 'row deleted', table: of.table, column: null, rows: [row] };
	}

	/** Two rows get each other's value in a column that is no key. */
	async swap(of: RecordTable): Promise<Change | null> {
		const rows = await this.#rows(of);
		const column = this.#one(of.columns.filter((name) => !of.key.includes(name)));
		const one = this.#one(rows);
		const others = rows.filter((row) => row[column] !== one[column]);
		if (others.length === 0) return null;
		const other = this.#one(others);
		// By way of a third value, so that no unique column is in the way.
		await this.#set(of, one, column, typeof one[column] === 'number' ? -1 : 'on the way');
		await this.#set(of, other, column, one[column] ?? null);
		await this.#set(of, one, column, other[column] ?? null);
		return { what: 'cells swapped', table: of.table, column, rows: [one, other, { ...one, [column]: other[column] ?? null }, { ...other, [column]: one[column] ?? null }] };
	}

	/** A copy of a row under another key. */
	async insertion(of: RecordTable, unique: Readonly<Record<string, (before: Cell) => Cell>>): Promise<Change> {
		const row = this.#one(await this.#rows(of));
		const copy = Object.fromEntries(Object.entries(row).map(([name, value]) => [name, unique[name] === undefined ? value : unique[name](value)]));
		const names = Object.keys(copy);
		await sql`insert into ${sql.table(of.table)} (${sql.join(names.map((name) => sql.ref(name)))}) values (${sql.join(names.map((name) => copy[name] ?? null))})`.execute(this.#db);
		return { what: 'row inserted', table: of.table, column: null, rows: [copy] };
	}

	/** The last entries of a chain are gone, and its end is noted where it is now. */
	async tail(organisation: string): Promise<Change> {
		const rows = (await this.#rows({ table: 'record_entry', key: [], columns: [], where: (row) => row['organisation_id'] === organisation })).toSorted((a, b) => Number(a['seq']) - Number(b['seq']));
		const from = 1 + this.#below(rows.length - 1);
		const last = rows[from - 1];
		await sql`delete from record_entry where organisation_id = ${organisation} and seq > ${from}`.execute(this.#db);
		await sql`update record_head set seq = ${from}, hash = ${last?.['hash'] ?? ''} where organisation_id = ${organisation}`.execute(this.#db);
		return { what: 'tail cut', table: 'record_entry', column: null, rows: rows.slice(from) };
	}
}
