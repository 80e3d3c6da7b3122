import { existsSync } from 'node:fs';
import { installPackages } from './debian.ts';

/** Where a Chromium is usually found. */
const PLACES = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome-stable'];

/** The browser that the tests drive: CHROMIUM_PATH, or the one installed; null if there is none. */
export function chromiumPath(): string | null {
	const named = process.env.CHROMIUM_PATH;
	if (named !== undefined && named !== '') return named;
	return PLACES.find((place) => existsSync(place)) ?? null;
}

/** Sees to it that there is a browser for the tests. */
export function ensureChromium(): void {
	if (chromiumPath() === null) {
		installPackages(['chromium'], 'The browser tests need Chromium');
	}
}
