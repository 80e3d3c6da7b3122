/** One of the pages that a role works with. */
export interface Section {
	readonly path: Path;
	readonly text: string;
	/** Pages that belong to it, though their address does not begin with its own. */
	readonly with?: readonly string[];
}

type Path = '/crew' | '/crew/sets' | '/crew/scenarios' | '/crew/paper' | '/crew/board' | '/records' | '/records/retraining' | '/records/people' | '/records/exports' | '/records/keeping' | '/records/settings';

/** @returns the section that an address belongs to: one that names it, else the longest path that it begins with. */
export function sectionOf(sections: readonly Section[], address: string): Section | undefined {
	const holds = (path: string): boolean => address === path || address.startsWith(`${path}/`);
	const elsewhere = sections.find((one) => one.with?.some(holds));
	return elsewhere ?? sections.filter(({ path }) => holds(path)).toSorted((a, b) => b.path.length - a.path.length)[0];
}
