/** Rows held against what the chain says of them, column by column. */
import type { Found } from './result.ts';

/** What a column can hold. */
type Cell = string | number | null;

/** Which row of which table stands for which entry. */
export interface RowPlace {
	readonly table: string;
	readonly row: string;
	readonly seq: number;
}

/**
 * @param row as it is stored; undefined where it is missing
 * @param held every column as the chain has it
 * @returns that the row is missing, or the first column that differs
 */
export function compareRow<Row extends Readonly<Record<keyof Row, Cell>>>(place: RowPlace, row: Row | undefined, held: Readonly<Record<keyof Row, Cell>>): Found {
	if (row === undefined) return { ...place, column: null, problem: 'row-missing' };
	for (const column of Object.keys(held) as (keyof Row & string)[]) {
		if (row[column] !== held[column]) return { ...place, column, problem: 'column-differs' };
	}
	return undefined;
}
