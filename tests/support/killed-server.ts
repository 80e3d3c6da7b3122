/** A server that is killed again and again, and those who send to it meanwhile: they send the same again until a reply comes. */
import { launchOwnServer, type StartingServer } from '../e2e/own-server.ts';

/** How long a sender waits before it sends again, ms. */
const PAUSE = 60;

const pause = (ms: number): Promise<void> => new Promise((done) => setTimeout(done, ms));

export class KilledServer {
	readonly #file: string;
	#running: StartingServer | undefined;
	#stopped = false;
	/** How long the last start took, ms. */
	#started = 0;
	/** Where it takes requests, at all its starts. */
	address = 'http://127.0.0.1:0';
	/** Requests that got no reply. */
	unanswered = 0;
	/** How long replies take just now, ms. */
	usual = 10;
	#replies = 0;
	/** Waits for so many replies. */
	#waiting: { readonly until: number; readonly done: () => void } | undefined;

	/** @param file its database */
	constructor(file: string) {
		this.#file = file;
	}

	/** Starts it, and waits until it takes requests. */
	async start(): Promise<void> {
		const since = performance.now();
		this.#running = this.#launch();
		this.address = (await this.#running.ready).address;
		this.#started = performance.now() - since;
	}

	/** Starts it, and kills it before it takes requests. @param part of the time that a start takes, from 0 to 1 */
	async killWhileStarting(part: number): Promise<void> {
		this.#running = this.#launch();
		// It ends without an address, as it should.
		this.#running.ready.catch(() => undefined);
		await pause(part * this.#started);
		await this.kill();
	}

	#launch(): StartingServer {
		if (this.#stopped) throw new Error('The server was stopped for good');
		return launchOwnServer(this.#file, Number(new URL(this.address).port));
	}

	/** Waits until it has given so many replies more. */
	async repliesMore(count: number): Promise<void> {
		if (count === 0) return;
		await new Promise<void>((done) => {
			this.#waiting = { until: this.#replies + count, done };
		});
		this.#waiting = undefined;
	}

	/** Kills it, and waits until it is gone. */
	async kill(): Promise<void> {
		await this.#running?.end('SIGKILL');
		this.#running = undefined;
	}

	/** Stops it for good, as a service manager does. @returns its exit code */
	async stop(): Promise<number | string | undefined> {
		this.#stopped = true;
		const code = await this.#running?.end('SIGTERM');
		this.#running = undefined;
		return code;
	}

	/** Sends until a whole reply comes. @param send reads the reply to its end: it may be cut short */
	async replied<Reply>(send: (address: string) => Promise<Reply>): Promise<Reply> {
		for (;;) {
			const since = performance.now();
			try {
				const reply = await send(this.address);
				this.usual = (this.usual + performance.now() - since) / 2;
				this.#replies += 1;
				if (this.#waiting !== undefined && this.#replies >= this.#waiting.until) this.#waiting.done();
				return reply;
			} catch (error) {
				// What fetch throws when nobody answers, or the line breaks.
				if (!(error instanceof TypeError)) throw error;
				this.unanswered += 1;
				await pause(PAUSE);
			}
		}
	}
}
