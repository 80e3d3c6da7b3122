import { error, redirect } from '@sveltejs/kit';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { mixed } from '#lib/flow/index.ts';
import { ruleTable } from '#lib/rules/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { database, newestScenario, readyProblem, type Who } from '#lib/server/index.ts';
import type { PageServerLoad } from './$types';

/** @reason as many seeds as stay short in an address. */
const SEEDS = 1_000_000_000;
const WHOLE = /^\d{1,15}$/;

/** The scenario of the address: a shipped one, or the newest version of one that the person's organisation published. */
async function scenarioOf(who: Who, shipped: readonly Scenario[], id: string): Promise<Scenario | undefined> {
	const found = shipped.find((one) => one.id === id);
	if (found !== undefined || who.kind === 'guest') return found;
	return newestScenario(await database(), who.organisation, id);
}

/**
 * The problem of the address, and its scenario, from which the browser draws more where there is no signal.
 * Without an address, a problem is picked and put into it, so that a reload finds it again.
 */
export const load: PageServerLoad = async ({ url, locals }) => {
	const scenarios = shippedScenarios();
	const ids = scenarios.map((one) => one.id);
	const id = url.searchParams.get('scenario');
	const seedText = url.searchParams.get('seed');
	const scenario = id === null ? undefined : await scenarioOf(locals.who, scenarios, id);
	if (id !== null && scenario === undefined) error(404, 'no-such-scenario');
	if (scenario === undefined || seedText === null) {
		const picked = mixed(scenario === undefined ? ids : [scenario.id], crypto.getRandomValues(new Uint32Array(1))[0] ?? 0, 0);
		redirect(307, `/learn/problem?${new URLSearchParams({ scenario: picked.scenario, seed: String(picked.seed % SEEDS) })}`);
	}
	if (!WHOLE.test(seedText)) error(400, 'no-such-seed');
	const seed = Number(seedText);
	const table = ruleTable(scenario.base.rules);
	return {
		scenario,
		seed,
		/** Drawn here, so that the browser can show it before the code that draws has come. */
		problem: readyProblem(scenario, seed),
		/** Of the rule table what the page names; the table itself comes with the code that checks. */
		table: table === undefined ? undefined : { jurisdiction: table.jurisdiction, title: table.title },
		scenarioIds: ids
	};
};
