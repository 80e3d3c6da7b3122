/** Restores a backup: checked and verified beside the place that it shall have, and only then put there. */
import { engineOf } from '../db/open.ts';
import type { Step } from './backup.ts';
import type { Manifest } from './manifest.ts';
import { readBackup } from './read-backup.ts';
import type { ChainsChecked } from './restored.ts';
import { restorePostgres } from './restore-postgres.ts';
import { restoreSqlite } from './restore-sqlite.ts';

/** What is restored, and where. */
export interface RestoreOrder {
	/** Path of the backup. */
	readonly file: string;
	/** Where it shall be: as in DATABASE_URL. */
	readonly address: string;
	/** Whether a database with an organisation may be moved aside. */
	readonly replace: boolean;
	readonly now: Date;
	readonly step: (step: Step) => void;
	readonly env: Readonly<Record<string, string | undefined>>;
}

/** What came of restoring. */
export interface Restored {
	readonly manifest: Manifest;
	readonly chains: ChainsChecked;
	/** What the database from before is called now; null where there was none. */
	readonly aside: string | null;
}

/**
 * Restores a backup.
 * @throws KeepingFault when it cannot be restored so, with what would help: the database is as it was then; Error when
 * it fails
 */
export async function restoreBackup(order: RestoreOrder): Promise<Restored> {
	const engine = engineOf(order.address);
	order.step('hashing');
	const manifest = await readBackup(order.file, engine);
	return { manifest, ...(engine === 'sqlite' ? await restoreSqlite(order, manifest) : await restorePostgres(order, manifest)) };
}
