import type { Role } from './who.ts';

/** A path of this site, and nothing that a browser could take for another one. */
const OWN_PATH = /^\/(?![/\\])[^\\\s]*$/;

/** Where each role begins. */
const START: Readonly<Record<Role, string>> = { learner: '/learn', trainer: '/crew', employer: '/records' };

/** @returns a path of this site that was handed over, else another. */
export function ownPath(path: FormDataEntryValue | null, otherwise: string): string {
	return typeof path === 'string' && OWN_PATH.test(path) ? path : otherwise;
}

/** @returns where a person begins after signing in. */
export function startOf(role: Role): string {
	return START[role];
}
