/**
 * The course of one person on one device: the flow of `stepCourse`, and the effects that it asks for. A guest's
 * course is what the device's log says; a signed-in person's is what the server says, with what still waits to be
 * sent on top of it.
 */
import {
	createOutbox,
	lessonState,
	replayCourse,
	startCourse,
	stepCourse,
	type CourseBook,
	type CourseRecord,
	type CourseState,
	type LessonTask,
	type Outbox,
	type Posted,
	type SendOutcome
} from '#lib/flow/index.ts';
import type { SentEvent } from '#lib/server/index.ts';
import { newId } from '../problem/device.ts';
import { GUEST_LOG, readLog, today, writeLog, type GuestLog } from './log.ts';
import { recordFrom } from './record.ts';
import { postEvent, type Reply } from './send.ts';
import { isFields, readStore, writeStore } from './store.ts';

/** After this long what waits is sent once more, ms. */
const AGAIN = 15_000;

/** What a page knows of somebody's course. */
export interface CourseSource {
	readonly book: CourseBook;
	/** Id of the one who is signed in; undefined for a guest. */
	readonly person: string | undefined;
	/** The server's word; undefined for a guest. */
	readonly state: CourseState | undefined;
	/** Today where the person's sites are, YYYY-MM-DD; a guest takes the device's. */
	readonly day: string | undefined;
}

type Without<T, K extends PropertyKey> = T extends unknown ? Omit<T, K> : never;
/** What the server is told of an event, beside its id and its lesson. */
export type Said = Without<SentEvent, 'id' | 'lesson'>;

/** What becomes of an event. */
export type Told =
	| { readonly kind: 'stored'; readonly counts: boolean; readonly grades: unknown }
	| { readonly kind: 'waiting' }
	| { readonly kind: 'refused' };

/** What a person must be told in words. */
export type Notice =
	/** The session is over; what was done waits on the device. */
	| 'signed-out'
	/** The problem was answered in another tab or on another device: this answer counts for nothing. */
	| 'elsewhere'
	/** The server found the course to stand otherwise than this device did. */
	| 'differs'
	| 'refused'
	/** The device's store takes nothing more: a guest's course is lost with the tab. */
	| 'not-kept';

interface Waiting {
	readonly id: string;
	readonly record: CourseRecord;
}

export interface Doing {
	/** Of an answer that is an attempt too. */
	readonly id?: string;
	/** The problem that it is about: if another is at hand by now, the event counts for nothing. */
	readonly at?: LessonTask;
	/** Slips that were found in the answer. */
	readonly slips?: readonly string[];
	/** Told each time that something becomes of it. */
	readonly told?: (told: Told) => void;
}

function boxKey(person: string): string {
	return `underfoot.course.box.${person}`;
}

/** @returns true if two problems of a lesson are the same one. */
export function sameTask(one: LessonTask | undefined, other: LessonTask | undefined): boolean {
	return one?.task === other?.task && one?.seed === other?.seed && one?.halfDone === other?.halfDone;
}

export class CourseSession {
	readonly book: CourseBook;
	readonly person: string | undefined;
	readonly #givenDay: string | undefined;
	/** The server's word, or a course just begun. */
	#base: CourseState;
	#pending: readonly Waiting[] = [];
	#outbox: Outbox | undefined;
	#log: GuestLog = { seed: 0, records: [], slips: [] };
	#replies: Readonly<Record<string, Reply>> = {};
	#tellers: Readonly<Record<string, (told: Told) => void>> = {};
	#again: ReturnType<typeof setTimeout> | undefined;
	#state = $state.raw<CourseState>() as CourseState;
	#waiting = $state(0);
	#opened = $state(false);
	#notice = $state<Notice>();
	#slips = $state.raw<GuestLog['slips']>([]);
	#last = $state<string>();

	constructor({ book, person, state, day }: CourseSource) {
		this.book = book;
		this.person = person;
		this.#givenDay = day;
		this.#base = state ?? startCourse(book, 0);
		this.#state = this.#base;
	}

	get state(): CourseState {
		return this.#state;
	}

	/** How many events wait to be sent. */
	get waiting(): number {
		return this.#waiting;
	}

	/** Whether the device's store has been read. */
	get opened(): boolean {
		return this.#opened;
	}

	get notice(): Notice | undefined {
		return this.#notice;
	}

	get guest(): boolean {
		return this.person === undefined;
	}

	/** Slips that were found in a guest's answers. */
	get slips(): GuestLog['slips'] {
		return this.#slips;
	}

	/** The lesson that a guest was last at. */
	get lastLesson(): string | undefined {
		return this.#last;
	}

	get day(): string {
		return this.#givenDay ?? today();
	}

