import { error } from '@sveltejs/kit';
import { placeOf, type SetContent, type SetPlace } from '#lib/flow/index.ts';
import { ruleTable } from '#lib/rules/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { database, findSet, readyProblem, setScenarios } from '#lib/server/index.ts';
import { staffOnly } from '../../../staff.ts';
import type { PageServerLoad } from './$types';

/** The number of a problem as an address has it. */
const NUMBER = /^[1-9]\d{0,3}$/;

/** A problem of a set as somebody who has it would see it. It is drawn from a seed of its own: no one gets just these numbers. */
export const load: PageServerLoad = async ({ locals: { who: asks, language }, params, url }) => {
	const who = staffOnly(asks);
	const db = await database();
	const set = await findSet(db, who, params.set);
	if (set === null) error(404, 'Not Found');
	const { content } = set;
	const asked = url.searchParams.get('n') ?? '1';
	const n = NUMBER.test(asked) ? Number(asked) : 0;
	if (n < 1 || n > content.count) error(404, 'Not Found');
	const scenarios = await setScenarios(db, who.organisation, content);
	const place = placeIn(content, scenarios, set.id, n - 1);
	const scenario = scenarios.find((one) => one.id === place?.scenario && one.version === place.version);
	const problem = scenario === undefined || place === undefined ? undefined : readyProblem(scenario, place.seed);
	const table = scenario === undefined ? undefined : ruleTable(scenario.base.rules);
	return {
		set: { id: set.id, name: set.name },
		n,
		of: content.count,
		/** Whether each person has other numbers. */
		apart: !content.sameForAll,
		/** In which the problem is shown; the page around it stays in the language of who looks. */
		inLanguage: content.language ?? language,
		shown:
			scenario === undefined || place === undefined || problem === undefined
				? null
				: { scenario, problem, asks: place.asks, table: table === undefined ? undefined : { jurisdiction: table.jurisdiction, title: table.title } }
	};
};

/** The problem of a place; undefined where its scenario is not there any more, or gives none. */
function placeIn(content: SetContent, scenarios: readonly Scenario[], set: string, nth: number): SetPlace | undefined {
	try {
		return placeOf({ content, scenarios, seed: `preview ${set}`, person: '' }, nth);
	} catch (fault) {
		if (fault instanceof RangeError) return undefined;
		throw fault;
	}
}
