import { randomInt } from 'node:crypto';
import { employerMessages } from '#lib/text/index.ts';
import type * as Server from '#lib/server/index.ts';
import { quoted, readSeed, type Arguments } from './arguments.ts';
import { readJsonFile } from './files.ts';
import { readAs, refuse, type Outcome, type Read } from './outcome.ts';
import { withServer } from './people.ts';
import { Progress } from './progress.ts';

/** Seeds below this are drawn where none is given. @reason short enough to be typed again */
const SEEDS = 1_000_000;
const ALL = 100;

/** @returns the token of a checkpoint that was handed out as a file. */
function readCheckpoint(path: string | undefined, server: typeof Server): Read<string | undefined> {
	if (path === undefined) return readAs(undefined);
	const file = readJsonFile(path, '--checkpoint');
	if (file.kind === 'refused') return file;
	const { value } = file;
	const token = typeof value === 'object' && value !== null && 'token' in value && typeof value.token === 'string' ? value.token : '';
	if (server.peekToken(token) !== undefined) return readAs(token);
	return refuse('--checkpoint', 'is no checkpoint', 'give a file that was saved on the page /records/keeping');
}

/** @returns the share of answers that are drawn again, in percent. */
function readPercent(text: string | undefined): Read<number> {
	if (text === undefined) return readAs(ALL);
	const percent = Number(text);
	return /^\d{1,3}(\.\d{1,4})?$/.test(text) && percent <= ALL ? readAs(percent) : refuse('--redraw', `is ${quoted(text)}`, 'give a number of percent from 0 to 100');
}

/** Verifies the records of the database, which is only read. @returns what holds, or the first thing that does not: then the exit code is 1 */
export async function verifyAll(given: Arguments): Promise<Outcome> {
	const percent = readPercent(given.options.get('redraw'));
	if (percent.kind === 'refused') return percent;
	const seed = readSeed(given.options.get('seed') ?? String(randomInt(SEEDS)));
	if (seed.kind === 'refused') return seed;
	const { breaks, tables } = (await employerMessages('en')).keeping;
	return withServer(async (server) => {
		const token = readCheckpoint(given.options.get('checkpoint'), server);
		if (token.kind === 'refused') return token;
		const progress = new Progress(process.stderr, () => performance.now());
		const organisation = given.options.get('organisation');
		const options: Server.VerifyOptions = {
			depth: given.options.has('hashes-only') ? 'hashes' : 'answers',
			redraw: { share: percent.value / ALL, seed: seed.value },
			progress: (done, of) => progress.tell(done, of),
			...(organisation === undefined ? {} : { organisation }),
			...(token.value === undefined ? {} : { handedOut: token.value })
		};
		const read = await server.readDatabase(server.databaseAddress(process.env), async (db) => {
			if (organisation !== undefined && (await server.findOrganisation(db, organisation)) === null) return null;
			return server.verifyRecords(db, options);
		});
		progress.end();
		if (read.kind === 'missing') return refuse('DATABASE_URL', 'names no database', 'give the address of the database that the server uses');
		if (read.kind === 'other-version') return refuse('DATABASE_URL', 'names a database of another version of this program, which is left as it is', 'verify it with that version, or start the server of this one once: that brings it up to date');
		if (read.value === null) return refuse('--organisation', `is ${quoted(organisation ?? '')}, which is none of this database`, 'give the id of an organisation, or leave it out for all');
		const drawn = options.depth === 'answers' ? { redrawPercent: percent.value, redrawSeed: seed.value } : {};
		const { counts } = read.value;
		if (read.value.kind === 'holds') return { kind: 'done', output: { kind: 'holds', ...counts, ...drawn } };
		const { problem: code, table, ...place } = read.value.broken;
		const { what, remedy } = breaks[code];
		return { kind: 'broken', output: { kind: 'broken', ...place, table, in: tables[table as keyof typeof tables], code, problem: what, remedy, looked: { ...counts, ...drawn } } };
	});
}

/** Makes a new signing key and retires the one before. */
export function newSigningKey(use: string): Promise<Outcome> {
	return withServer(async (server) => {
		const known = server.KEY_USES.find((one) => one === use);
		if (known === undefined) return refuse('checkpoint|credential', `is ${quoted(use)}`, 'give checkpoint or credential');
		const { kid, alg } = await server.renewSigningKey(await server.database(), known, new Date());
		return { kind: 'done', output: { kind: 'new-signing-key', use: known, kid, alg } };
	});
}
