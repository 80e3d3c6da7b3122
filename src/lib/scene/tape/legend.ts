/** Terms of one or two tapes as rows of a list: used where words do not fit beside the bands. */
import type { TapeModel, TapeTerm, TermId } from '../model.ts';

export interface LegendRow {
	readonly key: string;
	readonly term: TermId;
	readonly name: string;
	/** Number on the first tape and on the second; empty where it has no such term. */
	readonly first: string;
	readonly second: string;
}

function keyed(terms: readonly TapeTerm[]): { key: string; term: TapeTerm }[] {
	const counts = new Map<TermId, number>();
	return terms.map((term) => {
		const n = counts.get(term.id) ?? 0;
		counts.set(term.id, n + 1);
		return { key: `${term.id}-${n}`, term };
	});
}

function shown(term: TapeTerm): string {
	return term.sign < 0 ? `−${term.label}` : term.label;
}

/** Rows in the order of the first tape, then what only the second one has. */
export function legendRows(first: Pick<TapeModel, 'terms'>, second: Pick<TapeModel, 'terms'> | null): LegendRow[] {
	const mine = keyed(second?.terms ?? []);
	const rows = keyed(first.terms).map(({ key, term }): LegendRow => {
		const own = mine.find((m) => m.key === key);
		return { key, term: term.id, name: term.name, first: shown(term), second: own === undefined ? '' : shown(own.term) };
	});
	for (const { key, term } of mine) {
		if (!rows.some((r) => r.key === key)) rows.push({ key, term: term.id, name: term.name, first: '', second: shown(term) });
	}
	return rows;
}
