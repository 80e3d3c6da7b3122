/** The command as a shell runs it: exit codes, what stands on which output. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../../../../src/cli/root.ts';
import { FULL_PLAN } from '../../../support/documents.ts';
import { MEGABYTE, withValue } from '../../../support/mutations.ts';

let folder: string;
beforeAll(() => {
	folder = mkdtempSync(join(tmpdir(), 'underfoot-process-'));
	writeFileSync(join(folder, 'PLAN.json'), JSON.stringify(FULL_PLAN));
	writeFileSync(join(folder, 'LONG.json'), JSON.stringify(withValue(FULL_PLAN, ['lanyard', 'length'], MEGABYTE)));
	writeFileSync(join(folder, 'HIGH.json'), JSON.stringify(withValue(FULL_PLAN, ['worker', 'dRingHeight'], '1.95 m')));
});
afterAll(() => rmSync(folder, { recursive: true }));

function underfoot(...line: string[]) {
	const { status, stdout, stderr } = spawnSync(process.execPath, [join(ROOT, 'src/cli/underfoot.ts'), ...line], { cwd: folder, encoding: 'utf8' });
	return { status, stdout, stderr };
}

describe('underfoot', () => {
	it('prints JSON and ends with 0 when it is done', () => {
		const { status, stdout, stderr } = underfoot('analyse', 'PLAN.json');
		expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
		expect(JSON.parse(stdout)).toMatchObject({ kind: 'analysed' });
		expect(stdout).not.toMatch(/[\u00a0\u202f]/);
	});

	it.each([
		[['analyse', 'LONG.json'], 'lanyard.length'],
		[['analyse', 'HIGH.json'], 'worker.dRingHeight'],
		[['analyse', 'NONE.json'], 'PLAN.json'],
		[['draw', 'silo-top', '--seed', 'NaN'], '--seed'],
		[['draw', 'silo-top'], '--seed'],
		[['grade', 'bridge-bearing', '--seed', '7', '--ask', 'free-fall', '--answer', '1 kg'], '--answer'],
		[['fly'], 'COMMAND']
	])('%j ends with 2, names the field, and prints nothing else', (line, field) => {
		const { status, stdout, stderr } = underfoot(...line);
		expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
		expect(JSON.parse(stderr)).toEqual({ error: [{ field, problem: expect.stringMatching(/\S/), remedy: expect.stringMatching(/\S/) }] });
		expect(stderr.length).toBeLessThan(1000);
		expect(stderr).not.toMatch(/ at .*:\d+:\d+/);
	});

	it('prints help and ends with 0 when nothing is asked', () => {
		expect(underfoot()).toMatchObject({ status: 0, stderr: '', stdout: expect.stringContaining('analyse PLAN.json') });
	});

	it('ends quietly when its reader has read enough', () => {
		const { status, stderr } = spawnSync('sh', ['-c', `"${process.execPath}" "${join(ROOT, 'src/cli/underfoot.ts')}" schema scenario | head -c 10`], { cwd: folder, encoding: 'utf8' });
		expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
	});

	it('finds a file from the folder in which npm was called', () => {
		const env = { ...process.env, INIT_CWD: folder, npm_lifecycle_event: 'underfoot' };
		const { status } = spawnSync(process.execPath, ['src/cli/underfoot.ts', 'analyse', 'PLAN.json'], { cwd: ROOT, env, encoding: 'utf8' });
		expect(status).toBe(0);
	});
});
