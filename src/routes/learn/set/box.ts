/** The answers to practice sets that wait on this device, for each person a box of their own. */
import { createOutbox, type Outbox, type Posted, type SendOutcome, type SetAnswer } from '#lib/flow/index.ts';
import { isCount, isFields, readStore, writeStore } from '../course/store.ts';
import { postSetAnswer, type Reply } from './send.ts';

/** An answer in the box, as the flow takes it. */
export interface WaitingAnswer extends SetAnswer {
	readonly id: string;
	readonly assignment: string;
}

export interface SetBox extends Pick<Outbox, 'waiting' | 'ids' | 'put'> {
	/** What waits, in order. */
	readonly answers: () => readonly WaitingAnswer[];
	/** Sends what waits. @param told what the server said of each */
	readonly flush: (told: (id: string, reply: Reply) => void) => Promise<void>;
}

/** @returns a posted answer for the box. @param body what the attempts take, without id and place */
export function posted(id: string, assignment: string, answer: SetAnswer, body: Readonly<Record<string, unknown>>): Posted {
	const set = { assignment, place: answer.place };
	return { id, body: { attempt: { ...body, id, set }, record: { ...set, right: answer.right, critical: answer.critical } } };
}

/** @param full told when the device keeps nothing more. @returns a person's box on this device */
export function setBox(person: string, full: () => void = () => undefined): SetBox {
	const key = `underfoot.set.box.${person}`;
	const replies = new Map<string, Reply>();
	const send = async ({ id, body }: Posted): Promise<SendOutcome> => {
		const attempt = body['attempt'];
		const reply: Reply = isFields(attempt) ? await postSetAnswer(attempt, person) : { kind: 'refused' };
		replies.set(id, reply);
		if (reply.kind === 'stored') return { kind: 'stored', grades: reply.grades };
		return { kind: reply.kind === 'refused' ? 'refused' : 'later' };
	};
	/** What the device's store did not take: it lasts as long as the page. */
	let unkept: string | null = null;
	const shelf = {
		read: () => unkept ?? readStore(key),
		write: (text: string) => {
			unkept = writeStore(key, text) ? null : text;
			if (unkept !== null) full();
		}
	};
	const outbox = createOutbox(shelf, send);
	return {
		waiting: outbox.waiting,
		ids: outbox.ids,
		put: outbox.put,
		answers: () => answersIn(shelf.read()),
		flush: (told) =>
			outbox.flush((id) => {
				const reply = replies.get(id);
				replies.delete(id);
				if (reply !== undefined) told(id, reply);
			})
	};
}

function answersIn(text: string | null): readonly WaitingAnswer[] {
	if (text === null) return [];
	try {
		const value: unknown = JSON.parse(text);
		return Array.isArray(value) ? value.flatMap(answerIn) : [];
	} catch {
		return [];
	}
}

/** What is no answer is left out. */
function answerIn(value: unknown): readonly WaitingAnswer[] {
	if (!isFields(value) || typeof value['id'] !== 'string' || !isFields(value['body'])) return [];
	const record = value['body']['record'];
	if (!isFields(record) || typeof record['assignment'] !== 'string') return [];
	const { assignment, place, right, critical } = record;
	return isCount(place) && isCount(critical) ? [{ id: value['id'], assignment, place, right: right === true, critical }] : [];
}
