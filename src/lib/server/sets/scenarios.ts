/** The documents behind a set: shipped scenarios, and own ones of its organisation. */
import type { SetContent } from '#lib/flow/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import type { Database } from '../db/open.ts';
import { scenarioVersion } from '../scenarios/found.ts';

/** @returns the documents of a set's scenarios, in its order; one that is not there is left out. Call it outside of transactions. */
export async function setScenarios(db: Database, organisation: string, content: SetContent): Promise<readonly Scenario[]> {
	const found: Scenario[] = [];
	for (const { id, version } of content.scenarios) {
		const scenario = await scenarioVersion(db, organisation, id, version);
		if (scenario !== undefined) found.push(scenario);
	}
	return found;
}
