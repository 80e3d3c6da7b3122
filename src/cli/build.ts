import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './root.ts';

/** What goes into the build: a change in any of these makes it stale. */
const SOURCES = [
	'src',
	'static',
	'shared',
	'package-lock.json',
	'package.json',
	'svelte.config.js',
	'tsconfig.json',
	'vite.config.ts'
];

/** What the server starts from; written last by the adapter. */
const BUILT = 'build/handler.js';

/** When a file, or the newest file within a folder, was changed, ms since 1970; 0 if there is none. */
function changed(path: string): number {
	const stat = statSync(path, { throwIfNoEntry: false });
	if (stat === undefined) return 0;
	if (!stat.isDirectory()) return stat.mtimeMs;
	const within = readdirSync(path).map((name) => changed(join(path, name)));
	return Math.max(stat.mtimeMs, ...within);
}

/** Whether there is no build, or one older than what it is made from. */
export function isStale(root: string = ROOT): boolean {
	const built = changed(join(root, BUILT));
	return built === 0 || SOURCES.some((source) => changed(join(root, source)) > built);
}

/** Builds the application into build/. Ends the process with the builder's code if that fails. */
export function build(): void {
	const vite = join(ROOT, 'node_modules/vite/bin/vite.js');
	const run = spawnSync(process.execPath, [vite, 'build', '--logLevel', 'warn'], {
		cwd: ROOT,
		stdio: ['ignore', 'inherit', 'inherit']
	});
	if (run.status !== 0) process.exit(run.status ?? 1);
}
