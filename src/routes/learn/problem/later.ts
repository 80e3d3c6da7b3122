/** The second part of the page: it comes behind the first paint, and stays for the time without signal. */
import type { Language } from '#lib/quantity/index.ts';
import { messages, type Messages } from '#lib/text/index.ts';
import type * as Grading from './parts/grading.ts';
import type * as Parts from './parts/later.ts';
import type * as Typing from './parts/typing.ts';

export type { Grading, Typing };

/** Parts after the check, with all words. */
export interface Later {
	readonly parts: typeof Parts;
	readonly m: Messages;
}

/** @returns the parts that come after the check. Rejects without signal; a later call tries again. */
export async function loadLater(language: Language): Promise<Later> {
	const [parts, m] = await Promise.all([import('./parts/later.ts'), messages(language)]);
	return { parts, m };
}

/** @returns what answers to typing. Rejects without signal; a later call tries again. */
export async function loadTyping(): Promise<typeof Typing> {
	return await import('./parts/typing.ts');
}

/** @returns what marks answers. Rejects without signal; a later call tries again. */
export async function loadGrading(): Promise<typeof Grading> {
	return await import('./parts/grading.ts');
}

/**
 * Calls `load` until it succeeds: now, and each time the signal comes back.
 * @returns what ends the trying
 */
export function untilLoaded<T>(load: () => Promise<T>, done: (loaded: T) => void): () => void {
	let ended = false;
	const attempt = (): void => {
		load().then(
			(loaded) => {
				if (!ended) done(loaded);
			},
			() => {
				if (!ended) addEventListener('online', attempt, { once: true });
			}
		);
	};
	attempt();
	return () => {
		ended = true;
		removeEventListener('online', attempt);
	};
}
