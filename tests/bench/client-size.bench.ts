/**
 * How much code the practice page loads before a problem can be read, typed into and checked, and how much comes
 * behind its first paint. Counted from the manifest of the last build, each file by itself in gzip.
 */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { shippedScenarios } from '../../src/lib/course/shipped.ts';
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { ROOT } from '../../src/cli/root.ts';

const OUTPUT = join(ROOT, '.svelte-kit/output/client');
const NODES = join(ROOT, '.svelte-kit/generated/build/client-optimized/nodes');
/** @source DESIGN and acceptance of the orientation course: client code of the practice page. */
const GOAL = 110;
const PAGE = 'src/routes/learn/problem/';
const BACKDROPS: ReadonlySet<string> = new Set(shippedScenarios().map((one) => one.backdrop));

interface Chunk {
	readonly file: string;
	readonly name?: string;
	readonly imports?: readonly string[];
	readonly dynamicImports?: readonly string[];
}

type Manifest = Readonly<Record<string, Chunk>>;

/** The ids of all chunks that these load, themselves among them. */
function loadedBy(manifest: Manifest, starts: readonly string[]): ReadonlySet<string> {
	const found = new Set<string>();
	const visit = (id: string): void => {
		if (found.has(id)) return;
		const chunk = manifest[id];
		if (chunk === undefined) throw new Error(`The build has no chunk ${id}`);
		found.add(id);
		for (const one of chunk.imports ?? []) visit(one);
	};
	for (const one of starts) visit(one);
	return found;
}

/** Kilobytes of the scripts among these chunks, each in gzip. */
function kilobytes(manifest: Manifest, ids: Iterable<string>): number {
	let bytes = 0;
	for (const id of ids) {
		const file = manifest[id]?.file ?? '';
		if (file.endsWith('.js')) bytes += gzipSync(readFileSync(join(OUTPUT, file)), { level: 9 }).length;
	}
	return bytes / 1000;
}

function without(ids: ReadonlySet<string>, ...others: readonly ReadonlySet<string>[]): readonly string[] {
	return [...ids].filter((id) => others.every((other) => !other.has(id)));
}

/** The generated module of the page: the framework numbers them. */
function nodeOfPage(): string {
	const name = readdirSync(NODES).find((file) => readFileSync(join(NODES, file), 'utf8').includes(`${PAGE}+page.svelte`));
	if (name === undefined) throw new Error('The build has no practice page');
	return name;
}

function measure(): Figure[] {
	const manifest = JSON.parse(readFileSync(join(OUTPUT, '.vite/manifest.json'), 'utf8')) as Manifest;
	const ids = Object.keys(manifest);
	const idOf = (ending: string): string => {
		const id = ids.find((one) => one.endsWith(ending));
		if (id === undefined) throw new Error(`The build has no chunk that ends in ${ending}`);
		return id;
	};
	const page = idOf(`client-optimized/nodes/${nodeOfPage()}`);
	const always = loadedBy(manifest, [
		idOf('client-optimized/app.js'),
		idOf('client-optimized/nodes/0.js'),
		page,
		idOf('runtime/client/entry.js'),
		idOf('runtime/client/client-entry.js')
	]);
	// What loads a backdrop may stand in a chunk that other pages share.
	const apart = new Set([...always].flatMap((id) => manifest[id]?.dynamicImports ?? []));
	const backdrops = [...apart]
		.filter((id) => BACKDROPS.has(manifest[id]?.name ?? ''))
		.map((id) => without(loadedBy(manifest, [id]), always))
		.sort((a, b) => kilobytes(manifest, b) - kilobytes(manifest, a));
	if (backdrops.length !== BACKDROPS.size) throw new Error(`The page loads ${backdrops.length} backdrops apart, of ${BACKDROPS.size}`);
	const largest = new Set(backdrops[0]);
	const figures = (['en', 'es'] as const).map((language): Figure => {
		const words = without(loadedBy(manifest, [`src/lib/text/${language}/first.ts`]), always, largest);
		const value = kilobytes(manifest, [...always, ...largest, ...words]);
		return {
			name: `code before a problem can be checked, ${language}, with the largest backdrop`,
			value,
			unit: 'kB gzip',
			goal: `≤ ${GOAL} kB gzip`,
			holds: value <= GOAL
		};
	});
	const first = loadedBy(manifest, [...always, ...largest, 'src/lib/text/en/first.ts']);
	const behind = (endings: readonly string[]): number => kilobytes(manifest, without(loadedBy(manifest, endings.map(idOf)), first));
	const shown = (name: string, value: number): Figure => ({ name, value, unit: 'kB gzip', goal: '–', holds: true });
	return [
		...figures,
		shown('of it the backdrop', kilobytes(manifest, largest)),
		shown('behind the first paint: what answers to typing and marks', behind([`${PAGE}parts/typing.ts`, `${PAGE}parts/grading.ts`])),
		shown('behind the first paint: all of it', behind([`${PAGE}parts/typing.ts`, `${PAGE}parts/grading.ts`, `${PAGE}parts/later.ts`, 'src/lib/text/en/index.ts']))
	];
}

const bench: Bench = {
	name: 'client-size',
	async run() {
		if (!existsSync(join(OUTPUT, '.vite/manifest.json'))) throw new Error('Nothing is built yet: run `npm run build` first');
		return await Promise.resolve(measure());
	}
};

export default bench;
