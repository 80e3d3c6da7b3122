/** All that the page of a crew's picture shows. */
import type { CourseCell } from '#lib/course/index.ts';
import type { OutcomeSlip } from '#lib/flow/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { findOrganisation } from '../db/people.ts';
import { findTaughtCrew, setsOfCrew, slipsOfPeople, type Answerer, type SetOfCrew, type Tally } from '../db/outcomes.ts';
import type { Asker } from '../db/crews.ts';
import type { Database } from '../db/open.ts';
import { slipExamples, type SlipExample, type VersionOf } from './examples.ts';
import { readFilter, type AskedFilter } from './filter.ts';
import { countSlips, crewPicture, isCell, knownSlip, openCell, type CrewPicture, type OpenedCell, type SlipRow } from './picture.ts';

/** Where scenarios come from. */
export interface ScenarioSource {
	/** Those that may be chosen now. */
	readonly toChoose: readonly Scenario[];
	readonly versionOf: VersionOf;
}

/** One person in one cell. */
export interface OnePersonInCell {
	readonly person: Answerer;
	readonly cell: CourseCell;
	/** The last answers; undefined if there is none. */
	readonly tally: Tally | undefined;
	readonly slips: readonly SlipRow[];
}

/** All that the page shows. */
export interface PicturePage {
	readonly crew: { readonly id: string; readonly name: string };
	readonly asked: AskedFilter;
	readonly sets: readonly SetOfCrew[];
	readonly zone: string;
	readonly picture: CrewPicture;
	readonly opened: OpenedCell | null;
	readonly one: OnePersonInCell | null;
	readonly slip: { readonly id: OutcomeSlip; readonly examples: readonly SlipExample[] } | null;
}

/**
 * @param search the address: the filter, and what is opened (`cell`, `person`, `slip`)
 * @returns the page of a crew that this person teaches; null for any other crew
 */
export async function picturePage(db: Database, who: Asker, crewId: string, search: URLSearchParams, scenarios: ScenarioSource): Promise<PicturePage | null> {
	const crew = await findTaughtCrew(db, who, crewId);
	const organisation = await findOrganisation(db, who.organisation);
	if (crew === null || organisation === null) return null;
	const { zone } = organisation;
	const sets = await setsOfCrew(db, who, crew.id);
	const asked = readFilter(search, { scenarios: scenarios.toChoose.map(({ id }) => id), sets: sets.map(({ id }) => id), zone });
	const { filter } = asked;
	const picture = await crewPicture(db, who, crew.id, filter);
	const people = picture.rows.map(({ person }) => person);
	const one = people.find(({ id }) => id === search.get('person'));
	const cell = search.get('cell');
	const slip = knownSlip(search.get('slip'));
	return {
		crew,
		asked,
		sets,
		zone,
		picture,
		opened: isCell(cell) ? await openCell(db, who, crew.id, people, cell, filter) : null,
		one: isCell(cell) && one !== undefined ? await personInCell(db, picture, one, cell, filter) : null,
		slip: slip === undefined ? null : { id: slip, examples: await slipExamples(db, one === undefined ? people : [one], slip, filter, scenarios.versionOf) }
	};
}

async function personInCell(db: Database, picture: CrewPicture, person: Answerer, cell: CourseCell, filter: AskedFilter['filter']): Promise<OnePersonInCell> {
	const { slips } = countSlips(await slipsOfPeople(db, [person], cell, filter));
	const row = picture.rows.find((one) => one.person.id === person.id);
	return { person, cell, tally: row?.cells[cell], slips };
}
