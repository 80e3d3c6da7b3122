/** `underfoot backup` and `restore`, as who runs the server calls them; and the daily job that calls the first. */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { reportsFor } from '#lib/server/db/job-reports.ts';
import { backupJob, takeBackup } from '#lib/server/jobs/backup.ts';
import { runJob } from '#lib/server/jobs/job.ts';
import { backupName } from '#lib/server/keeping/names.ts';
import { command } from '../../../../src/cli/underfoot/commands.ts';
import { ROOT } from '../../../../src/cli/root.ts';
import { aLearner, aMember, anOrganisation } from '../../server/people/organisation.ts';

/** Keys lie beside the database, as they do where nothing is set. */
const NO_KEYS = { UNDERFOOT_KEY: '', UNDERFOOT_SIGNING_KEYS: '' };
const CLI = join(ROOT, 'src/cli/underfoot.ts');

let folder: string;
let file: string;
let db: Database;

beforeAll(async () => {
	vi.spyOn(process.stderr, 'write').mockReturnValue(true);
	folder = mkdtempSync(join(tmpdir(), 'underfoot-keeping-'));
	file = join(folder, 'here/underfoot.sqlite');
	db = await openDatabase(`file:${file}`);
	const organisation = await anOrganisation(db);
	await aMember(db, organisation, 'trainer');
	for (let i = 0; i < 3; i += 1) await aLearner(db, organisation, `K-${i}`);
	writeFileSync(`${file}.key`, 'a key\n');
});

afterAll(async () => {
	vi.restoreAllMocks();
	await db.destroy();
	rmSync(folder, { recursive: true });
});

const environment = process.env;
afterEach(() => {
	process.env = environment;
});

