/** Runs a command of `underfoot` beside the server, in a process of its own. */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { setPriority } from 'node:os';
import { dirname, join, resolve } from 'node:path';

/** How far behind the server it stands in line. @reason the usual step of nice(1) */
const NICE = 10;

/** The most that is read of what it says, characters: far more than it has to say. */
const MOST_SAID = 1024 * 1024;

/** @returns the file of the command: beside the one that the server was started from, or in the folder that it runs in; null where there is none. */
export function commandFile(): string | null {
	const places = [join(dirname(process.argv[1] ?? ''), 'underfoot.ts'), resolve('src/cli/underfoot.ts')];
	return places.find((place) => existsSync(place)) ?? null;
}

/**
 * Runs a command. When the server ends, it is told to stop, and does not go on alone.
 * @returns what it prints, read as JSON
 * @throws Error with what it says, when it is refused, fails or is stopped
 */
export async function runCommand(file: string, args: readonly string[], env: NodeJS.ProcessEnv): Promise<unknown> {
	const child = spawn(process.execPath, [file, ...args], { env, stdio: ['ignore', 'pipe', 'pipe'] });
	const end = (): void => void child.kill('SIGTERM');
	process.once('sveltekit:shutdown', end);
	process.once('exit', end);
	const said = { output: '', error: '' };
	child.stdout.setEncoding('utf8').on('data', (text: string) => {
		said.output = (said.output + text).slice(-MOST_SAID);
	});
	child.stderr.setEncoding('utf8').on('data', (text: string) => {
		said.error = (said.error + text).slice(-MOST_SAID);
	});
	child.once('spawn', () => {
		if (child.pid !== undefined) setPriority(child.pid, NICE);
	});
	try {
		const code = await new Promise<number | string | null>((done, failed) => {
			child.once('error', failed);
			child.once('close', (status, signal) => done(status ?? signal));
		});
		if (code !== 0) throw new Error(`underfoot ${args[0] ?? ''} ended with ${String(code)}: ${said.error.trim().slice(-400)}`);
		return JSON.parse(said.output);
	} finally {
		process.off('sveltekit:shutdown', end);
		process.off('exit', end);
	}
}
