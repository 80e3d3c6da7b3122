/** `underfoot verify-records` and `new-signing-key`, as who runs the server calls them. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { BREAKS } from '#lib/server/records/verify/result.ts';
import { makeCheckpoint } from '#lib/server/records/checkpoint.ts';
import { publicKeys } from '#lib/server/records/keys.ts';
import { employerMessages } from '#lib/text/index.ts';
import { command } from '../../../../src/cli/underfoot/commands.ts';
import { Progress } from '../../../../src/cli/underfoot/progress.ts';
import { ROOT } from '../../../../src/cli/root.ts';
import { NOW, aLearner, anOrganisation } from '../../server/people/organisation.ts';

let folder: string;
let address: string;
let db: Database;
let organisation: string;

const environment = process.env;

beforeAll(async () => {
	folder = mkdtempSync(join(tmpdir(), 'underfoot-verify-'));
	address = `file:${join(folder, 'underfoot.sqlite')}`;
	db = await openDatabase(address);
	organisation = await anOrganisation(db);
	await aLearner(db, organisation, 'V-1');
	const made = await makeCheckpoint(db, organisation, NOW);
	writeFileSync(join(folder, 'checkpoint.json'), JSON.stringify(made));
	writeFileSync(join(folder, 'other.json'), '{"token":"a.b.c"}');
});
afterAll(async () => {
	await db.destroy();
	rmSync(folder, { recursive: true });
});
afterEach(() => {
	process.env = environment;
});

function run(...line: readonly string[]): ReturnType<typeof command> {
	process.env = { ...environment, UNDERFOOT_SIGNING_KEYS: '', DATABASE_URL: address };
	return command(line);
}

async function refusedField(...line: readonly string[]): Promise<string | undefined> {
	const outcome = await run(...line);
	return outcome.kind === 'refused' ? outcome.problems[0]?.field : outcome.kind;
}

describe('underfoot verify-records', () => {
	it('tells what it looked at, and which share was drawn again', async () => {
		const outcome = await run('verify-records', '--redraw', '12.5', '--seed', '7', '--organisation', organisation, '--checkpoint', join(folder, 'checkpoint.json'));
		expect(outcome).toMatchObject({ kind: 'done', output: { kind: 'holds', organisations: 1, entries: 3, checkpoints: 1, people: 1, redrawPercent: 12.5, redrawSeed: 7 } });
	});

	it('looks at the chain alone when that is asked', async () => {
		expect(await run('verify-records', '--hashes-only')).toMatchObject({ kind: 'done', output: { kind: 'holds', entries: 3, people: 0 } });
	});

	it.each([
		[['--redraw', '101'], '--redraw'],
		[['--redraw', '-1'], '--redraw'],
		[['--redraw', 'all'], '--redraw'],
		[['--seed', '1.5'], '--seed'],
		[['--organisation', 'nobody'], '--organisation'],
		[['--checkpoint', 'NONE.json'], '--checkpoint'],
		[['--every'], '--every']
	])('refuses %j', async (line, field) => {
		expect(await refusedField('verify-records', ...line)).toBe(field);
	});

	it('refuses a file that is no checkpoint', async () => {
		expect(await refusedField('verify-records', '--checkpoint', join(folder, 'other.json'))).toBe('--checkpoint');
	});

	it('makes no database where there is none, and leaves one of another version as it is', async () => {
		address = `file:${join(folder, 'none.sqlite')}`;
		expect(await refusedField('verify-records')).toBe('DATABASE_URL');
		const old = join(folder, 'old.sqlite');
		const made = await openDatabase(`file:${old}`);
		await sql`delete from kysely_migration where name = '0007-records'`.execute(made);
		await made.destroy();
		address = `file:${old}`;
		expect(await refusedField('verify-records')).toBe('DATABASE_URL');
		address = `file:${join(folder, 'underfoot.sqlite')}`;
	});

	it('ends with 1, and names the place in words, where something does not hold', async () => {
		await sql`update person set name = 'Somebody Else'`.execute(db);
		const { status, stdout, stderr } = spawnSync(process.execPath, [join(ROOT, 'src/cli/underfoot.ts'), 'verify-records'], {
			env: { ...environment, UNDERFOOT_SIGNING_KEYS: '', DATABASE_URL: address },
			encoding: 'utf8'
		});
		expect({ status, stderr }).toEqual({ status: 1, stderr: '' });
		expect(JSON.parse(stdout)).toMatchObject({ kind: 'broken', organisation, table: 'person', column: 'name', seq: 2, code: 'column-differs', in: 'the list of people', problem: expect.stringMatching(/chain/), remedy: expect.stringMatching(/backup/) });
		await sql`update person set name = 'Dario Penn'`.execute(db);
	});

	it('has words for everything that can be wrong', async () => {
		for (const language of ['en', 'es'] as const) expect(Object.keys((await employerMessages(language)).keeping.breaks).toSorted()).toEqual([...BREAKS].toSorted());
	});
});

describe('underfoot new-signing-key', () => {
	it('makes a key and retires the one before', async () => {
		const outcome = await run('new-signing-key', 'checkpoint');
		const keys = await publicKeys(db, 'checkpoint');
		expect(outcome).toMatchObject({ kind: 'done', output: { use: 'checkpoint', alg: 'EdDSA', kid: keys.find(({ retiredAt }) => retiredAt === null)?.kid } });
		expect(keys.length).toBe(2);
		expect(await run('verify-records')).toMatchObject({ kind: 'done' });
	});

	it('refuses what no key is for', async () => {
		expect(await refusedField('new-signing-key', 'letters')).toBe('checkpoint|credential');
	});
});

describe('The progress of a long command', () => {
	function told(terminal: boolean): { readonly written: string[]; readonly tell: (at: number, done: number) => void; readonly end: () => void } {
		const written: string[] = [];
		let now = 0;
		const out = {
			isTTY: terminal,
			write: (text: string | Uint8Array) => {
				written.push(String(text));
				return true;
			}
		};
		const progress = new Progress(out, () => now);
		return {
			written,
			tell(at, done) {
				now = at;
				progress.tell(done, 200);
			},
			end: () => progress.end()
		};
	}

	it('is a bar in a terminal, which is taken away in the end', () => {
		const { written, tell, end } = told(true);
		tell(50, 1);
		tell(150, 50);
		end();
		expect(written).toEqual([`\r[${'#'.repeat(10)}${'.'.repeat(30)}]  25 %`, `\r${' '.repeat(48)}\r`]);
	});

	it('is a line now and then elsewhere', () => {
		const { written, tell, end } = told(false);
		tell(9000, 1);
		tell(11_000, 100);
		tell(12_000, 101);
		end();
		expect(written).toEqual([' 50 %  100 of 200\n']);
	});
});