/** Runs a command in this process, on a database. */
async function run(line: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<Awaited<ReturnType<typeof command>>> {
	process.env = { ...environment, ...NO_KEYS, DATABASE_URL: `file:${file}`, ...env };
	return command(line);
}

async function done(line: readonly string[], env: NodeJS.ProcessEnv = {}): Promise<object> {
	const outcome = await run(line, env);
	if (outcome.kind !== 'done') throw new Error(JSON.stringify(outcome));
	return outcome.output;
}

function pathIn(output: object): string {
	return 'path' in output ? String(output.path) : '';
}

describe('underfoot backup', () => {
	it('tells what it holds, and which keys must be kept elsewhere', async () => {
		const output = await done(['backup', join(folder, 'one')]);
		expect(output).toMatchObject({
			kind: 'backed-up',
			engine: 'sqlite',
			migration: '0007-records',
			rows: { person: 4, organisation: 1 },
			heads: [{ seq: 5 }],
			keepApart: [
				{ holds: 'key of PINs', where: `${file}.key`, there: true },
				{ holds: 'signing keys', where: `${file}.signing.json`, there: false }
			]
		});
		expect(readFileSync(pathIn(output)).includes('a key')).toBe(false);
	});

	it('goes into the folder of the daily ones when none is given: beside the database, or as UNDERFOOT_BACKUPS says', async () => {
		expect(pathIn(await done(['backup'])).startsWith(join(folder, 'here/backups/underfoot-'))).toBe(true);
		expect(pathIn(await done(['backup'], { UNDERFOOT_BACKUPS: join(folder, 'other') })).startsWith(join(folder, 'other/underfoot-'))).toBe(true);
		expect(await run(['backup'], { UNDERFOOT_BACKUPS: 'off' })).toMatchObject({ kind: 'refused', problems: [{ field: 'FOLDER', remedy: 'give a folder' }] });
	});

	it('makes no database where there is none', async () => {
		const none = join(folder, 'none.sqlite');
		expect(await run(['backup', join(folder, 'two')], { DATABASE_URL: `file:${none}` })).toMatchObject({ kind: 'refused', problems: [{ field: 'DATABASE_URL', problem: 'names a file that does not exist' }] });
		expect(existsSync(none)).toBe(false);
		expect(readdirSync(join(folder, 'two'))).toEqual([]);
	});

	it('prints JSON alone, and says what it is doing on the error output', () => {
		const { status, stdout, stderr } = spawnSync(process.execPath, [CLI, 'backup', 'three'], { cwd: folder, env: { ...process.env, DATABASE_URL: `file:${file}` }, encoding: 'utf8' });
		expect(status).toBe(0);
		expect(JSON.parse(stdout)).toMatchObject({ kind: 'backed-up' });
		expect(stderr).toBe('copying …\nchecking …\ncounting …\nhashing …\n');
		expect(readdirSync(join(folder, 'three'))).toHaveLength(2);
	});

	it('leaves nothing when it is told to stop', async () => {
		const to = join(folder, 'stopped');
		const child = spawn(process.execPath, [CLI, 'backup', to], { env: { ...process.env, DATABASE_URL: `file:${file}` }, stdio: ['ignore', 'ignore', 'pipe'] });
		await new Promise((begun) => child.stderr.once('data', begun));
		child.kill('SIGTERM');
		const code = await new Promise((ended) => child.once('exit', ended));
		// Told so early that it stops, or so late that it is done: nothing half.
		expect([143, 0]).toContain(code);
		expect(readdirSync(to)).toHaveLength(code === 0 ? 2 : 0);
	});
});

describe('underfoot restore', () => {
	it('puts a backup where nothing is, and says that its records were verified', async () => {
		const backup = pathIn(await done(['backup', join(folder, 'four')]));
		const there = join(folder, 'new machine/underfoot.sqlite');
		const output = await done(['restore', backup], { DATABASE_URL: `file:${there}` });
		expect(output).toMatchObject({ kind: 'restored', verified: { organisations: 1, entries: 5 }, keepApart: [{ there: false }, { there: false }] });
		expect(output).not.toHaveProperty('movedAside');
		const other = await openDatabase(`file:${there}`);
		expect(await other.selectFrom('person').select('id').execute()).toHaveLength(4);
		await other.destroy();
	});

	it('refuses to go over an organisation, or a file that somebody has open, and changes nothing', async () => {
		const backup = pathIn(await done(['backup', join(folder, 'five')]));
		expect(await run(['restore', backup])).toMatchObject({ kind: 'refused', problems: [{ field: 'DATABASE_URL', problem: 'names a file that another program has open, most likely the server' }] });
		const there = join(folder, 'five.sqlite');
		await done(['restore', backup], { DATABASE_URL: `file:${there}` });
		const before = readFileSync(there);
		expect(await run(['restore', backup], { DATABASE_URL: `file:${there}` })).toMatchObject({ kind: 'refused', problems: [{ problem: 'names a database that has an organisation already' }] });
		expect(readFileSync(there).length).toBe(before.length);
		const { movedAside } = (await done(['restore', backup, '--replace'], { DATABASE_URL: `file:${there}` })) as { movedAside: string };
		expect(existsSync(movedAside)).toBe(true);
		expect(readdirSync(folder).filter((name) => name.startsWith('five.sqlite'))).toHaveLength(2);
	});

	it('keeps what is no database any more, and takes its place only with --replace', async () => {
		const backup = pathIn(await done(['backup', join(folder, 'six')]));
		const there = join(folder, 'six.sqlite');
		writeFileSync(there, 'no database');
		writeFileSync(`${there}-wal`, 'of another');
		expect((await run(['restore', backup], { DATABASE_URL: `file:${there}` })).kind).toBe('refused');
		expect(readFileSync(there, 'utf8')).toBe('no database');
		const { movedAside } = (await done(['restore', backup, '--replace'], { DATABASE_URL: `file:${there}` })) as { movedAside: string };
		expect(readFileSync(movedAside, 'utf8')).toBe('no database');
		expect(readFileSync(`${movedAside}-wal`, 'utf8')).toBe('of another');
		expect(existsSync(`${there}-wal`)).toBe(false);
	});

	it.each([
		[['restore'], 'FILE'],
		[['restore', 'none.sqlite'], 'FILE'],
		[['restore', 'a', 'b'], '"b"'],
		[['restore', 'a', '--replace=yes'], '--replace'],
		[['backup', 'a', 'b'], '"b"']
	])('%j is refused, and the field named', async (line, field) => {
		expect(await run(line)).toMatchObject({ kind: 'refused', problems: [{ field }] });
	});
});

describe('the daily job', () => {
	const NOW = new Date();
	const env = (more: NodeJS.ProcessEnv): NodeJS.ProcessEnv => ({ ...process.env, DATABASE_URL: `file:${file}`, ...more });

	it('takes a backup, removes old ones, and tells of both', async () => {
		const to = join(folder, 'daily');
		mkdirSync(to);
		const old = Array.from({ length: 20 }, (_, i) => backupName('sqlite', new Date(NOW.getTime() - (i + 40) * 24 * 60 * 60 * 1000)));
		for (const name of [...old, 'notes.txt']) writeFileSync(join(to, name), '');
		const did = await takeBackup(env({ UNDERFOOT_BACKUPS: to }), new Date());
		const left = readdirSync(to);
		const [taken = ''] = left.filter((name) => !old.includes(name) && name.endsWith('.sqlite'));
		expect(did).toEqual({ file: taken, bytes: readFileSync(join(to, taken)).length, removed: 21 - left.filter((name) => name.endsWith('.sqlite')).length });
		expect(left).toContain('notes.txt');
		expect(left).toContain(`${taken}.json`);
		// Fourteen newest, and at most one more of each month before.
		expect(left.filter((name) => name.endsWith('.sqlite')).length).toBeLessThan(18);
	});

	it('says why it does nothing', async () => {
		expect(await takeBackup(env({ UNDERFOOT_BACKUPS: 'off' }), NOW)).toEqual({ notDone: 'off' });
		expect(await takeBackup(env({ DATABASE_URL: 'postgres://nobody@127.0.0.1/none', POSTGRES_BIN: folder }), NOW)).toEqual({ notDone: 'no-pg_dump' });
		expect(await takeBackup(env({ DATABASE_URL: 'file::memory:' }), NOW)).toEqual({ notDone: 'in-memory' });
	});

	it('is reported as failed, with what the command said, where it cannot be taken', async () => {
		const blocked = join(folder, 'blocked');
		writeFileSync(blocked, 'no folder');
		process.env = env({ UNDERFOOT_BACKUPS: join(blocked, 'below') });
		expect(await runJob(db, backupJob, '', () => NOW)).toBeNull();
		const [report] = await reportsFor(db, '', 1);
		expect(report).toMatchObject({ job: 'backup', outcome: 'failed', organisation_id: null });
		expect(report?.detail).toContain('underfoot backup ended with 3');
	});
});
