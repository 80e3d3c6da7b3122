/** The plan that was entered, kept in this tab so that a reload finds it. Nothing of it goes to the server. */
import { NOTHING_ENTERED, type PlanEntry } from './plan-fields.ts';

const KEY = 'board-plan';
/** @reason longer than any entry of a plan; what is longer was not written here. */
const LONGEST = 8_000;

function texts(value: unknown): Readonly<Record<string, string>> {
	if (typeof value !== 'object' || value === null) return {};
	return Object.fromEntries(Object.entries(value).filter((one): one is [string, string] => typeof one[1] === 'string'));
}

/** @returns what was entered for a site; undefined where nothing was, or what is kept is of another site. */
export function readKeptPlan(kept: string | null, site: string): PlanEntry | undefined {
	if (kept === null || kept.length > LONGEST) return undefined;
	try {
		const value: unknown = JSON.parse(kept);
		if (typeof value !== 'object' || value === null || !('site' in value) || value.site !== site) return undefined;
		return { texts: 'texts' in value ? texts(value.texts) : NOTHING_ENTERED.texts, facts: 'facts' in value ? texts(value.facts) : NOTHING_ENTERED.facts };
	} catch {
		return undefined;
	}
}

/** @returns how an entry for a site is kept. */
export function writeKeptPlan(site: string, entry: PlanEntry): string {
	return JSON.stringify({ site, texts: entry.texts, facts: entry.facts });
}

/** Reads from this tab; a browser that keeps nothing has nothing. */
export function keptPlan(site: string): PlanEntry | undefined {
	try {
		return readKeptPlan(sessionStorage.getItem(KEY), site);
	} catch {
		return undefined;
	}
}

/** Keeps an entry in this tab, or with undefined forgets it. A browser that keeps nothing loses it with the page. */
export function keepPlan(site: string, entry: PlanEntry | undefined): void {
	try {
		if (entry === undefined) sessionStorage.removeItem(KEY);
		else sessionStorage.setItem(KEY, writeKeptPlan(site, entry));
	} catch {
		// Private windows may refuse: the plan is then there until the page goes.
	}
}
