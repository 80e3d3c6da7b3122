/** One of the pages that a role works with. */
export interface Section {
	readonly path: '/crew' | '/crew/sets' | '/crew/scenarios' | '/crew/paper' | '/crew/board' | '/records' | '/records/list' | '/records/retraining' | '/records/people' | '/records/exports' | '/records/log' | '/records/keeping' | '/records/settings';
	readonly text: string;
}

/** @returns the section that an address belongs to: the longest path that it begins with. */
export function sectionOf(sections: readonly Section[], address: string): Section | undefined {
	const within = sections.filter(({ path }) => address === path || address.startsWith(`${path}/`));
	return within.toSorted((a, b) => b.path.length - a.path.length)[0];
}
