import { randomUUID } from 'node:crypto';
import { storeAttempt, storeFirstAttempt, type Beside, type NewAttempt, type StoreOutcome } from '../db/attempts.ts';
import { findAnsweringGuest, nthAnswer } from '../db/guests.ts';
import type { Database } from '../db/open.ts';
import { countsInSet } from '../db/own-sets.ts';
import { guestTokenHash, type Cookies } from '../guest.ts';
import type { SetAnswerTable } from '../db/schema.ts';
import type { Who } from '../people/who.ts';
import type { InputProblem } from '../problems.ts';
import { judgeForSet, partAnswer } from '../sets/answer.ts';
import type { Drawn } from '#lib/scenario/index.ts';
import { messages } from '#lib/text/index.ts';
import { markAnswers, type MarkedAnswers, type Scenarios, type Unread } from './mark.ts';
import { siteOutcomes } from './outcomes.ts';
import { readingProblem } from './reading.ts';

/** How many answers a guest may store in a while. A learner who only guesses stays far below. */
export const MOST_ANSWERS = 300;
/** How long that while is, s. */
const WHILE = 600;

/** Raised whenever a change alters a drawn problem, a quantity, a check or a grade. */
export const ENGINE_VERSION = '1';

/** Who sends: the visitor's cookies, whether the visitor came by HTTPS, and under which guest row a person's answers are kept. */
export interface Visitor {
	readonly cookies: Cookies;
	readonly secure: boolean;
	/** Of somebody who is signed in; null for a guest. */
	readonly answerer: string | null;
	/** Who it is, where answers for practice sets are to count. */
	readonly who?: Who;
}

const GUEST: Who = { kind: 'guest' };

/** What the client is told. */
export type Receipt =
	| {
			readonly kind: 'stored';
			/** 201 for an answer stored now, 200 for one stored before. */
			readonly status: 201 | 200;
			readonly attempt: string;
			/** JSON of the grades, by ask. */
			readonly grades: string;
			/** Of an answer that was meant for a practice set: whether it counts there. */
			readonly counts?: boolean;
	  }
	| {
			readonly kind: 'refused';
			readonly status: number;
			readonly problems: readonly InputProblem[];
			/** Seconds to wait, where waiting helps. */
			readonly retryAfter?: number;
	  };

/**
 * Marks an answered problem and stores it before it returns: what the receipt says is on the disk. An answer that
 * is refused leaves nothing behind, no guest either.
 */
export async function receiveAnswers(
	db: Database,
	visitor: Visitor,
	input: unknown,
	scenarios: Scenarios,
	now: Date
): Promise<Receipt> {
	const answerer = await answererOf(db, visitor, answerWindow(now));
	if (answerer.nth !== null) return tooMany(answerer.nth, now);
	const parted = partAnswer(input);
	if (parted.kind === 'refused') return parted;
	const { answer, place } = parted.value;
	const marked = markAnswers(answer, scenarios);
	if (marked.kind === 'refused') return marked;
	if (marked.kind === 'unread') return notRead(marked);
	const judged = place === undefined ? undefined : await judgeForSet(db, visitor.who ?? GUEST, place, marked.value, now);
	if (judged?.kind === 'refused') return judged;
	const set = judged?.kind === 'counts' ? judged.row : undefined;
	const attempt = rowOf(marked.value, now);
	const outcome =
		answerer.kind === 'new'
			? await storeFirstAttempt(db, { id: randomUUID(), tokenHash: answerer.tokenHash, now: attempt.created_at }, attempt)
			: await storeAttempt(db, { ...attempt, guest_id: answerer.id }, besideOf(marked.value, visitor, set, now));
	const stored = receipt(outcome);
	if (judged === undefined || stored.kind === 'refused') return stored;
	// Asked of the disk: another tab may have been quicker, and what was kept as practice before stays practice.
	return { ...stored, counts: judged.kind === 'counted' || (set !== undefined && (await countsInSet(db, set.assignment_id, stored.attempt))) };
}

