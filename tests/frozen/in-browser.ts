/**
 * Entry for another engine: bundled and loaded into a page, it draws there what the fixtures hold. The page
 * hands in parsed scenarios as JSON; what comes back is compared with the fixtures as text.
 */
import type { Scenario } from '#lib/scenario/index.ts';
import { drawnRecords } from './drawn-record.ts';

declare global {
	/** Draws the seeds `first` to `last` and returns the records as JSON. */
	var underfootDraws: ((scenario: string, first: number, last: number) => string) | undefined;
}

globalThis.underfootDraws = (scenario, first, last) =>
	JSON.stringify(drawnRecords(JSON.parse(scenario) as Scenario, first, last));
