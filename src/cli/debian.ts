import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

/** Whether Debian packages can be put on this machine by this user. */
function canInstall(): boolean {
	return process.getuid?.() === 0 && existsSync('/usr/bin/apt-get');
}

/**
 * Installs Debian packages.
 * @param why what they are for, for the message
 * @throws Error saying what to install by hand, when this user cannot or the installation fails
 */
export function installPackages(packages: readonly string[], why: string): void {
	const byHand = `${why}: install the Debian packages ${packages.join(', ')} (or their like) and try again.`;
	if (!canInstall()) throw new Error(byHand);
	console.log(`Installing ${packages.join(', ')} (${why}) …`);
	const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
	const commands = [
		['update', '-qq'],
		['install', '-y', '-qq', '--no-install-recommends', ...packages]
	];
	for (const command of commands) {
		const run = spawnSync('apt-get', command, { env, stdio: ['ignore', 'ignore', 'inherit'] });
		if (run.status !== 0) throw new Error(byHand);
	}
}
