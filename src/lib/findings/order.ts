/** Chance as the draws need it: weights and orders. */
import type { Chance } from '#lib/scenario/index.ts';

/** @returns an index, each as often as its weight says. */
export function weighted(weights: readonly number[], chance: Chance): number {
	const total = weights.reduce((sum, weight) => sum + weight, 0);
	let at = chance.below(total);
	return weights.findIndex((weight) => {
		at -= weight;
		return at < 0;
	});
}

/** @returns the same things in an order that chance gives (Fisher and Yates). */
export function shuffled<T>(things: readonly T[], chance: Chance): readonly T[] {
	const order = [...things];
	for (let i = order.length - 1; i > 0; i -= 1) {
		const j = chance.below(i + 1);
		const a = order[i];
		const b = order[j];
		if (a === undefined || b === undefined) continue;
		order[i] = b;
		order[j] = a;
	}
	return order;
}

/** @returns from + step × (0 … count − 1), each as likely, free of float noise. */
export function onSteps(from: number, step: number, count: number, chance: Chance): number {
	return Math.round((from + step * chance.below(count)) * 1000) / 1000;
}
