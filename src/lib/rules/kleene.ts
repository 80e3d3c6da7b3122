/**
 * Three-valued logic after Kleene. `unknown` is never taken for held: an all-of with an unknown is
 * held by nobody, and fails only when some part fails whatever the unknown turns out to be.
 */

export type Status = 'held' | 'failed' | 'unknown';

/** The worst of all: failed before unknown before held. Held when there are none. */
export function allOf(parts: readonly Status[]): Status {
	if (parts.includes('failed')) return 'failed';
	return parts.includes('unknown') ? 'unknown' : 'held';
}

/** The best of all: held before unknown before failed. Failed when there are none. */
export function anyOf(parts: readonly Status[]): Status {
	if (parts.includes('held')) return 'held';
	return parts.includes('unknown') ? 'unknown' : 'failed';
}

/** Held and failed exchanged; unknown stays unknown. */
export function not(part: Status): Status {
	if (part === 'unknown') return 'unknown';
	return part === 'held' ? 'failed' : 'held';
}
