/** Scenarios that organisations made: each question within what the asking person may see; another's is not found. */
import { sql, type SqlBool } from 'kysely';
import type { Asker } from './crews.ts';
import type { Database } from './open.ts';

/** A scenario of an organisation as it is stored. */
export interface OwnScenarioRow {
	readonly id: string;
	readonly madeBy: string;
	/** Name of who made it. */
	readonly maker: string;
	/** JSON; null where nothing was changed since the newest version. */
	readonly draft: string | null;
	readonly revision: number;
	/** ISO 8601. */
	readonly changedAt: string;
	/** ISO 8601; null for one that is in use. */
	readonly retiredAt: string | null;
	/** The newest version; null where none was published. */
	readonly published: number | null;
	/** JSON of the newest version. */
	readonly newest: string | null;
}

/** The scenarios that a person may see: of trainers and employers all of the organisation, of learners none. */
function within(db: Database, who: Asker) {
	const all = db
		.selectFrom('own_scenario')
		.innerJoin('person', 'person.id', 'own_scenario.made_by')
		.leftJoin('own_scenario_version as version', (join) =>
			join
				.onRef('version.scenario_id', '=', 'own_scenario.id')
				.on('version.version', '=', (eb) =>
					eb
						.selectFrom('own_scenario_version as other')
						.select((inner) => inner.fn.max('other.version').as('newest'))
						.whereRef('other.scenario_id', '=', 'own_scenario.id')
				)
		)
		.where('own_scenario.organisation_id', '=', who.organisation);
	return who.role === 'learner' ? all.where(sql<SqlBool>`1 = 0`) : all;
}

const FIELDS = [
	'own_scenario.id',
	'own_scenario.made_by as madeBy',
	'person.name as maker',
	'own_scenario.draft',
	'own_scenario.revision',
	'own_scenario.changed_at as changedAt',
	'own_scenario.retired_at as retiredAt',
	'version.version as published',
	'version.document as newest'
] as const;

/** @returns the scenarios that a person may see, the one that was changed last first. */
export async function ownScenariosOf(db: Database, who: Asker): Promise<readonly OwnScenarioRow[]> {
	return within(db, who).select(FIELDS).orderBy('own_scenario.changed_at', 'desc').orderBy('own_scenario.id').execute();
}

/** @returns a scenario; null if there is none of that id, or it is not this person's to see. */
export async function findOwnScenario(db: Database, who: Asker, id: string): Promise<OwnScenarioRow | null> {
	return (await within(db, who).select(FIELDS).where('own_scenario.id', '=', id).executeTakeFirst()) ?? null;
}

/** @returns how many scenarios an organisation has, retired ones as well. */
export async function countOwnScenarios(db: Database, organisation: string): Promise<number> {
	const { n } = await db
		.selectFrom('own_scenario')
		.select((eb) => eb.fn.countAll().as('n'))
		.where('organisation_id', '=', organisation)
		.executeTakeFirstOrThrow();
	return Number(n);
}

/** A scenario to be made. */
export interface NewOwnScenario {
	readonly id: string;
	readonly organisation: string;
	readonly madeBy: string;
	readonly draft: string;
	/** ISO 8601, UTC. */
	readonly now: string;
}

/** Makes a scenario with its draft. @returns false if another has this id already; nothing is made then */
export async function insertOwnScenario(db: Database, made: NewOwnScenario): Promise<boolean> {
	const inserted = await db
		.insertInto('own_scenario')
		.values({
			id: made.id,
			organisation_id: made.organisation,
			made_by: made.madeBy,
			draft: made.draft,
			revision: 1,
			changed_at: made.now,
			retired_at: null,
			created_at: made.now
		})
		.onConflict((conflict) => conflict.column('id').doNothing())
		.returning('id')
		.executeTakeFirst();
	return inserted !== undefined;
}

/**
 * Changes the draft of a scenario if nobody else did meanwhile, and counts its revision up. Who may do so is asked before.
 * @param revision that the change was made from
 * @param draft JSON; null where the newest version is what is left
 * @returns false if it has another revision now; nothing is changed then
 */
export async function changeDraft(db: Database, id: string, revision: number, draft: string | null, now: string): Promise<boolean> {
	const results = await db
		.updateTable('own_scenario')
		.set({ draft, revision: revision + 1, changed_at: now })
		.where('id', '=', id)
		.where('revision', '=', revision)
		.execute();
	return results.some((result) => result.numUpdatedRows > 0n);
}

/** Takes a scenario out of use or into it again. @param at when; null for into it again. @returns false if that was so before */
export async function retireOwnScenario(db: Database, id: string, at: string | null): Promise<boolean> {
	const results = await db
		.updateTable('own_scenario')
		.set({ retired_at: at })
		.where('id', '=', id)
		.where('retired_at', at === null ? 'is not' : 'is', null)
		.execute();
	return results.some((result) => result.numUpdatedRows > 0n);
}

/** Takes away a scenario that was never published. @returns false if it has another revision now; nothing is changed then */
export async function deleteOwnScenario(db: Database, id: string, revision: number): Promise<boolean> {
	const deleted = await db.deleteFrom('own_scenario').where('id', '=', id).where('revision', '=', revision).returning('id').executeTakeFirst();
	return deleted !== undefined;
}

/** A version that is published. */
export interface PublishedVersion {
	readonly scenario: string;
	readonly version: number;
	/** JSON. */
	readonly document: string;
}

/** Enters a version. @throws a unique violation when the scenario has it already */
export async function insertVersion(db: Database, made: PublishedVersion & { readonly by: string; readonly now: string }): Promise<void> {
	await db
		.insertInto('own_scenario_version')
		.values({ scenario_id: made.scenario, version: made.version, document: made.document, published_by: made.by, at: made.now })
		.execute();
}

/** The newest published version of a scenario. */
export interface NewestVersion {
	readonly id: string;
	readonly newest: number;
	readonly retired: boolean;
}

/**
 * @param id of the one scenario that is asked for; without it all that the organisation published.
 * @returns the newest version of each, by id; none for what is another organisation's. No document is read.
 */
export async function newestVersions(db: Database, organisation: string, id?: string): Promise<readonly NewestVersion[]> {
	const all = db
		.selectFrom('own_scenario_version as version')
		.innerJoin('own_scenario', 'own_scenario.id', 'version.scenario_id')
		.where('own_scenario.organisation_id', '=', organisation);
	const rows = await (id === undefined ? all : all.where('own_scenario.id', '=', id))
		.select((eb) => ['own_scenario.id', 'own_scenario.retired_at', eb.fn.max('version.version').as('newest')])
		.groupBy(['own_scenario.id', 'own_scenario.retired_at'])
		.orderBy('own_scenario.id')
		.execute();
	return rows.map((row) => ({ id: row.id, newest: row.newest, retired: row.retired_at !== null }));
}

/** @returns the document of a version, JSON; null if there is none. Whose it is, is asked before. */
export async function versionDocument(db: Database, id: string, version: number): Promise<string | null> {
	const row = await db.selectFrom('own_scenario_version').select('document').where('scenario_id', '=', id).where('version', '=', version).executeTakeFirst();
	return row?.document ?? null;
}
