/** What share of the draws comes out how: weights in the document, shares on the screen. */
import { aimsFor, type Aim, type AimTopic } from '#lib/scenario/index.ts';
import { at, listAt, put, textAt, type Json } from './document.ts';

export interface AimShare {
	readonly fails: string;
	readonly weight: number;
	/** Of all draws, 0 to 1. */
	readonly share: number;
}

/** @returns the aims of a document with the share that each has; an unfinished weight counts nothing. */
export function aimShares(document: Json): readonly AimShare[] {
	const aims = listAt(document, ['aims']).map((one) => {
		const weight = at(one, ['weight']);
		return { fails: textAt(one, ['fails']), weight: typeof weight === 'number' && weight > 0 ? weight : 0 };
	});
	const total = aims.reduce((sum, one) => sum + one.weight, 0);
	return aims.map((one) => ({ ...one, share: total === 0 ? 0 : one.weight / total }));
}

/** @returns the share of the draws that shall not pass, 0 to 1. */
export function failShare(document: Json): number {
	return aimShares(document).reduce((sum, one) => (one.fails === 'nothing' ? sum : sum + one.share), 0);
}

/** What draws fail by where an author wants some to fail and has not said by what. */
const USUAL: AimTopic = 'clearance';

/**
 * @param share of the draws that shall not pass, from 0 to 1.
 * @returns the document with weights for it: what fails by which check keeps its proportions.
 */
export function withFailShare(document: Json, share: number): Json {
	const before = aimShares(document).filter((one) => one.weight > 0) as readonly Aim[];
	const topics = before.flatMap((one) => (one.fails === 'nothing' ? [] : [one.fails]));
	return put(
		document,
		['aims'],
		aimsFor(share, topics.length > 0 ? topics : [USUAL], before).map(({ fails, weight }) => ({ fails, weight }))
	);
}
