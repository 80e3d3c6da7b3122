/**
 * A practice set of one person on one device: what the server says of it, with what still waits to be sent on top.
 * Without signal the round goes on; each answer is sent later, once.
 */
import { placeAtHand, replaySet, type Grades, type SetAnswer, type SetStanding } from '#lib/flow/index.ts';
import type { SetDesk } from '#lib/server/index.ts';
import { isCount, readStore, writeStore } from '../course/store.ts';
import { posted, setBox, type SetBox, type WaitingAnswer } from './box.ts';
import type { Reply } from './send.ts';

/** After this long what waits is sent once more, ms. */
const AGAIN = 15_000;
/** What is kept where no problem is on screen. */
const NONE = 'none';

/** What a person must be told in words. */
export type Notice = 'signed-out' | 'elsewhere' | 'refused' | 'not-kept';

/** What becomes of an answer. */
export type Told =
	| { readonly kind: 'stored'; readonly grades: Grades }
	| { readonly kind: 'waiting' }
	| { readonly kind: 'refused' };

export class SetSession {
	readonly #person: string;
	readonly #box: SetBox;
	#desk = $state.raw<SetDesk>() as SetDesk;
	/** Answers that the server took since the page had its word. */
	#taken: readonly WaitingAnswer[] = [];
	#pending: readonly WaitingAnswer[] = [];
	/** The server's word of the next round, while the last problem of this one is still on screen. */
	#later: SetDesk | undefined;
	#tellers: Readonly<Record<string, (told: Told) => void>> = {};
	#again: ReturnType<typeof setTimeout> | undefined;
	#standing = $state.raw<SetStanding>() as SetStanding;
	#waiting = $state(0);
	/** Whether sending has failed since all was sent. */
	#held = $state(false);
	#notice = $state<Notice>();
	#stale = $state(false);
	/** The place on screen; undefined for none. */
	#at = $state<number>();

	/** @param desk the server's word */
	constructor(desk: SetDesk, person: string) {
		this.#person = person;
		this.#box = setBox(person, () => (this.#notice = 'not-kept'));
		this.#desk = desk;
		this.#replay();
		this.#at = this.#first();
	}

	get desk(): SetDesk {
		return this.#desk;
	}

	get standing(): SetStanding {
		return this.#standing;
	}

	/** The place on screen, from 0 through all rounds; undefined where the round is over. */
	get at(): number | undefined {
		return this.#at;
	}

	/** How many answers wait to be sent. */
	get waiting(): number {
		return this.#waiting;
	}

	/** How many of them are kept back, because sending failed. */
	get held(): number {
		return this.#held ? this.#waiting : 0;
	}

	get notice(): Notice | undefined {
		return this.#notice;
	}

	/** Whether the set moved on elsewhere: it must be loaded again before it goes on. */
	get stale(): boolean {
		return this.#stale;
	}

	/** Whether a round is over here and the next one has not come from the server yet. */
	get behind(): boolean {
		return this.#stale || (this.#standing.state === 'again' && this.#standing.context.round !== this.#desk.round);
	}

	/** The problem of the place on screen. */
	get place(): SetDesk['places'][number] | undefined {
		return this.#at === undefined ? undefined : this.#placeIn(this.#at);
	}

	/** Whether a place is answered, here or on the server. */
	answered(place: number): boolean {
		const { context } = this.#standing;
		return Math.floor(place / context.count) < context.round || context.answered.includes(place);
	}

