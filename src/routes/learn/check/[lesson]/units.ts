import type { Scenario } from '#lib/scenario/index.ts';

/** @returns how lengths of pictures are written for an organisation; metric where its setting is none. */
export function unitsOf(setting: string | undefined): Scenario['units'] {
	return setting === 'us' ? 'us-decimal' : 'metric';
}
