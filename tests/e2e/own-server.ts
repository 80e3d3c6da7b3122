import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { ROOT } from '../../src/cli/root.ts';

/** A server of a test's own, for tests that stop or kill it. */
export interface OwnServer {
	/** e.g. `http://127.0.0.1:40123` */
	address: string;
	/** Sends a signal, waits for the end, and gives the exit code, or the signal that ended it. */
	end(signal: 'SIGTERM' | 'SIGKILL'): Promise<number | string>;
}

/** The address that the server prints when it takes requests. */
async function printedAddress(child: ChildProcess): Promise<string> {
	if (child.stdout === null) throw new Error('The server has no output to read');
	for await (const line of createInterface({ input: child.stdout })) {
		const [address] = /http:\/\/\S+/.exec(line) ?? [];
		if (address !== undefined) return address;
	}
	throw new Error('The server ended without an address');
}

/**
 * Starts the built application on a SQLite file.
 * @param file the database; a test that starts twice gives the same one
 * @param port 0 for a free one; a test that starts twice gives the first one's
 */
export async function startOwnServer(file: string, port = 0): Promise<OwnServer> {
	const child = spawn(process.execPath, ['src/cli/start.ts'], {
		cwd: ROOT,
		env: { ...process.env, PORT: String(port), DATABASE_URL: `file:${file}` },
		stdio: ['ignore', 'pipe', 'inherit']
	});
	const address = await printedAddress(child);
	return {
		address,
		async end(signal) {
			const ended = once(child, 'exit');
			child.kill(signal);
			const [code, by] = await ended;
			return code ?? by;
		}
	};
}
