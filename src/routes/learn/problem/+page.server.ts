import { error, redirect } from '@sveltejs/kit';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { mixed } from '#lib/flow/index.ts';
import { ruleTable } from '#lib/rules/index.ts';
import { readyProblem } from '#lib/server/index.ts';
import type { PageServerLoad } from './$types';

/** @reason as many seeds as stay short in an address. */
const SEEDS = 1_000_000_000;
const WHOLE = /^\d{1,15}$/;

/**
 * The problem of the address, and its scenario, from which the browser draws more where there is no signal.
 * Without an address, a problem is picked and put into it, so that a reload finds it again.
 */
export const load: PageServerLoad = ({ url }) => {
	const scenarios = shippedScenarios();
	const ids = scenarios.map((one) => one.id);
	const id = url.searchParams.get('scenario');
	const seedText = url.searchParams.get('seed');
	if (id === null || seedText === null) {
		const among = id === null ? ids : ids.filter((one) => one === id);
		if (among.length === 0) error(404, 'no-such-scenario');
		const picked = mixed(among, crypto.getRandomValues(new Uint32Array(1))[0] ?? 0, 0);
		redirect(307, `/learn/problem?${new URLSearchParams({ scenario: picked.scenario, seed: String(picked.seed % SEEDS) })}`);
	}
	const scenario = scenarios.find((one) => one.id === id);
	if (scenario === undefined) error(404, 'no-such-scenario');
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
