/**
 * `npm run bench`: runs the benches in tests/bench and prints a table.
 * `-- NAME …` runs those of that name, `-- --json` prints one JSON object a figure.
 * Ends with 1 if a figure does not hold or nothing was measured, with 2 if there is no bench of that name.
 */
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { parseArgs } from 'node:util';
import type { Bench, Figure } from './figure.ts';
import { ROOT } from './root.ts';

/** All benches, in the order of their files' names. */
async function benches(): Promise<Bench[]> {
	const folder = join(ROOT, 'tests/bench');
	const files = readdirSync(folder).filter((file) => file.endsWith('.bench.ts'));
	return Promise.all(
		files.sort().map(async (file) => {
			const loaded: { default: Bench } = await import(pathToFileURL(join(folder, file)).href);
			return loaded.default;
		})
	);
}

/** A number with as many places as help to compare it. */
function written(value: number): string {
	if (Number.isInteger(value)) return String(value);
	const places = Math.abs(value) >= 100 ? 0 : Math.abs(value) >= 1 ? 2 : 4;
	return value.toFixed(places);
}

/** Figures as lines of equal columns: figure, value, goal, and whether it holds. */
function table(figures: readonly Figure[]): string {
	const rows = figures.map((figure) => [
		figure.name,
		`${written(figure.value)} ${figure.unit}`.trim(),
		figure.goal,
		figure.holds ? 'holds' : 'DOES NOT HOLD'
	]);
	const all = [['figure', 'value', 'goal', ''], ...rows];
	const widths = [0, 1, 2].map((column) => Math.max(...all.map((row) => row[column]?.length ?? 0)));
	return all
		.map((row) => row.map((cell, column) => cell.padEnd(widths[column] ?? 0)).join('  ').trimEnd())
		.join('\n');
}

const { values, positionals } = parseArgs({
	options: { json: { type: 'boolean', default: false } },
	allowPositionals: true
});

const all = await benches();
const unknown = positionals.filter((name) => !all.some((bench) => bench.name === name));
if (unknown.length > 0) {
	console.error(
		`No bench is named ${unknown.join(', ')}; there are: ${all.map((bench) => bench.name).join(', ')}`
	);
	process.exit(2);
}

const figures: Figure[] = [];
for (const bench of all) {
	if (positionals.length > 0 && !positionals.includes(bench.name)) continue;
	for (const figure of await bench.run()) {
		figures.push(figure);
		if (values.json) console.log(JSON.stringify(figure));
	}
}
if (!values.json) console.log(table(figures));
// A run that measured nothing must not look like one in which everything holds.
process.exit(figures.length > 0 && figures.every((figure) => figure.holds) ? 0 : 1);
