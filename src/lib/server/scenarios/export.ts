import type { Database } from '../db/open.ts';
import type { Person } from '../people/who.ts';
import { named, storedDocument } from './document.ts';
import { findOwn, type OwnScenario } from './own.ts';

/** A scenario as a file. */
export interface Exported {
	/** Name of the file. */
	readonly name: string;
	/** JSON, written to be read; importing takes it. */
	readonly text: string;
}

/** @returns a scenario of the organisation as a file: its draft, or its newest version where there is none; null if it is not this person's to see. */
export async function exportScenario(db: Database, who: Person, id: string): Promise<Exported | null> {
	const own = await findOwn(db, who, id);
	return own === null ? null : fileOf(own);
}

function fileOf({ id, draft, published, document }: OwnScenario): Exported {
	const version = (published ?? 0) + (draft === null ? 0 : 1);
	return { name: `${id}-${draft === null ? `v${version}` : 'draft'}.json`, text: `${JSON.stringify(named(storedDocument(document), id, version), null, '\t')}\n` };
}
