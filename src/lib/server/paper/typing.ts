/** Answers from paper, typed in for the learner who wrote them: graded like any other, marked as paper, practice only. */
import { randomUUID } from 'node:crypto';
import { setImmediate as breathe } from 'node:timers/promises';
import type { Answer, Grade } from '#lib/grading/index.ts';
import type { Question, Unreadable } from '#lib/quantity/index.ts';
import type { Ask, NumberAsk } from '#lib/scenario/index.ts';
import { SLIP_SET_VERSION } from '#lib/slips/index.ts';
import { partOf } from '../attempts/answer.ts';
import { markAnswers, type MarkedAnswers } from '../attempts/mark.ts';
import { siteOutcomes } from '../attempts/outcomes.ts';
import { attemptRow } from '../attempts/receive.ts';
import { storeTogether } from '../db/attempts.ts';
import { findTypedFor, othersOfCopy, sheetByCode, typedAnswers, type TypedFor } from '../db/paper.ts';
import type { Database } from '../db/open.ts';
import { teaches } from '../db/outcomes.ts';
import { noteDeed } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import { scenariosFor } from '../scenarios/found.ts';
import { findSet, type PracticeSet } from '../sets/make.ts';
import { setScenarios } from '../sets/scenarios.ts';
import { readPrintedCode } from './code.ts';
import { paperPlace, type PaperPlace } from './places.ts';
import { sheetOf, type Sheet } from './sheets.ts';

/** What was typed in for a problem before. */
export interface TypedBefore {
	readonly answers: Readonly<Record<string, Answer>>;
	readonly grades: Readonly<Record<string, Grade>>;
	/** ISO 8601. */
	readonly at: string;
}

/** A problem of a copy, with what was typed in for it, if anything was. */
export interface CopyPlace extends PaperPlace {
	readonly typed: TypedBefore | null;
}

/** A copy as it is typed in for one person. */
export interface PaperCopy {
	readonly sheet: Sheet;
	readonly set: PracticeSet;
	readonly copy: number;
	readonly person: TypedFor;
	/** Whether who types it in teaches that person: slips are told to nobody else. */
	readonly taught: boolean;
	readonly places: readonly CopyPlace[];
	/** Others for whom this copy was typed in: a sign of a wrong code, unless the sheet is common. */
	readonly others: readonly string[];
}

/** What came of looking for a copy. */
export type FoundCopy =
	| { readonly kind: 'found'; readonly copy: PaperCopy }
	/** No such code, a sheet of a set that is not theirs to see, or one whose problems cannot be drawn any more. */
	| { readonly kind: 'no-sheet' }
	/** The sheet has fewer copies. */
	| { readonly kind: 'no-copy'; readonly copies: number }
	/** Nobody on the list of a crew of theirs. */
	| { readonly kind: 'no-person' };

/** Finds the copy that a code stands for. @param typed the code as it was typed @param person id of who wrote the answers */
export async function findCopy(db: Database, who: Person, typed: string, person: string): Promise<FoundCopy> {
	const read = readPrintedCode(typed);
	const row = read === undefined ? null : await sheetByCode(db, who, read.code);
	const set = row === null ? null : await findSet(db, who, row.set_id);
	if (read === undefined || row === null || set === null) return { kind: 'no-sheet' };
	const sheet = sheetOf(row);
	if (read.copy > sheet.copies) return { kind: 'no-copy', copies: sheet.copies };
	const learner = await findTypedFor(db, who, person);
	if (learner === null) return { kind: 'no-person' };
	const scenarios = await setScenarios(db, who.organisation, set.content);
	// One of them cannot be read any more: its problems cannot be drawn.
	if (scenarios.length < set.content.scenarios.length) return { kind: 'no-sheet' };
	const before = new Map((await typedAnswers(db, sheet.id, read.copy, learner.id)).map((one) => [one.place, one]));
	const places: CopyPlace[] = [];
	for (let place = 0; place < set.content.count; place += 1) {
		const row = before.get(place);
		// Stored by us, from what passed the schemas.
		const told = row === undefined ? null : ({ answers: JSON.parse(row.answers), grades: JSON.parse(row.result), at: row.at } as TypedBefore);
		places.push({ ...paperPlace(set.content, scenarios, sheet, read.copy, place), typed: told });
		// Drawing takes some milliseconds each: others get their turn.
		await breathe();
	}
	const others = sheet.alike ? [] : await othersOfCopy(db, who, sheet.id, read.copy, learner.id);
	return { kind: 'found', copy: { sheet, set, copy: read.copy, person: learner, taught: await teaches(db, who, learner.id), places, others } };
}

/** What was typed for a problem. */
export interface PlaceEntry {
	readonly place: number;
	/** By ask; what stands empty is left out. */
	readonly answers: Readonly<Record<string, Answer>>;
	/** Whether what stands empty was left empty on the paper: else it is asked for. */
	readonly restEmpty: boolean;
}

/** What is wrong with what was typed for one ask. */
export type EntryFault =
	| { readonly kind: 'empty'; readonly place: number; readonly ask: Ask }
	| { readonly kind: 'reading'; readonly place: number; readonly ask: NumberAsk; readonly reading: Unreadable | Question };

