/** "About a third of the draws fail a check" as weights of aims, and back. */
import type { Scenario } from './schema.ts';

export type Aim = Scenario['aims'][number];
/** A check that an aim can want to fail. */
export type AimTopic = Exclude<Aim['fails'], 'nothing'>;

/** @reason divides by halves, thirds, quarters, fifths, sixths, tenths and twelfths: every share that a sentence names comes out whole. */
const PARTS = 60;
/** @reason the greatest weight that the schema takes: one in a hundred is as seldom as an outcome may be. */
const HEAVIEST = 100;

/** @returns the share of the draws that shall not pass, 0 to 1, by the weights. */
export function shareFailing(aims: readonly Aim[]): number {
	const total = aims.reduce((sum, aim) => sum + aim.weight, 0);
	const failing = aims.reduce((sum, aim) => sum + (aim.fails === 'nothing' ? 0 : aim.weight), 0);
	return total === 0 ? 0 : failing / total;
}

/**
 * @param share of the draws that shall not pass, from 0 to 1; kept to a sixtieth.
 * @param topics what they shall fail by, each as often; `before` keeps how often each came up against the others.
 * @returns aims whose weights have no common divisor, the passing one first.
 * @throws RangeError if draws shall fail by nothing, or a share is none.
 */
export function aimsFor(share: number, topics: readonly AimTopic[], before: readonly Aim[] = []): Aim[] {
	if (!(share >= 0 && share <= 1)) throw new RangeError(`a share is from 0 to 1, not ${share}`);
	const failing = Math.round(share * PARTS);
	if (failing > 0 && topics.length === 0) throw new RangeError('draws that fail must fail by something');
	const weightBefore = (topic: AimTopic): number => before.find((aim) => aim.fails === topic)?.weight ?? 1;
	const ratios = topics.map(weightBefore);
	const sum = ratios.reduce((total, one) => total + one, 0);
	// Every weight times the sum of the ratios is whole.
	const raw: Aim[] = [
		{ fails: 'nothing', weight: (PARTS - failing) * Math.max(1, sum) },
		...topics.map((fails, i): Aim => ({ fails, weight: failing * (ratios[i] ?? 0) }))
	];
	const kept = raw.filter((aim) => aim.weight > 0);
	const divisor = kept.reduce((common, aim) => commonDivisor(common, aim.weight), 0);
	const least = kept.map((aim) => ({ ...aim, weight: aim.weight / divisor }));
	const heaviest = Math.max(...least.map((aim) => aim.weight));
	if (heaviest <= HEAVIEST) return least;
	return least.map((aim) => ({ ...aim, weight: Math.max(1, Math.round((aim.weight * HEAVIEST) / heaviest)) }));
}

function commonDivisor(a: number, b: number): number {
	return b === 0 ? a : commonDivisor(b, a % b);
}
