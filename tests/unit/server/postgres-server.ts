import { spawnSync } from 'node:child_process';
import { createServer, type AddressInfo } from 'node:net';
import { join } from 'node:path';
import { tmpdir } from 'node:os';
import { mkdtempSync, chmodSync, rmSync } from 'node:fs';
import { postgresPrograms } from '../../../src/cli/postgres.ts';

/** A PostgreSQL of the tests' own, on this machine only. */
export interface PostgresServer {
	/** For DATABASE_URL. */
	address: string;
	stop(): void;
}

/** PostgreSQL refuses to run as root: then its own user, which its package makes, runs it. */
function run(program: string, args: readonly string[]): void {
	const asRoot = process.getuid?.() === 0;
	const command = asRoot ? ['runuser', '-u', 'postgres', '--', program, ...args] : [program, ...args];
	const [name = '', ...rest] = command;
	// pg_ctl leaves the server running: it must not inherit a pipe that this process would wait for.
	const done = spawnSync(name, rest, { cwd: '/', stdio: ['ignore', 'ignore', 'ignore'] });
	if (done.status !== 0) throw new Error(`${program} ended with ${done.status ?? done.signal}`);
}

async function freePort(): Promise<number> {
	const server = createServer();
	await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
	const { port } = server.address() as AddressInfo;
	await new Promise((closed) => server.close(closed));
	return port;
}

/**
 * Starts a new PostgreSQL with empty tables in a folder of its own.
 * @throws Error when there is none on this machine (`npm test` installs it) or it does not start
 */
export async function startPostgres(): Promise<PostgresServer> {
	const programs = postgresPrograms();
	if (programs === null) {
		throw new Error('No PostgreSQL on this machine: npm test installs it, or set POSTGRES_BIN');
	}
	const home = mkdtempSync(join(tmpdir(), 'underfoot-postgres-'));
	chmodSync(home, 0o777);
	const data = join(home, 'data');
	run(join(programs, 'initdb'), ['-D', data, '-U', 'underfoot', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync']);
	const start = (port: number): void => {
		// Nothing here outlives the test: what a power cut would lose may be lost.
		const options = `-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories='' -c fsync=off -c full_page_writes=off`;
		run(join(programs, 'pg_ctl'), ['-D', data, '-w', '-l', join(home, 'log'), '-o', options, 'start']);
	};
	let port = await freePort();
	try {
		start(port);
	} catch {
		// Somebody else took the port between finding and binding it.
		port = await freePort();
		start(port);
	}
	return {
		address: `postgres://underfoot@127.0.0.1:${port}/postgres`,
		stop() {
			run(join(programs, 'pg_ctl'), ['-D', data, '-m', 'immediate', '-w', 'stop']);
			rmSync(home, { recursive: true, force: true });
		}
	};
}
