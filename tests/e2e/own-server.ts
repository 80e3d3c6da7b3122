import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { ROOT } from '../../src/cli/root.ts';

/** A server of a test's own, for tests that stop or kill it. */
export interface OwnServer {
	/** e.g. `http://127.0.0.1:40123` */
	address: string;
	/** Number of its process. */
	pid: number;
	/** The code that is printed when there is no organisation yet. */
	setUpCode: string | undefined;
	/** Sends a signal, waits for the end, and gives the exit code, or the signal that ended it. */
	end(signal: 'SIGTERM' | 'SIGKILL'): Promise<number | string>;
}

type Printed = Pick<OwnServer, 'address' | 'setUpCode'>;

/** What the server prints until it takes requests: its address, and the set-up code before that. */
async function printed(child: ChildProcess): Promise<Printed> {
	if (child.stdout === null) throw new Error('The server has no output to read');
	let setUpCode: string | undefined;
	for await (const line of createInterface({ input: child.stdout })) {
		[setUpCode] = /[0-9A-Z]{4}(?:-[0-9A-Z]{4}){3}/.exec(line) ?? [setUpCode];
		const [address] = /http:\/\/\S+/.exec(line) ?? [];
		if (address !== undefined) return { address, setUpCode };
	}
	throw new Error('The server ended without an address');
}

/** Where compiled scripts are kept, so that the hundreds of servers of a run start sooner. */
const COMPILED = join(process.env.E2E_DATA ?? tmpdir(), 'compiled');

/**
 * Starts the built application on a SQLite file.
 * @param file the database; a test that starts twice gives the same one
 * @param port 0 for a free one; a test that starts twice gives the first one's
 * @param env further variables; without them no daily backup is taken
 */
export async function startOwnServer(file: string, port = 0, env: Readonly<Record<string, string>> = {}): Promise<OwnServer> {
	const { ready, ...server } = launchOwnServer(file, port, env);
	return { ...(await ready), ...server };
}

/** A server that is starting. */
export interface StartingServer extends Pick<OwnServer, 'pid' | 'end'> {
	/** When it takes requests; fails when it ends before. */
	ready: Promise<Printed>;
}

/** Launches the built application as `startOwnServer` does, and does not wait for it. */
export function launchOwnServer(file: string, port = 0, env: Readonly<Record<string, string>> = {}): StartingServer {
	const child = spawn(process.execPath, ['src/cli/start.ts'], {
		cwd: ROOT,
		env: { ...process.env, NODE_COMPILE_CACHE: COMPILED, UNDERFOOT_BACKUPS: 'off', PORT: String(port), DATABASE_URL: `file:${file}`, ...env },
		stdio: ['ignore', 'pipe', 'inherit']
	});
	if (child.pid === undefined) throw new Error('The server could not be launched');
	return {
		pid: child.pid,
		ready: printed(child),
		async end(signal) {
			const ended = once(child, 'exit');
			child.kill(signal);
			const [code, by] = await ended;
			return code ?? by;
		}
	};
}
