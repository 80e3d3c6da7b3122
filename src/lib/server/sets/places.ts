/** Which problems an assignment gives, remembered: finding one may take many draws. */
import { setImmediate } from 'node:timers/promises';
import { placeOf, type SetContent, type SetPlace } from '#lib/flow/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { problemOfSeed } from '../attempts/mark.ts';

/** @reason about 200 bytes each: the rounds that some hundred people work on at the same time. */
const MOST_KEPT = 20_000;
const kept = new Map<string, SetPlace>();

/** Of which assignment, and whose. */
export interface PlaceSource {
	readonly assignment: string;
	readonly content: SetContent;
	readonly seed: string;
	readonly person: string;
	readonly scenarios: readonly Scenario[];
}

function keyOf({ assignment, content, person }: PlaceSource, nth: number): string {
	return `${assignment} ${content.sameForAll ? '' : person} ${nth}`;
}

/** @param nth from 0 through all rounds. @returns the same as `placeOf`, from memory if it was asked for lately. */
export function knownPlace(source: PlaceSource, nth: number): SetPlace {
	const key = keyOf(source, nth);
	const known = kept.get(key);
	if (known !== undefined) return known;
	const { content, scenarios, seed, person } = source;
	const place = placeOf({ content, scenarios, seed, person, drawn: problemOfSeed }, nth);
	kept.set(key, place);
	for (const oldest of kept.keys()) {
		if (kept.size <= MOST_KEPT) break;
		kept.delete(oldest);
	}
	return place;
}

/** @returns the places of a round, in order. Between two that have to be drawn, others get their turn. */
export async function knownPlaces(source: PlaceSource, round: number): Promise<readonly SetPlace[]> {
	const { count } = source.content;
	const places: SetPlace[] = [];
	for (let nth = round * count; nth < (round + 1) * count; nth += 1) {
		if (!kept.has(keyOf(source, nth))) await setImmediate();
		places.push(knownPlace(source, nth));
	}
	return places;
}