/** What an answer came to, of somebody who is signed in; what guests practise is asked of nowhere. */
function besideOf(marked: MarkedAnswers, { answerer }: Visitor, set: SetAnswerTable | undefined, now: Date): Beside | undefined {
	if (answerer === null) return undefined;
	if (set === undefined) return { outcomes: siteOutcomes(marked, { answerer, way: 'practice', now }) };
	return { outcomes: siteOutcomes(marked, { answerer, way: 'set', assignment: set.assignment_id, now }), set };
}

/** Under whom an answer is stored, and when the oldest of too many was. */
type Answerer =
	| { readonly kind: 'known'; readonly id: string; readonly nth: string | null }
	| { readonly kind: 'new'; readonly tokenHash: string; readonly nth: null };

/** The time within which answers are counted: what lies further ahead is from before the clock was put back. */
export function answerWindow(now: Date): { readonly since: string; readonly until: string } {
	const away = (seconds: number): string => new Date(now.getTime() + seconds * 1000).toISOString();
	return { since: away(-WHILE), until: away(WHILE) };
}

async function answererOf(db: Database, visitor: Visitor, { since, until }: ReturnType<typeof answerWindow>): Promise<Answerer> {
	if (visitor.answerer !== null) {
		return { kind: 'known', id: visitor.answerer, nth: await nthAnswer(db, visitor.answerer, since, MOST_ANSWERS, until) };
	}
	const tokenHash = guestTokenHash(visitor.cookies, visitor.secure);
	const guest = await findAnsweringGuest(db, tokenHash, since, MOST_ANSWERS, until);
	return guest === null ? { kind: 'new', tokenHash, nth: null } : { kind: 'known', id: guest.id, nth: guest.nth };
}

/** @returns the refusal of entries that could not be read: they are asked for again. */
export async function notRead({ entries, language }: Unread): Promise<Extract<Receipt, { kind: 'refused' }>> {
	const words = await messages(language);
	const problems = entries.map(({ ask, reading }) => readingProblem(`answers.${ask.id}`, reading, ask, language, words));
	return { kind: 'refused', status: 422, problems };
}

/** @param nth when the oldest of the answers that fill the while was stored. */
function tooMany(nth: string, now: Date): Receipt {
	const retryAfter = Math.max(1, Math.ceil((Date.parse(nth) - now.getTime()) / 1000) + WHILE);
	return {
		kind: 'refused',
		status: 429,
		problems: [{ field: 'body', problem: 'is one answer too many for now', remedy: `send it again in ${retryAfter} s` }],
		retryAfter
	};
}

function receipt(outcome: StoreOutcome): Receipt {
	if (outcome.kind === 'conflict') {
		const problem = { field: 'id', problem: 'stands for another answer', remedy: 'send this one under a new UUID' };
		return { kind: 'refused', status: 409, problems: [problem] };
	}
	const { id, result } = outcome.attempt;
	return { kind: 'stored', status: outcome.kind === 'stored' ? 201 : 200, attempt: id, grades: result };
}

const plans = new WeakMap<Drawn, string>();

/** What was drawn, as it is stored; written once for all answers to it. */
function written(drawn: Drawn): string {
	let text = plans.get(drawn);
	if (text === undefined) {
		text = JSON.stringify(drawn);
		plans.set(drawn, text);
	}
	return text;
}

/** @returns the row that is stored of marked answers. @param answerer id of the guest row of who answered */
export function attemptRow(marked: MarkedAnswers, answerer: string, now: Date): NewAttempt {
	return { ...rowOf(marked, now), guest_id: answerer };
}

/** The row that is stored: what was sent as it was typed, and the server's own draw and grades. */
function rowOf({ sent, scenario, drawn, grades }: MarkedAnswers, now: Date): Omit<NewAttempt, 'guest_id'> {
	return {
		id: sent.id,
		scenario_id: scenario.id,
		scenario_version: scenario.version,
		draw_version: sent.drawVersion,
		slip_set_version: sent.slipSetVersion,
		engine_version: ENGINE_VERSION,
		// As text, so that no number format can change it.
		seed: String(sent.seed),
		accepted_try: sent.acceptedTry,
		plan: written(drawn),
		answers: JSON.stringify(sent.answers),
		result: JSON.stringify(grades),
		language: sent.language,
		units: scenario.units,
		created_at: now.toISOString()
	};
}
