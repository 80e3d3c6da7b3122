/** What was typed and not saved, in this window: kept through a reload or a crash of the page, and gone with the window. */

export interface Unsaved {
	/** What it was made from. */
	readonly revision: number;
	readonly text: string;
}

function keyOf(id: string): string {
	return `underfoot.scenario.${id}`;
}

/** Keeps a text; where nothing can be kept, nothing happens. */
export function keep(id: string, unsaved: Unsaved): void {
	try {
		sessionStorage.setItem(keyOf(id), JSON.stringify(unsaved));
	} catch {
		// A browser may refuse to store: the warning before the page is left still stands.
	}
}

/** @returns what was kept for a scenario, or undefined. */
export function kept(id: string): Unsaved | undefined {
	try {
		const value: unknown = JSON.parse(sessionStorage.getItem(keyOf(id)) ?? 'null');
		if (typeof value !== 'object' || value === null) return undefined;
		const { revision, text } = value as Partial<Unsaved>;
		return typeof revision === 'number' && typeof text === 'string' ? { revision, text } : undefined;
	} catch {
		return undefined;
	}
}

export function forget(id: string): void {
	try {
		sessionStorage.removeItem(keyOf(id));
	} catch {
		// Nothing was kept.
	}
}
