import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { isStale } from '../../../src/cli/build.ts';

describe('a build', () => {
	let root: string;

	/** Writes a file as of a second of the year 2000, its folders as of then too. */
	function write(path: string, second: number): void {
		const file = join(root, path);
		mkdirSync(dirname(file), { recursive: true });
		writeFileSync(file, '');
		const time = Date.UTC(2000, 0, 1, 0, 0, second) / 1000;
		for (let at = file; at !== root; at = dirname(at)) utimesSync(at, time, time);
	}

	beforeEach(() => {
		root = mkdtempSync(join(tmpdir(), 'underfoot-build-'));
		write('src/lib/arrest/index.ts', 10);
		write('static/icon.svg', 10);
		write('package-lock.json', 10);
		write('build/handler.js', 20);
	});

	afterEach(() => rmSync(root, { recursive: true }));

	it('is used again when nothing has changed since', () => {
		expect(isStale(root)).toBe(false);
	});

	it('is stale when there is none', () => {
		rmSync(join(root, 'build/handler.js'));
		expect(isStale(root)).toBe(true);
	});

	it.each([
		'src/lib/arrest/index.ts',
		'src/routes/new/+page.svelte',
		'static/icon.svg',
		'shared/rules/us.json',
		'package-lock.json',
		'svelte.config.js'
	])('is stale when %s is newer', (path) => {
		write(path, 30);
		expect(isStale(root)).toBe(true);
	});

	it('does not mind a newer test', () => {
		write('tests/unit/some.test.ts', 30);
		expect(isStale(root)).toBe(false);
	});
});
