/**
 * Freezes the first draws of every shipped scenario version that has no file yet in tests/frozen/draws. A file
 * that is there is never touched: a draw that changes needs a new draw version or a new scenario version.
 *
 *   node tests/frozen/freeze-draws.ts            writes what is missing
 *   node tests/frozen/freeze-draws.ts --print    prints scenarios and records as one JSON text, for another engine
 */
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { shippedScenarios } from '#lib/course/shipped.ts';
import { drawnRecords } from './drawn-record.ts';

const FIRST = 0;
const LAST = 19;

if (process.argv.includes('--print')) {
	const all = shippedScenarios().map((scenario) => ({ scenario, frozen: drawnRecords(scenario, FIRST, LAST) }));
	console.log(JSON.stringify(all));
} else {
	for (const scenario of shippedScenarios()) {
		const file = join(import.meta.dirname, 'draws', `${scenario.id}-v${scenario.version}.json`);
		if (existsSync(file)) continue;
		writeFileSync(file, `${JSON.stringify(drawnRecords(scenario, FIRST, LAST), undefined, '\t')}\n`);
		console.log(`froze ${scenario.id} version ${scenario.version}`);
	}
}
