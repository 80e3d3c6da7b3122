/** Addresses of the picture: the same choice of answers, with this or that opened. */

/** Which answers count, as the fields of the form have it. */
export interface Chosen {
	readonly scenario: string;
	readonly set: string;
	readonly from: string;
	readonly to: string;
}

/** What can be opened. */
export interface Opened {
	readonly cell?: string | undefined;
	readonly person?: string | undefined;
	readonly slip?: string | undefined;
}

/** @returns the search of an address, such as `scenario=silo-top&cell=free-fall`; empty for the plain page. */
export function searchOf({ scenario, set, from, to }: Chosen, opened: Opened = {}): string {
	const search = new URLSearchParams();
	for (const [name, value] of Object.entries({ scenario, set, from, to, ...opened })) if (typeof value === 'string' && value !== '') search.set(name, value);
	return search.toString();
}
