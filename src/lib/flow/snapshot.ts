/**
 * What is kept on the device of a site problem, so that a reload goes on where it was. Read back by hand and
 * field by field: what is broken is dropped, what was typed is saved if it can be. Grades are not kept: they
 * are computed again.
 */
import type { Drawing, Entry, FlowContext, HelpLevel, Sent, SendState } from './context.ts';
import type { FlowState } from './site-problem.ts';

/** Raised whenever the states or the form of the snapshot change. */
export const MACHINE_VERSION = 2;

export interface Snapshot {
	readonly machine: number;
	readonly drawing: Drawing;
	readonly state: FlowState;
	readonly entries: Readonly<Record<string, Entry>>;
	readonly focus: string | null;
	readonly chosen: Readonly<Record<string, number>>;
	readonly walk: { readonly ask: string; readonly at: number; readonly of: number; readonly texts: readonly string[] } | null;
	readonly help: FlowContext['help'];
	readonly sent: readonly Sent[];
}

const STATES: readonly FlowState[] = ['reading', 'working', 'grading', 'explained', 'solved', 'stepping', 'walked', 'left'];
const SEND_STATES: readonly SendState[] = ['sending', 'waiting', 'stored', 'refused'];
/** @reason longer entries are refused unread anyway; keeps a broken store small. */
const LONGEST_TEXT = 200;
/** @reason more than anyone hands in for one problem. */
const MOST_SENT = 200;

/** @returns a flow as text to be kept. */
export function writeSnapshot(state: FlowState, context: FlowContext): string {
	const { drawing, entries, focus, chosen, walk, help, sent } = context;
	const snapshot: Snapshot = {
		machine: MACHINE_VERSION,
		drawing,
		state,
		entries,
		focus: focus ?? null,
		chosen,
		walk: walk === undefined ? null : { ask: walk.ask, at: walk.at, of: walk.of, texts: walk.steps.map((step) => step.text) },
		help,
		sent: sent.slice(-MOST_SENT)
	};
	return JSON.stringify(snapshot);
}

/** What a kept text is good for. */
export type Remembered =
	/** All of it: go on in its state. */
	| { readonly kind: 'whole'; readonly snapshot: Snapshot }
	/** The flow has to start over, but what was typed is still there. */
	| { readonly kind: 'typed'; readonly entries: Readonly<Record<string, Entry>>; readonly sent: readonly Sent[] }
	| { readonly kind: 'nothing' };

const NOTHING: Remembered = Object.freeze({ kind: 'nothing' });

/** @returns what can be used of a kept text for one drawn problem and its asks. Never throws. */
export function readSnapshot(text: string | null, drawing: Drawing, asks: readonly string[]): Remembered {
	const kept = parsed(text);
	if (kept === undefined || !isSameDrawing(kept['drawing'], drawing)) return NOTHING;
	const entries = entriesFrom(kept['entries'], asks);
	const sent = sentFrom(kept['sent']);
	const state = STATES.find((one) => one === kept['state']);
	const walk = walkFrom(kept['walk'], asks);
	const chosen = chosenFrom(kept['chosen'], asks);
	const help = helpFrom(kept['help'], asks);
	const focus = asks.find((ask) => ask === kept['focus']) ?? null;
	const whole =
		kept['machine'] === MACHINE_VERSION && state !== undefined && walk !== undefined && (state !== 'stepping' || walk !== null);
	if (!whole) return Object.keys(entries).length === 0 ? NOTHING : { kind: 'typed', entries, sent };
	return { kind: 'whole', snapshot: { machine: MACHINE_VERSION, drawing, state, entries, focus, chosen, walk, help, sent } };
}

type Fields = Readonly<Record<string, unknown>>;

function isFields(value: unknown): value is Fields {
	return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function parsed(text: string | null): Fields | undefined {
	if (text === null) return undefined;
	try {
		const value: unknown = JSON.parse(text);
		return isFields(value) ? value : undefined;
	} catch {
		return undefined;
	}
}

function isSameDrawing(value: unknown, drawing: Drawing): boolean {
	if (!isFields(value)) return false;
	return (
		value['scenario'] === drawing.scenario &&
		value['version'] === drawing.version &&
		value['drawVersion'] === drawing.drawVersion &&
		value['seed'] === drawing.seed &&
		value['acceptedTry'] === drawing.acceptedTry
	);
}

function entriesFrom(value: unknown, asks: readonly string[]): Readonly<Record<string, Entry>> {
	const entries: Record<string, Entry> = {};
	if (!isFields(value)) return entries;
	for (const ask of asks) {
		const one = value[ask];
		if (!isFields(one)) continue;
		const text = one['text'];
		const decision = one['decision'];
		entries[ask] = {
			text: typeof text === 'string' ? text.slice(0, LONGEST_TEXT) : '',
			notStated: one['notStated'] === true,
			decision: decision === 'tie-off' || decision === 'do-not-tie-off' ? decision : undefined
		};
	}
	return entries;
}

function sentFrom(value: unknown): readonly Sent[] {
	if (!Array.isArray(value)) return [];
	return value.slice(-MOST_SENT).flatMap((one: unknown) => {
		if (!isFields(one) || typeof one['id'] !== 'string') return [];
		const state = SEND_STATES.find((known) => known === one['state']);
		return state === undefined ? [] : [{ id: one['id'], state }];
	});
}

function chosenFrom(value: unknown, asks: readonly string[]): Readonly<Record<string, number>> {
	const chosen: Record<string, number> = {};
	if (!isFields(value)) return chosen;
	for (const ask of asks) {
		const at = value[ask];
		if (typeof at === 'number' && Number.isInteger(at) && at >= 0) chosen[ask] = at;
	}
	return chosen;
}

const HELP_LEVELS: readonly HelpLevel[] = [1, 2, 3];

function helpFrom(value: unknown, asks: readonly string[]): FlowContext['help'] {
	const help: Record<string, HelpLevel> = {};
	if (!isFields(value)) return help;
	for (const ask of asks) {
		const level = HELP_LEVELS.find((one) => one === value[ask]);
		if (level !== undefined) help[ask] = level;
	}
	return help;
}

/** @returns null for no walk, undefined for a broken one. */
function walkFrom(value: unknown, asks: readonly string[]): Snapshot['walk'] | undefined {
	if (value === null || value === undefined) return null;
	if (!isFields(value)) return undefined;
	const ask = asks.find((id) => id === value['ask']);
	const { at, of, texts } = value;
	if (ask === undefined || typeof at !== 'number' || typeof of !== 'number' || !Array.isArray(texts)) return undefined;
	if (!Number.isInteger(at) || !Number.isInteger(of) || at < 0 || at >= of || texts.length !== of) return undefined;
	if (!texts.every((text) => typeof text === 'string')) return undefined;
	return { ask, at, of, texts: texts.map((text) => text.slice(0, LONGEST_TEXT)) };
}
