import { draw, type DrawResult, type Scenario } from '#lib/scenario/index.ts';

/**
 * Draws that were made lately. A draw is fixed by scenario, version and seed, and takes longer than all else that
 * an answer asks of the server; a learner answers the same problem several times.
 */
export class DrawMemory {
	readonly #most: number;
	readonly #drawn = new Map<string, DrawResult>();

	/** @param most how many draws are kept; the oldest go first. */
	constructor(most: number) {
		this.#most = most;
	}

	/** @returns the draw of a seed: the same as `draw` gives. */
	of(scenario: Scenario, seed: number): DrawResult {
		const key = `${scenario.id}\u0000${scenario.version}\u0000${seed}`;
		const known = this.#drawn.get(key);
		if (known !== undefined) return known;
		const made = draw(scenario, seed);
		if (this.#drawn.size >= this.#most) {
			for (const oldest of this.#drawn.keys()) {
				this.#drawn.delete(oldest);
				break;
			}
		}
		this.#drawn.set(key, made);
		return made;
	}
}
