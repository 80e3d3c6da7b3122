/** What of a scenario a set asks, and which scenarios fit a choice: the same on the server and in the page. */
import type { Ask, Cell, Scenario } from '#lib/scenario/index.ts';

/** How lengths and masses are written: in which of two systems. */
export type Units = 'metric' | 'us';

/** The cells, in the order in which they are offered. */
export const SKILLS = [
	'label-and-mass',
	'free-fall',
	'required-clearance',
	'available-and-verdict',
	'force-and-limits',
	'swing-and-path',
	'decisions'
] as const satisfies readonly Cell[];

/** The part of an ask that choosing looks at. */
export type OfferedAsk = Pick<Ask, 'id' | 'cell'> & ({ readonly kind: 'number'; readonly quantity: Extract<Ask, { kind: 'number' }>['quantity'] } | { readonly kind: 'decision'; readonly with: readonly string[] });

/** A scenario that can be put into a set. */
export interface Offer {
	readonly id: string;
	readonly version: number;
	readonly title: string;
	readonly units: Units;
	readonly difficulty: Scenario['difficulty'];
	/** Written by the organisation itself. */
	readonly own: boolean;
	readonly asks: readonly OfferedAsk[];
}

/** Which scenarios are to be listed. */
export interface Narrowing {
	readonly skills: readonly Cell[];
	readonly units: Units | 'all';
	readonly difficulty: Scenario['difficulty'] | 'all';
}

/** @returns the system that a scenario is written in. */
export function unitsOf(scenario: Pick<Scenario, 'units'>): Units {
	return scenario.units === 'metric' ? 'metric' : 'us';
}

/** @returns a scenario's title; what is only drawn later stands as three dots. */
export function titleOf(scenario: Scenario, language: 'en' | 'es'): string {
	return scenario.words[language].title.replace(/\{[^{}]*\}/g, '…');
}

/** @returns a scenario as it is offered. */
export function offerOf(scenario: Scenario, language: 'en' | 'es'): Offer {
	const { id, version, difficulty, asks } = scenario;
	return {
		id,
		version,
		title: titleOf(scenario, language),
		units: unitsOf(scenario),
		difficulty,
		own: id.startsWith('own-'),
		asks: asks.map((ask) =>
			ask.kind === 'number' ? { id: ask.id, cell: ask.cell, kind: ask.kind, quantity: ask.quantity } : { id: ask.id, cell: ask.cell, kind: ask.kind, with: ask.with }
		)
	};
}

/**
 * @param skills the cells that are chosen; none stands for all
 * @returns what is asked of a scenario, in its order: the asks of these cells, a decision always with its numbers
 */
export function askedOf<One extends OfferedAsk>(asks: readonly One[], skills: readonly Cell[]): readonly One[] {
	if (skills.length === 0) return asks;
	const wanted = new Set<string>();
	for (const ask of asks) {
		if (!skills.includes(ask.cell)) continue;
		wanted.add(ask.id);
		if (ask.kind === 'decision') for (const id of ask.with) wanted.add(id);
	}
	return asks.filter((ask) => wanted.has(ask.id));
}

/** @returns whether a scenario belongs in a list that is narrowed so. */
export function fits(offer: Offer, { skills, units, difficulty }: Narrowing): boolean {
	return (
		(units === 'all' || offer.units === units) &&
		(difficulty === 'all' || offer.difficulty === difficulty) &&
		askedOf(offer.asks, skills).length > 0
	);
}

/**
 * @param asked by scenario, the ids of what a set asks of it
 * @returns the cells that would be ticked to ask this; none where all is asked
 */
export function skillsOf(offers: readonly Offer[], asked: ReadonlyMap<string, readonly string[]>): readonly Cell[] {
	const found = offers.flatMap((offer) => {
		const ids = asked.get(offer.id);
		return ids === undefined ? [] : [{ offer, ids }];
	});
	if (found.every(({ offer, ids }) => offer.asks.every((ask) => ids.includes(ask.id)))) return [];
	const cells = new Set(found.flatMap(({ offer, ids }) => offer.asks.filter((ask) => ids.includes(ask.id)).map((ask) => ask.cell)));
	return SKILLS.filter((cell) => cells.has(cell));
}

/** @reason four of five: one careless error in a short set passes, a misunderstanding does not */
const USUAL_SHARE = 0.8;

/** @returns how many problems must be right where nothing else is said. */
export function usualRight(count: number): number {
	return Math.max(1, Math.ceil(USUAL_SHARE * count));
}
