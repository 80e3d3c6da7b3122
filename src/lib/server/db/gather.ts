import { lacksRoom } from './no-room.ts';

interface Waiting<Item, Result> {
	readonly item: Item;
	readonly done: (result: Result) => void;
	readonly failed: (error: unknown) => void;
}

/**
 * Gathers what is asked for at about the same time and does it in one go. A commit has to wait for the disk, and
 * the disk takes as long for twenty rows as for one: whoever comes while it is busy goes together with the next.
 * Nobody is told that it is done before it is.
 */
export class Gathering<Item, Result> {
	readonly #doAll: (items: readonly Item[]) => Promise<readonly Result[]>;
	readonly #most: number;
	#waiting: Waiting<Item, Result>[] = [];
	#busy = false;

	/**
	 * @param doAll does several at once, all or none, and gives the results in the order of the items
	 * @param most how many go together at most
	 */
	constructor(doAll: (items: readonly Item[]) => Promise<readonly Result[]>, most: number) {
		this.#doAll = doAll;
		this.#most = most;
	}

	/** Does one item, together with others; fails only for a fault of its own. */
	add(item: Item): Promise<Result> {
		return new Promise((done, failed) => {
			this.#waiting.push({ item, done, failed });
			if (this.#busy) return;
			this.#busy = true;
			// Behind all that has arrived by now, and what is being read meanwhile: a commit less for each that comes along.
			setImmediate(() => setImmediate(() => void this.#run()));
		});
	}

	async #run(): Promise<void> {
		while (this.#waiting.length > 0) {
			const batch = this.#waiting.splice(0, this.#most);
			await this.#do(batch);
		}
		this.#busy = false;
	}

	async #do(batch: readonly Waiting<Item, Result>[]): Promise<void> {
		let results: readonly Result[];
		try {
			results = await this.#doAll(batch.map(({ item }) => item));
		} catch (error) {
			const [first, ...others] = batch;
			// One that cannot be done must not keep the others from it: each for itself then. Where there is no room, there is none for any.
			if (others.length === 0) first?.failed(error);
			else if (lacksRoom(error)) for (const one of batch) one.failed(error);
			else for (const one of batch) await this.#do([one]);
			return;
		}
		for (const [i, { done, failed }] of batch.entries()) {
			const result = results[i];
			if (result === undefined) failed(new Error('No result was given for an item that was done'));
			else done(result);
		}
	}
}
