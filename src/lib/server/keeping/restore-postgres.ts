/** Restores a PostgreSQL database: into a new one on the same server first, which takes the name only when it holds. */
import { holdsOrganisation } from '../db/keeping.ts';
import { connect } from '../db/open.ts';
import { databaseName, dropDatabase, isThere, makeDatabase, othersConnected, putInPlace, siblingAddress } from '../db/postgres-databases.ts';
import { KeepingFault } from './fault.ts';
import type { Manifest } from './manifest.ts';
import { stampOf } from './names.ts';
import { neededProgram, runProgram } from './postgres-programs.ts';
import type { RestoreOrder } from './restore.ts';
import { checkRestored, type ChainsChecked } from './restored.ts';

/** The longest name that PostgreSQL keeps whole, bytes. @source https://www.postgresql.org/docs/current/sql-syntax-lexical.html, NAMEDATALEN less one */
const LONGEST_NAME = 63;

/** @returns a name of a further database: the old one's, as far as there is room, and what it is. */
function nameBeside(name: string, what: 'before' | 'restoring', now: Date): string {
	const end = `_${what}_${stampOf(now).toLowerCase()}`;
	let start = name;
	while (Buffer.byteLength(start + end) > LONGEST_NAME) start = start.slice(0, -1);
	return start + end;
}

const IN_USE = new KeepingFault('DATABASE_URL', 'names a database that somebody is connected to, most likely the server', 'stop every server first');

/**
 * @returns whether there is such a database
 * @throws KeepingFault when an organisation is in it and must not be replaced, or somebody is connected
 */
async function lookAtPlace(address: string, replace: boolean): Promise<boolean> {
	if (!(await isThere(address))) return false;
	const { db } = connect(address);
	try {
		if (await othersConnected(db)) throw IN_USE;
		if (!replace && (await holdsOrganisation(db))) {
			throw new KeepingFault('DATABASE_URL', 'names a database that has an organisation already', 'name another one, or give --replace: the old one is then renamed, and kept');
		}
		return true;
	} finally {
		await db.destroy();
	}
}

/** Restores a backup into the place of a PostgreSQL database. @throws KeepingFault when it must not be, and nothing is changed then */
export async function restorePostgres(order: RestoreOrder, manifest: Manifest): Promise<{ readonly chains: ChainsChecked; readonly aside: string | null }> {
	const { address, now, step } = order;
	const program = neededProgram('pg_restore', order.env);
	const name = databaseName(address);
	const there = await lookAtPlace(address, order.replace);
	const made = nameBeside(name, 'restoring', now);
	await makeDatabase(address, made);
	try {
		step('copying');
		const beside = siblingAddress(address, made);
		await runProgram(program, ['--exit-on-error', '--no-owner', '--no-privileges', '--single-transaction', order.file], beside);
		const chains = await checkRestored(beside, manifest, step, now);
		step('placing');
		const aside = there ? nameBeside(name, 'before', now) : null;
		if (!(await putInPlace(address, made, aside))) {
			throw IN_USE;
		}
		return { chains, aside };
	} finally {
		// Where it took the name, there is none of this one any more.
		await dropDatabase(address, made);
	}
}
