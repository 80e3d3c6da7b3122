/** How far a long command is, on the error output: the output itself holds the result alone. */
import type { WriteStream } from 'node:tty';

/** Marks in a full bar. */
const WIDTH = 40;
/** How often a terminal, and anything else, is told, ms. @reason smooth to look at; a log that stays short */
const EVERY = { terminal: 100, other: 10_000 } as const;

/** Draws a bar in a terminal, and writes a line now and then elsewhere. */
export class Progress {
	readonly #out: Pick<WriteStream, 'write'> & { readonly isTTY?: boolean };
	readonly #clock: () => number;
	#told: number;

	/** @param clock in ms */
	constructor(out: Pick<WriteStream, 'write'> & { readonly isTTY?: boolean }, clock: () => number) {
		this.#out = out;
		this.#clock = clock;
		this.#told = clock();
	}

	/** Says how many of how many are done, unless that was said just now. */
	tell(done: number, of: number): void {
		const terminal = this.#out.isTTY === true;
		const now = this.#clock();
		if (now - this.#told < (terminal ? EVERY.terminal : EVERY.other)) return;
		this.#told = now;
		const share = of === 0 ? 1 : Math.min(1, done / of);
		const percent = `${String(Math.floor(100 * share)).padStart(3)} %`;
		if (!terminal) this.#out.write(`${percent}  ${done} of ${of}\n`);
		else this.#out.write(`\r[${'#'.repeat(Math.floor(WIDTH * share)).padEnd(WIDTH, '.')}] ${percent}`);
	}

	/** Takes the bar away. */
	end(): void {
		if (this.#out.isTTY === true) this.#out.write(`\r${' '.repeat(WIDTH + 8)}\r`);
	}
}
