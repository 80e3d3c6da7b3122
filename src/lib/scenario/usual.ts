/** What numbers of a tie-off usually are at work, from shared/usual.json. No verdict rests on them. */
import usual from '#shared/usual.json' with { type: 'json' };
import { isAsideGiven, isObstacleGiven, type GivenId, type Range } from '#lib/arrest/index.ts';
import { isUnitId, toSI } from '#lib/quantity/index.ts';

/** @returns what a given usually is, SI; undefined for one of which nothing is usual. */
export function usualOf(given: GivenId): Range | undefined {
	if (isAsideGiven(given)) return undefined;
	const { min, max } = usual.givens[isObstacleGiven(given) ? 'obstacleTop' : given];
	return { least: bound(min), greatest: bound(max) };
}

function bound(of: { readonly value: number; readonly unit: string }): number {
	if (!isUnitId(of.unit)) throw new TypeError(`shared/usual.json: unknown unit ${of.unit}`);
	return toSI(of.value, of.unit);
}
