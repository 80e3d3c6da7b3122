import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { openDatabase } from '#lib/server/db/open.ts';
import { setUpOrganisation } from '#lib/server/people/organisation.ts';
import { enrolStaff, signInStaff } from '#lib/server/people/staff.ts';
import { command } from '../../../../src/cli/underfoot/commands.ts';

const CODE = /^[0-9A-HJKMNP-TV-Z]{4}(-[0-9A-HJKMNP-TV-Z]{4}){3}$/;
const ADDRESS = '203.0.113.7';

async function codeOf(line: readonly string[]): Promise<string> {
	const outcome = await command(line);
	if (outcome.kind !== 'done' || !('code' in outcome.output)) throw new Error(JSON.stringify(outcome));
	return String(outcome.output.code);
}

describe('who runs the server', () => {
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-codes-'));
	const address = `file:${join(folder, 'underfoot.sqlite')}`;

	beforeAll(() => vi.stubEnv('DATABASE_URL', address));
	afterAll(() => {
		vi.unstubAllEnvs();
		rmSync(folder, { recursive: true });
	});

	it('makes a code for an organisation, and one for an employer who cannot sign in', async () => {
		const setUp = await codeOf(['set-up-code']);
		expect(setUp).toMatch(CODE);
		const db = await openDatabase(address);
		const settings = { name: 'Harrow Bridges', rules: 'us-construction', units: 'us', language: 'en', zone: 'UTC', passRule: 'staged' } as const;
		const person = { name: 'Orla Finch', email: 'orla@example.org', password: 'three cranes by the river' };
		const done = await setUpOrganisation(db, { code: setUp, settings, person }, ADDRESS, new Date());
		expect(done.kind).toBe('enrolled');
		const again = await codeOf(['password-code', 'Orla@example.org']);
		expect(again).toMatch(CODE);
		expect((await enrolStaff(db, { code: again, password: 'four barges under the bridge' }, ADDRESS, new Date())).kind).toBe('enrolled');
		expect((await signInStaff(db, { email: 'orla@example.org', password: 'four barges under the bridge' }, ADDRESS, new Date())).kind).toBe('signed-in');
		await db.destroy();
	});

	it('is told when nobody has an e-mail', async () => {
		expect(await command(['password-code', 'nobody@example.org'])).toEqual({
			kind: 'refused',
			problems: [{ field: 'EMAIL', problem: 'is "nobody@example.org", and no member of staff has it', remedy: 'give the e-mail that they sign in with' }]
		});
	});
});