	/** What was said has been read. */
	dismiss(): void {
		if (this.#notice !== 'signed-out') this.#notice = undefined;
	}

	/** In the browser: goes on where this device was left. @returns what ends it. */
	open(): () => void {
		const flush = (): void => void this.flush();
		this.#readBox();
		this.#show(this.#kept() ?? this.#first());
		addEventListener('online', flush);
		flush();
		return () => {
			removeEventListener('online', flush);
			clearTimeout(this.#again);
		};
	}

	/**
	 * Takes the server's word, as a page just loaded it. The problem on screen stays while it is of the round. The last
	 * one of a round stays with its explanation until the learner goes on: a word of the next round waits so long.
	 */
	confirm(desk: SetDesk): void {
		if (desk === this.#desk) return;
		if (!this.#stale && desk.round !== this.#desk.round && this.#at !== undefined && this.answered(this.#at)) {
			this.#later = desk;
			return;
		}
		this.#take(desk);
	}

	#take(desk: SetDesk): void {
		this.#later = undefined;
		const round = this.#desk.round;
		this.#desk = desk;
		this.#stale = false;
		this.#readBox();
		if (this.#at === undefined ? this.#standing.state !== 'again' : desk.round !== round) this.#show(this.#first());
	}

	/**
	 * A problem was answered: the first time it counts at once, is kept, and is sent.
	 * @returns false for another answer to the same place: practice
	 */
	answer(id: string, answer: SetAnswer, body: Readonly<Record<string, unknown>>, told: (told: Told) => void): boolean {
		if (this.answered(answer.place)) return false;
		this.#tellers = { ...this.#tellers, [id]: told };
		this.#box.put(posted(id, this.#desk.assignment, answer, body));
		this.#readBox();
		void this.flush();
		return true;
	}

	/** On to the next problem of the round, or to its end. */
	next(): void {
		this.dismiss();
		if (this.#later !== undefined) this.#take(this.#later);
		this.#show(this.#first());
	}

	/** Begins the next round. */
	begin(): void {
		const place = placeAtHand(this.#standing);
		this.#show(place === undefined || this.#placeIn(place) === undefined ? undefined : place);
	}

	/** Sends what waits. */
	async flush(): Promise<void> {
		clearTimeout(this.#again);
		await this.#box.flush((id, reply) => this.#heed(id, reply));
		this.#readBox();
		if (this.#box.waiting() === 0) this.#held = false;
		else if (this.#notice !== 'signed-out') this.#again = setTimeout(() => void this.flush(), AGAIN);
	}

	/** What the server said of an answer. */
	#heed(id: string, reply: Reply): void {
		const { [id]: tell, ...tellers } = this.#tellers;
		if (reply.kind === 'later' || reply.kind === 'signed-out') {
			this.#held = true;
			if (reply.kind === 'signed-out') this.#notice = 'signed-out';
			tell?.({ kind: 'waiting' });
			return;
		}
		this.#tellers = tellers;
		if (this.#notice === 'signed-out') this.#notice = undefined;
		const own = this.#pending.find((one) => one.id === id);
		if (reply.kind === 'stored' && reply.counts) {
			if (own !== undefined) this.#taken = [...this.#taken, own];
		} else if (own !== undefined) {
			this.#notice = reply.kind === 'refused' ? 'refused' : 'elsewhere';
			this.#stale = true;
		}
		this.#readBox();
		tell?.(reply.kind === 'stored' ? { kind: 'stored', grades: reply.grades } : { kind: 'refused' });
	}

	/** The problem to go on with; none while a round is over and the next not begun. */
	#first(): number | undefined {
		if (this.#standing.state === 'again') return undefined;
		const place = placeAtHand(this.#standing);
		return place === undefined || this.#placeIn(place) === undefined ? undefined : place;
	}

	#placeIn(place: number): SetDesk['places'][number] | undefined {
		return this.#desk.places[place - this.#desk.round * this.#desk.count];
	}

	/** A reload finds the answered problem and its explanation again. */
	#kept(): number | undefined {
		const kept = Number(readStore(this.#key) ?? NONE);
		return isCount(kept) && this.#placeIn(kept) !== undefined ? kept : undefined;
	}

	#show(place: number | undefined): void {
		this.#at = place;
		writeStore(this.#key, place === undefined ? NONE : String(place));
	}

	get #key(): string {
		return `underfoot.set.at.${this.#person}.${this.#desk.assignment}`;
	}

	/** What waits in the box, and where the set stands with it. An answer that was just taken leaves the box a moment later. */
	#readBox(): void {
		const taken = this.#taken.map((one) => one.id);
		this.#pending = this.#box.answers().filter((one) => one.assignment === this.#desk.assignment && !taken.includes(one.id));
		this.#replay();
	}

	#replay(): void {
		this.#standing = replaySet(this.#desk, [...this.#desk.answers, ...this.#taken, ...this.#pending]);
		this.#waiting = this.#pending.length;
	}
}
