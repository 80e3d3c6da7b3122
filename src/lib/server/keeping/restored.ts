/** Looks at a restored database before it is put in place: whole, known to this program, brought up to date, and its chains hold. */
import { isDeepStrictEqual } from 'node:util';
import { heldIn, unknownMigrations, type Held } from '../db/keeping.ts';
import { connect, openDatabase } from '../db/open.ts';
import { enterEarlierRecords } from '../records/earlier.ts';
import { verifyRecords } from '../records/verify/verify.ts';
import type { Step } from './backup.ts';
import { KeepingFault } from './fault.ts';
import type { Manifest } from './manifest.ts';

/** What was found of the chains. */
export interface ChainsChecked {
	readonly organisations: number;
	readonly entries: number;
}

/** @throws KeepingFault when it holds something else than was backed up, or is of a newer program */
async function sameAsBackedUp(address: string, manifest: Manifest): Promise<void> {
	const { db, engine } = connect(address);
	try {
		const unknown = await unknownMigrations(db, engine);
		if (unknown.length > 0) {
			throw new KeepingFault('FILE', `is of a newer version of this program (${manifest.program}): it has gone through ${unknown.join(', ')}`, 'install that version or a newer one, and restore with it');
		}
		const { migration, rows, heads } = manifest;
		const told: Held = { migration, rows, heads };
		if (!isDeepStrictEqual(await heldIn(db), told)) {
			throw new KeepingFault('FILE', 'holds other rows or chains than stand in the .json beside it', 'copy both files again from where the backup is, or take the backup before');
		}
	} finally {
		await db.destroy();
	}
}

/**
 * Looks at a restored database, and brings its tables up to date.
 * @param address where it is for now
 * @throws KeepingFault when it must not be put in place
 */
export async function checkRestored(address: string, manifest: Manifest, step: (step: Step) => void, now: Date): Promise<ChainsChecked> {
	step('counting');
	await sameAsBackedUp(address, manifest);
	step('migrating');
	const db = await openDatabase(address);
	try {
		// What is older than the chain, and not in it yet: entered as the server does at its start. Done once for a database.
		await enterEarlierRecords(db, now);
		step('verifying');
		const verified = await verifyRecords(db, { depth: 'records' });
		if (verified.kind === 'broken') {
			const { table, row, problem } = verified.broken;
			throw new KeepingFault('FILE', `holds records that were changed: ${table} ${row}, ${problem}`, 'take the backup before; this one is not put in place');
		}
		const { organisations, entries } = verified.counts;
		return { organisations, entries };
	} finally {
		await db.destroy();
	}
}

