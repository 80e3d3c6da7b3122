/** Asks again and again for what may have changed, while the page is looked at. */

/** What came of asking once. */
export type Look<News> =
	| { readonly kind: 'news'; readonly news: News; readonly stamp: string }
	/** Nothing is new. */
	| { readonly kind: 'same' }
	/** No signal, or a server that is not well: worth another try. */
	| { readonly kind: 'failed' }
	/** The session is over, or there is nothing to see any more: no other try helps. */
	| { readonly kind: 'over' };

/** Whether what is shown is live: asked for without fail, failing for now, or for good. */
export type Liveness = 'live' | 'failing' | 'over';

export interface Following {
	/** Asks at once, and goes on asking. */
	readonly resume: () => void;
	/** Asks no more until it is resumed. */
	readonly pause: () => void;
}

/** From the beginning of one look to the next, ms. @reason what is new is to be seen within two seconds */
export const EVERY = 1000;
/** At least this long between an answer and the next look, ms. @reason a slow line is not kept busy by looks alone */
const REST = 250;
/** The longest wait after failures, ms. @reason signal comes back at a time that nobody tells; half a minute can be waited */
export const LONGEST_WAIT = 30_000;

/** @returns how long to wait after so many failures in a row, ms. */
export function waitAfter(failures: number): number {
	return Math.min(LONGEST_WAIT, EVERY * 2 ** failures);
}

/**
 * Follows something from a stamp on. It begins paused.
 * @param look asks for what is newer than a stamp; never rejects
 * @param told is given what is new, and whether this is live, whenever either changes
 */
export function follow<News>(look: (stamp: string) => Promise<Look<News>>, from: string, told: (liveness: Liveness, news?: News) => void): Following {
	let stamp = from;
	let liveness: Liveness | undefined;
	let failures = 0;
	let timer: ReturnType<typeof setTimeout> | undefined;
	/** Counts up with each pause and resume: an answer to an older asking starts no second round of them. */
	let round = 0;

	function tell(now: Liveness, news?: News): void {
		if (now === liveness && news === undefined) return;
		liveness = now;
		told(now, news);
	}

	async function ask(of: number): Promise<void> {
		const began = Date.now();
		const found = await look(stamp);
		if (of !== round) return;
		if (found.kind === 'over') {
			tell('over');
			return;
		}
		if (found.kind === 'failed') {
			failures += 1;
			tell('failing');
			timer = setTimeout(() => void ask(of), waitAfter(failures));
			return;
		}
		failures = 0;
		if (found.kind === 'news') {
			stamp = found.stamp;
			tell('live', found.news);
		} else {
			tell('live');
		}
		timer = setTimeout(() => void ask(of), Math.max(REST, EVERY - (Date.now() - began)));
	}

	return {
		resume() {
			clearTimeout(timer);
			round += 1;
			if (liveness !== 'over') void ask(round);
		},
		pause() {
			clearTimeout(timer);
			round += 1;
		}
	};
}
