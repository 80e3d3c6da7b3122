/** A program of a bench's own: started, reached, stopped. */
import { spawn, type ChildProcess } from 'node:child_process';
import { ROOT } from '../../../src/cli/root.ts';

/** How long a server may take to start, a build included, ms. */
const PATIENCE = 300_000;

export interface Started {
	readonly address: string;
	readonly stop: () => Promise<void>;
}

/** Starts a program and waits for the line with its address. @throws if it ends before, or takes too long. */
export function started(file: string, args: readonly string[], env: Readonly<Record<string, string>>): Promise<Started> {
	return new Promise((ready, failed) => {
		const child: ChildProcess = spawn(process.execPath, [file, ...args], {
			cwd: ROOT,
			env: { ...process.env, ...env },
			stdio: ['ignore', 'pipe', 'inherit']
		});
		const ended = new Promise<void>((end) => child.once('exit', () => end()));
		const stop = (): Promise<void> => {
			child.kill('SIGTERM');
			return ended;
		};
		const timer = setTimeout(() => {
			child.kill('SIGKILL');
			failed(new Error(`${file} did not start`));
		}, PATIENCE);
		void ended.then(() => failed(new Error(`${file} ended before it was reached`)));
		let said = '';
		child.stdout?.on('data', (part: Buffer) => {
			said += part.toString('utf8');
			const address = /is at (http:\/\/127\.0\.0\.1:\d+)/.exec(said)?.[1];
			if (address === undefined) return;
			clearTimeout(timer);
			ready({ address, stop });
		});
	});
}