	/** What was said has been read. */
	dismiss(): void {
		if (this.#notice !== 'signed-out') this.#notice = undefined;
	}

	say(notice: Notice): void {
		this.#notice = notice;
	}

	/** In the browser: goes on where this device was left. @returns what ends it. */
	open(): () => void {
		const { person } = this;
		const flush = (): void => void this.#flush();
		const changed = (event: StorageEvent): void => {
			if (person === undefined && event.key === GUEST_LOG) this.#readLog();
		};
		if (person === undefined) {
			this.#readLog();
		} else {
			const shelf = { read: () => readStore(boxKey(person)), write: (text: string) => void writeStore(boxKey(person), text) };
			this.#outbox = createOutbox(shelf, (posted) => this.#send(posted));
			this.#pending = pendingIn(shelf.read());
			this.#replay();
			addEventListener('online', flush);
			flush();
		}
		addEventListener('storage', changed);
		this.#opened = true;
		return () => {
			removeEventListener('online', flush);
			removeEventListener('storage', changed);
			clearTimeout(this.#again);
		};
	}

	/** Takes the server's word, as a page just loaded it. */
	confirm(state: CourseState): void {
		if (this.guest || state === this.#base) return;
		this.#base = state;
		this.#replay();
	}

	/**
	 * Something was done: it moves the course at once, is kept, and is sent.
	 * @returns false if it counts for nothing, because another problem is at hand
	 */
	do(record: CourseRecord, said: Said, { id = newId(), at, slips = [], told }: Doing = {}): boolean {
		if (this.guest) this.#readLog();
		const stale = at !== undefined && !sameTask(lessonState(this.#state, record.lesson).next, at);
		if (stale) {
			this.#notice = 'elsewhere';
			return false;
		}
		if (this.guest) {
			const { seed, records } = this.#log;
			this.#log = { seed, records: [...records, record], slips: slips.length === 0 ? this.#log.slips : [...this.#log.slips, slips] };
			if (!writeLog(this.#log)) this.#notice = 'not-kept';
			this.#slips = this.#log.slips;
			this.#state = stepCourse(this.book, this.#state, record);
			return true;
		}
		this.#outbox?.put({ id, body: { event: { ...said, id, lesson: record.lesson }, record } });
		if (told !== undefined) this.#tellers = { ...this.#tellers, [id]: told };
		this.#pending = [...this.#pending, { id, record }];
		this.#state = stepCourse(this.book, this.#state, record);
		this.#count();
		void this.#flush();
		return true;
	}

	#readLog(): void {
		const before = this.#log;
		const log = readLog();
		if (log.records.length === before.records.length && log.seed === before.seed && this.#opened) return;
		// A store that takes nothing gives another seed each time: what this tab knows stays.
		if (log.records.length === 0 && before.records.length > 0) return;
		this.#log = log;
		if (log.records.length === 0) writeLog(log);
		this.#slips = log.slips;
		this.#last = log.records.at(-1)?.lesson;
		this.#state = replayCourse(this.book, log.seed, log.records);
	}

	#replay(): void {
		let state = this.#base;
		for (const { record } of this.#pending) state = stepCourse(this.book, state, record);
		this.#state = state;
		this.#count();
	}

	#count(): void {
		this.#waiting = this.#pending.length;
	}

	async #send(posted: Posted): Promise<SendOutcome> {
		const reply = await postEvent(posted.body['event'], this.person ?? '');
		this.#replies = { ...this.#replies, [posted.id]: reply };
		if (reply.kind === 'stored') return { kind: 'stored', grades: {} };
		return { kind: reply.kind === 'refused' ? 'refused' : 'later' };
	}

	async #flush(): Promise<void> {
		clearTimeout(this.#again);
		await this.#outbox?.flush((id) => this.#heed(id));
		if (this.#pending.length > 0 && this.#notice !== 'signed-out') this.#again = setTimeout(() => void this.#flush(), AGAIN);
	}

	/** What the server said of an event. */
	#heed(id: string): void {
		const { [id]: reply, ...replies } = this.#replies;
		if (reply === undefined) return;
		this.#replies = replies;
		const { [id]: tell, ...tellers } = this.#tellers;
		if (reply.kind === 'later' || reply.kind === 'signed-out') {
			if (reply.kind === 'signed-out') this.#notice = 'signed-out';
			tell?.({ kind: 'waiting' });
			return;
		}
		if (this.#notice === 'signed-out') this.#notice = undefined;
		const own = this.#pending.find((one) => one.id === id);
		this.#pending = this.#pending.filter((one) => one.id !== id);
		this.#tellers = tellers;
		if (reply.kind === 'refused') {
			this.#notice = 'refused';
			this.#replay();
			tell?.({ kind: 'refused' });
			return;
		}
		const thought = this.#state;
		this.#base = reply.state;
		this.#replay();
		if (!reply.counts) this.#notice = 'elsewhere';
		else if (own?.record.kind === 'answered' && differs(thought, this.#state, own.record.lesson)) this.#notice = 'differs';
		tell?.({ kind: 'stored', counts: reply.counts, grades: reply.grades });
	}
}

/** Whether a lesson stands otherwise. */
function differs(one: CourseState, other: CourseState, lesson: string): boolean {
	const a = lessonState(one, lesson);
	const b = lessonState(other, lesson);
	return a.place !== b.place || !sameTask(a.next, b.next);
}

/** What a box holds, in order; what is broken cannot be replayed, but is still sent. */
function pendingIn(text: string | null): readonly Waiting[] {
	if (text === null) return [];
	try {
		const value: unknown = JSON.parse(text);
		if (!Array.isArray(value)) return [];
		return value.flatMap((one: unknown): readonly Waiting[] => {
			if (!isFields(one) || typeof one['id'] !== 'string' || !isFields(one['body'])) return [];
			const record = recordFrom(one['body']['record']);
			return record === undefined ? [] : [{ id: one['id'], record }];
		});
	} catch {
		return [];
	}
}
