/** The browser's store; one that is closed or full forgets, and nothing else happens. */

/** @returns what is kept under a key, or null. */
export function readStore(key: string): string | null {
	try {
		return localStorage.getItem(key);
	} catch {
		return null;
	}
}

/** Keeps a text under a key. @returns false where the store is full or closed. */
export function writeStore(key: string, text: string): boolean {
	try {
		localStorage.setItem(key, text);
		return true;
	} catch {
		return false;
	}
}

/** @returns a kept text as an object, or undefined. Never throws. */
export function fieldsOf(text: string | null): Fields | undefined {
	if (text === null) return undefined;
	try {
		const value: unknown = JSON.parse(text);
		return isFields(value) ? value : undefined;
	} catch {
		return undefined;
	}
}

export type Fields = Readonly<Record<string, unknown>>;

export function isFields(value: unknown): value is Fields {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** @returns true for a whole number from 0 on. */
export function isCount(value: unknown): value is number {
	return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;
}
