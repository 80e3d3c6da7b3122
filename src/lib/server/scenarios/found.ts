/** Where the scenarios of an organisation are found: the shipped ones and the versions that it published. */
import { setImmediate } from 'node:timers/promises';
import { shippedScenario, shippedScenarios } from '#lib/course/shipped.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import type { Scenarios } from '../attempts/mark.ts';
import { shippedVersions } from '../attempts/shipped.ts';
import type { Database } from '../db/open.ts';
import { newestVersions, versionDocument, type NewestVersion } from '../db/own-scenarios.ts';
import type { Person } from '../people/who.ts';

/** Versions of own scenarios that are kept parsed. @reason about 20 kB each; the ones that some hundred crews work on in a day. */
const MOST_KEPT = 1000;

/** By scenario and version: they never change, so that they are read and parsed once. Undefined for what does not parse any more. */
const kept = new WeakMap<Database, Map<string, Scenario | undefined>>();

/** A version as it was stored, parsed; undefined, and said in the server's log, if it does not parse any more. */
function parsed(id: string, version: number, document: string): Scenario | undefined {
	try {
		return scenarioSchema.parse(JSON.parse(document));
	} catch (error) {
		process.emitWarning(`Version ${version} of scenario ${id} is left out: it does not fit the schema any more.`, { detail: String(error) });
		return undefined;
	}
}

/** One version that is there, from memory if it was asked for lately. After each that has to be parsed, others get their turn. */
async function versionOf(db: Database, id: string, version: number): Promise<Scenario | undefined> {
	const known = kept.get(db) ?? new Map<string, Scenario | undefined>();
	kept.set(db, known);
	const key = `${id} ${version}`;
	const document = known.has(key) ? undefined : await versionDocument(db, id, version);
	if (document === null) return undefined;
	// Somebody else may have asked for it meanwhile: then it is parsed already.
	const parses = document !== undefined && !known.has(key);
	const found = parses ? parsed(id, version, document) : known.get(key);
	// The one asked for last goes last.
	known.delete(key);
	known.set(key, found);
	for (const oldest of known.keys()) {
		if (known.size <= MOST_KEPT) break;
		known.delete(oldest);
	}
	if (parses) await setImmediate();
	return found;
}

/** The newest version of a scenario that parses. */
async function newestOf(db: Database, { id, newest }: NewestVersion): Promise<Scenario | undefined> {
	for (let version = newest; version > 0; version -= 1) {
		const found = await versionOf(db, id, version);
		if (found !== undefined) return found;
	}
	return undefined;
}

/** The version that is asked for, the newest one where there is no such; all of them where none is. */
async function versionsOf(db: Database, one: NewestVersion, asked: number | undefined): Promise<readonly Scenario[]> {
	const found: Scenario[] = [];
	const isThere = (version: number) => Number.isInteger(version) && version > 0 && version <= one.newest;
	const wanted = asked === undefined ? Array.from({ length: one.newest }, (_, i) => i + 1) : [asked].filter(isThere);
	for (const version of wanted) {
		const scenario = await versionOf(db, one.id, version);
		if (scenario !== undefined) found.push(scenario);
	}
	const newest = found.length === 0 ? await newestOf(db, one) : undefined;
	return newest === undefined ? found : [newest];
}

/**
 * What answers of an organisation's people may be of. Call it outside of transactions: what is parsed is kept by database.
 * @param organisation null for guests: they have the shipped scenarios.
 * @param id of the only scenario that will be asked for, where that is known: a shipped one then asks the database nothing.
 * @param version the only one that will be asked for, where that is known: the others are not read
 * @returns the shipped scenarios, and the published versions of the organisation's own, of retired ones as well
 */
export async function scenariosFor(db: Database, organisation: string | null, id?: string, version?: number): Promise<Scenarios> {
	if (organisation === null || (id !== undefined && shippedScenario(id) !== undefined)) return shippedVersions;
	const own = new Map<string, readonly Scenario[]>();
	for (const one of await newestVersions(db, organisation, id)) own.set(one.id, await versionsOf(db, one, version));
	return {
		versionsOf(of) {
			const shipped = shippedVersions.versionsOf(of);
			return shipped.length > 0 ? shipped : (own.get(of) ?? []);
		}
	};
}

/** @returns one version of a shipped scenario or of the organisation's own; undefined where there is none. */
export async function scenarioVersion(db: Database, organisation: string | null, id: string, version: number): Promise<Scenario | undefined> {
	const found = await scenariosFor(db, organisation, id, version);
	return found.versionsOf(id).find((one) => one.version === version);
}

/** @returns the newest version of a shipped scenario or of the organisation's own, retired or not; undefined where there is none. */
export async function newestScenario(db: Database, organisation: string | null, id: string): Promise<Scenario | undefined> {
	const shipped = shippedScenario(id);
	if (shipped !== undefined || organisation === null) return shipped;
	const [one] = await newestVersions(db, organisation, id);
	return one === undefined ? undefined : newestOf(db, one);
}

/** @returns what a member of staff can put into a set: the shipped scenarios, then own ones that are not retired, each in its newest version. */
export async function scenariosToChoose(db: Database, who: Person): Promise<readonly Scenario[]> {
	const own: Scenario[] = [];
	if (who.role !== 'learner') {
		for (const one of await newestVersions(db, who.organisation)) {
			const newest = one.retired ? undefined : await newestOf(db, one);
			if (newest !== undefined) own.push(newest);
		}
	}
	return [...shippedScenarios(), ...own];
}
