/** What stands beside a backup: what it is of, how long, which bytes, and what it holds. */
import * as z from 'zod';

const HASH = /^[0-9a-f]{64}$/;

export const manifestSchema = z.strictObject({
	kind: z.literal('underfoot-backup'),
	version: z.literal(1),
	/** The program that took it. */
	program: z.string(),
	engine: z.enum(['sqlite', 'postgres']),
	/** When it was begun. Everything acknowledged before is in it. ISO 8601, UTC. */
	at: z.iso.datetime(),
	file: z.string(),
	bytes: z.int().nonnegative(),
	/** SHA-256 of the file, hexadecimal. */
	sha256: z.string().regex(HASH),
	migration: z.string(),
	/** Rows of each table. */
	rows: z.record(z.string(), z.int().nonnegative()),
	/** Where the chain of each organisation ends. */
	heads: z.array(z.strictObject({ organisation: z.string(), seq: z.int().nonnegative(), hash: z.string().regex(HASH) }))
});

/** A backup, as it is told beside it. */
export type Manifest = z.output<typeof manifestSchema>;

/** @returns where the manifest of a backup stands. */
export function manifestPath(backup: string): string {
	return `${backup}.json`;
}
