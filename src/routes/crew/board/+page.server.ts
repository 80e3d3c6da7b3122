import { error, redirect } from '@sveltejs/kit';
import { ruleTable } from '#lib/rules/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { database, findSet, readyProblem, scenariosToChoose, setScenarios, type Person } from '#lib/server/index.ts';
import { staffOnly } from '../staff.ts';
import type { PageServerLoad } from './$types';

/** @reason as many seeds as stay short in an address. */
const SEEDS = 1_000_000_000;
const WHOLE = /^\d{1,15}$/;

/** A scenario to be shown, and how the address names it. */
interface Chosen {
	readonly scenario: Scenario;
	/** Of the address, without its seed. */
	readonly query: Readonly<Record<string, string>>;
	/** The address of what comes next; a fresh draw of the same where it is left out. */
	readonly next?: Readonly<Record<string, string>>;
	/** Ids of what is asked; all that the scenario asks where it is left out. */
	readonly asks?: readonly string[];
	/** Within a set: its place, from 1, and of how many. */
	readonly place?: { readonly n: number; readonly of: number };
}

function seedOf(text: string): number {
	if (!WHOLE.test(text)) error(400, 'no-such-seed');
	return Number(text);
}

/** @returns the site of a set at a place, from 1; after the last the first comes again. */
async function inSet(who: Person, id: string, placeText: string | null): Promise<Chosen> {
	const db = await database();
	const set = await findSet(db, who, id);
	if (set === null) error(404, 'Not Found');
	const scenarios = await setScenarios(db, who.organisation, set.content);
	const n = placeText === null ? 1 : WHOLE.test(placeText) ? Number(placeText) : 0;
	const scenario = scenarios[n - 1];
	if (scenario === undefined) error(404, 'no-such-scenario');
	const asks = set.content.scenarios.find((one) => one.id === scenario.id)?.asks;
	return {
		scenario,
		query: { set: id, place: String(n) },
		next: { set: id, place: String((n % scenarios.length) + 1) },
		...(asks === undefined ? {} : { asks }),
		place: { n, of: scenarios.length }
	};
}

async function alone(who: Person, id: string): Promise<Chosen> {
	const scenario = (await scenariosToChoose(await database(), who)).find((one) => one.id === id);
	if (scenario === undefined) error(404, 'no-such-scenario');
	return { scenario, query: { scenario: id } };
}

/** The sites that the board can show, or the problem of the address; without a seed a fresh one is put into it. */
export const load: PageServerLoad = async ({ url, locals }) => {
	const who = staffOnly(locals.who);
	const [set, id, seedText] = ['set', 'scenario', 'seed'].map((name) => url.searchParams.get(name));
	if (typeof set !== 'string' && typeof id !== 'string') {
		const scenarios = await scenariosToChoose(await database(), who);
		return { choices: scenarios.map((one) => ({ id: one.id, titles: { en: one.words.en.title, es: one.words.es.title } })), shown: undefined };
	}
	const chosen = typeof set === 'string' ? await inSet(who, set, url.searchParams.get('place')) : await alone(who, id ?? '');
	const { scenario, query } = chosen;
	if (typeof seedText !== 'string') {
		const seed = (crypto.getRandomValues(new Uint32Array(1))[0] ?? 0) % SEEDS;
		redirect(307, `/crew/board?${new URLSearchParams({ ...query, seed: String(seed) })}`);
	}
	const seed = seedOf(seedText);
	const table = ruleTable(scenario.base.rules);
	return {
		choices: [],
		shown: {
			/** Tells one problem from another. */
			key: `${scenario.id} ${scenario.version} ${seed}`,
			problem: readyProblem(scenario, seed),
			asks: chosen.asks ?? scenario.asks.map((one) => one.id),
			place: chosen.place,
			next: `?${new URLSearchParams(chosen.next ?? query)}` as const,
			table: table === undefined ? undefined : { jurisdiction: table.jurisdiction, title: table.title }
		}
	};
};
