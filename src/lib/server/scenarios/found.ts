/** Where the scenarios of an organisation are found: the shipped ones and the versions that it published. */
import { shippedScenario, shippedScenarios } from '#lib/course/shipped.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import type { Scenarios } from '../attempts/mark.ts';
import { shippedVersions } from '../attempts/shipped.ts';
import type { Database } from '../db/open.ts';
import { newestVersions, versionsAbove, type NewestVersion, type PublishedVersion } from '../db/own-scenarios.ts';
import type { Person } from '../people/who.ts';

/** Own scenarios whose versions are kept parsed. @reason about 20 kB each; the ones that some hundred crews work on in a day. */
const MOST_KEPT = 1000;

/** The versions of one scenario up to one: they never change, so that they are read and parsed once. */
interface Kept {
	readonly upTo: number;
	/** Without those that do not parse any more. */
	readonly versions: readonly Scenario[];
}

const NOTHING: Kept = { upTo: 0, versions: [] };
const kept = new WeakMap<Database, Map<string, Kept>>();

/** A version as it was stored, parsed; undefined, and said once in the server's log, if it does not parse any more. */
function parsed({ scenario, version, document }: PublishedVersion): Scenario | undefined {
	try {
		return scenarioSchema.parse(JSON.parse(document));
	} catch (error) {
		process.emitWarning(`Version ${version} of scenario ${scenario} is left out: it does not fit the schema any more.`, { detail: String(error) });
		return undefined;
	}
}

/** The versions of a scenario up to its newest, of which only those are read that are not kept yet. */
async function versionsOf(db: Database, { id, newest }: NewestVersion): Promise<readonly Scenario[]> {
	const known = kept.get(db) ?? new Map<string, Kept>();
	kept.set(db, known);
	const before = known.get(id) ?? NOTHING;
	const added = before.upTo >= newest ? [] : await versionsAbove(db, id, before.upTo);
	const now: Kept = {
		upTo: added.at(-1)?.version ?? before.upTo,
		versions: [...before.versions, ...added.map(parsed).filter((one) => one !== undefined)]
	};
	// The one asked for last goes last.
	known.delete(id);
	known.set(id, now);
	for (const oldest of known.keys()) {
		if (known.size <= MOST_KEPT) break;
		known.delete(oldest);
	}
	return now.versions;
}

/**
 * What answers of an organisation's people may be of. Call it outside of transactions: what is parsed is kept by database.
 * @param organisation null for guests: they have the shipped scenarios.
 * @param id of the only scenario that will be asked for, where that is known: a shipped one then asks the database nothing.
 * @returns the shipped scenarios, and every published version of the organisation's own, retired ones as well
 */
export async function scenariosFor(db: Database, organisation: string | null, id?: string): Promise<Scenarios> {
	if (organisation === null || (id !== undefined && shippedScenario(id) !== undefined)) return shippedVersions;
	const own = new Map<string, readonly Scenario[]>();
	for (const one of await newestVersions(db, organisation, id)) own.set(one.id, await versionsOf(db, one));
	return {
		versionsOf(of) {
			const shipped = shippedVersions.versionsOf(of);
			return shipped.length > 0 ? shipped : (own.get(of) ?? []);
		}
	};
}

/** @returns one version of a shipped scenario or of the organisation's own; undefined where there is none. */
export async function scenarioVersion(db: Database, organisation: string | null, id: string, version: number): Promise<Scenario | undefined> {
	const found = await scenariosFor(db, organisation, id);
	return found.versionsOf(id).find((one) => one.version === version);
}

/** @returns what a member of staff can put into a set: the shipped scenarios, then own ones that are not retired, each in its newest version. */
export async function scenariosToChoose(db: Database, who: Person): Promise<readonly Scenario[]> {
	const own: Scenario[] = [];
	if (who.role !== 'learner') {
		for (const one of await newestVersions(db, who.organisation)) {
			const newest = one.retired ? undefined : (await versionsOf(db, one)).at(-1);
			if (newest !== undefined) own.push(newest);
		}
	}
	return [...shippedScenarios(), ...own];
}