/** What came of typing in. */
export type TypedIn =
	| { readonly kind: 'typed'; readonly problems: number }
	/** Nothing was stored. */
	| { readonly kind: 'refused'; readonly faults: readonly EntryFault[] }
	/** Nothing was typed. */
	| { readonly kind: 'nothing' }
	/** Answers to these problems are stored already; nothing was stored now. */
	| { readonly kind: 'typed-before'; readonly places: readonly number[] };

/** The asks that what was typed answers: a decision only with all its numbers, for it is marked by them. */
function answeredAsks({ asks }: PaperPlace, { answers }: PlaceEntry): readonly Ask[] {
	const typed = asks.filter((ask) => answers[ask.id] !== undefined);
	return typed.filter((ask) => ask.kind !== 'decision' || ask.with.every((id) => answers[id] !== undefined));
}

/** A problem whose answers are marked, or what is wrong with them. */
type Marked = { readonly kind: 'marked'; readonly place: number; readonly marked: MarkedAnswers } | { readonly kind: 'faults'; readonly faults: readonly EntryFault[] };

/**
 * Stores what was typed in for a copy: all problems that something was typed for, or none.
 * A problem that nothing was typed for is left for later.
 */
export async function typeIn(db: Database, who: Person, copy: PaperCopy, entries: readonly PlaceEntry[], now: Date): Promise<TypedIn> {
	const typed = entries.flatMap((entry) => {
		const place = copy.places.find((one) => one.place === entry.place);
		return place === undefined || Object.keys(entry.answers).length === 0 ? [] : [{ place, entry }];
	});
	if (typed.length === 0) return { kind: 'nothing' };
	const before = typed.filter(({ place }) => place.typed !== null).map(({ place }) => place.place);
	if (before.length > 0) return { kind: 'typed-before', places: before };
	const results: Marked[] = [];
	for (const { place, entry } of typed) {
		results.push(await markPlace(db, who, copy, place, entry));
		await breathe();
	}
	const faults = results.flatMap((one) => (one.kind === 'faults' ? one.faults : []));
	if (faults.length > 0) return { kind: 'refused', faults };
	const marked = results.flatMap((one) => (one.kind === 'marked' ? [one] : []));
	return store(db, who, copy, marked, now);
}

function emptyFaults({ place }: CopyPlace, asks: readonly Ask[]): readonly EntryFault[] {
	return asks.map((ask) => ({ kind: 'empty', place, ask }));
}

/** Marks what was typed for a problem, and finds all that is wrong with it. */
async function markPlace(db: Database, who: Person, { sheet }: PaperCopy, place: CopyPlace, entry: PlaceEntry): Promise<Marked> {
	const empty = place.asks.filter((ask) => entry.answers[ask.id] === undefined);
	const asks = answeredAsks(place, entry);
	// A decision alone is not marked: its numbers are asked for, whatever was ticked.
	if (asks.length === 0) return { kind: 'faults', faults: emptyFaults(place, empty) };
	const missing = entry.restEmpty ? [] : emptyFaults(place, empty);
	const { scenario, seed, acceptedTry, drawVersion } = place.problem;
	const ids = asks.map((ask) => ask.id);
	const sent = {
		id: randomUUID(),
		scenario: scenario.id,
		version: scenario.version,
		drawVersion,
		slipSetVersion: SLIP_SET_VERSION,
		seed,
		acceptedTry,
		...(partOf(scenario, ids)?.length === scenario.asks.length ? {} : { asks: ids }),
		language: sheet.language,
		answers: Object.fromEntries(ids.map((id) => [id, entry.answers[id]]))
	};
	const marked = markAnswers(sent, await scenariosFor(db, who.organisation, scenario.id, scenario.version));
	switch (marked.kind) {
		case 'read':
			return missing.length > 0 ? { kind: 'faults', faults: missing } : { kind: 'marked', place: place.place, marked: marked.value };
		case 'unread':
			return { kind: 'faults', faults: [...marked.entries.map(({ ask, reading }): EntryFault => ({ kind: 'reading', place: place.place, ask, reading })), ...missing] };
		case 'refused':
			throw new Error(`Answers of a problem that this server drew itself were refused: ${JSON.stringify(marked.problems)}`);
	}
}

/** Stores marked answers with their place on the paper, all or none; those who typed the same at the same time are told so. */
async function store(db: Database, who: Person, { sheet, copy, person }: PaperCopy, all: readonly Extract<Marked, { kind: 'marked' }>[], now: Date): Promise<TypedIn> {
	const at = now.toISOString();
	const coming = all.map(({ place, marked }) => ({
		attempt: attemptRow(marked, person.answerer, now),
		beside: {
			outcomes: siteOutcomes(marked, { answerer: person.answerer, way: 'paper', now }),
			paper: { attempt_id: marked.sent.id, sheet_id: sheet.id, copy, place, person_id: person.id, typed_by: who.id, at }
		}
	}));
	const stored = await storeTogether(db, coming, (transaction) => noteDeed(transaction, who, 'paper-typed', person.id, now, { sheet: sheet.id, copy, problems: all.length }));
	if (stored) return { kind: 'typed', problems: all.length };
	// The database takes each place of a copy once for a person: somebody else was quicker.
	const taken = new Set((await typedAnswers(db, sheet.id, copy, person.id)).map((one) => one.place));
	return { kind: 'typed-before', places: all.map(({ place }) => place).filter((place) => taken.has(place)) };
}
