/** everything.json: all that the records of an organisation are made of, so that others can check them. */
import {
	auditPages,
	certificatePages,
	checkpointPages,
	completionPages,
	crewPages,
	entryPages,
	identityPages,
	jobReportPages,
	personPages,
	signOffPages
} from '../db/exports.ts';
import type { Database } from '../db/open.ts';
import { headOf } from '../db/records.ts';
import { allSigningKeyRows } from '../db/signing-keys.ts';
import { endedChecks } from './ended-checks.ts';
import { jsonOf } from './json.ts';
import { checkRows, detailMember, eachAs, entryMember, signOffMember, without } from './members.ts';
import { walkPeople } from './people.ts';
import { personRow } from './people-rows.ts';
import { ALL_DAYS, spanOf } from './range.ts';
import { exportSite, type ExportSite } from './site.ts';

/** @reason a check with all its events is some hundred kilobytes */
const PEOPLE_WITH_CHECKS = 4;

async function* peopleMembers(db: Database, { organisation, today }: ExportSite): AsyncGenerator<readonly unknown[], void, undefined> {
	for await (const people of walkPeople(db, organisation.id)) {
		// Day and zone are told once, for all.
		yield people.map((one) => ({ ...without(personRow(one, today), ['today', 'zone']), crews: one.crews }));
	}
}

async function* checkMembers(db: Database, organisation: string): AsyncGenerator<readonly unknown[], void, undefined> {
	for await (const people of personPages(db, organisation, PEOPLE_WITH_CHECKS)) {
		const ids = people.map(({ id }) => id);
		// One after the other: together they would be at hand as text too.
		for (const check of await endedChecks(db, ids, ALL_DAYS, 'all')) yield [checkRows(check)];
	}
}

/** @returns one JSON document as text, in parts. Rows of one list may be newer than those of another: work goes on meanwhile. */
export async function* everythingJson(db: Database, id: string, now: Date): AsyncGenerator<string, void, undefined> {
	const site = await exportSite(db, id, now);
	const { organisation, settings, today } = site;
	yield* jsonOf([
		['format', 'underfoot-records'],
		['version', 1],
		['made_at', now.toISOString()],
		['day', today.day],
		['zone', today.zone],
		['organisation', organisation],
		['record_settings', settings],
		['chain_head', await headOf(db, id)],
		['people', peopleMembers(db, site)],
		['crews', eachAs(crewPages(db, id), (crew) => without(crew, ['join_code']))],
		['entries', eachAs(entryPages(db, id), entryMember)],
		['identities', eachAs(identityPages(db, id))],
		['checks', checkMembers(db, id)],
		['completions', eachAs(completionPages(db, id))],
		['sign_offs', eachAs(signOffPages(db, id), signOffMember)],
		['certificates', eachAs(certificatePages(db, id))],
		['checkpoints', eachAs(checkpointPages(db, id))],
		['public_keys', (await allSigningKeyRows(db)).map(({ jwk, ...key }) => ({ ...key, jwk: JSON.parse(jwk) as unknown }))],
		['job_reports', eachAs(jobReportPages(db, id), detailMember)],
		['audit', eachAs(auditPages(db, id, spanOf(today.zone, ALL_DAYS)), detailMember)]
	]);
}
