import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { explain, gradeAsk, type Answer } from '#lib/grading/index.ts';
import { evaluate } from '#lib/expression/index.ts';
import { shownGivens } from '#lib/grading/index.ts';
import { writeQuantity } from '#lib/quantity/index.ts';
import { slipsWithEffect, type NumberAsk } from '#lib/scenario/index.ts';
import type { SlipId } from '#lib/slips/index.ts';
import { logPage } from '#lib/server/db/audit.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { printedCode } from '#lib/server/paper/code.ts';
import { paperPlaces } from '#lib/server/paper/places.ts';
import { findSheet, listSheets, printSheet, type Sheet, type SheetEntry } from '#lib/server/paper/sheets.ts';
import { findCopy, typeIn, type CopyPlace, type PaperCopy, type PlaceEntry } from '#lib/server/paper/typing.ts';
import type { Person } from '#lib/server/people/who.ts';
import { findSet } from '#lib/server/sets/make.ts';
import { setScenarios } from '#lib/server/sets/scenarios.ts';
import { answered } from '../../../support/answered.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aCrew, aMember, anOrganisation, type TestCrew } from '../people/organisation.ts';
import { aSet, aSignedIn } from '../sets/given.ts';

/** No bound. */
const EVER = { span: { from: null, before: null } };

const NOBODY = '00000000-0000-0000-0000-000000000000';

/** The right answers to a problem, of those asks that are asked. */
function rightEntry({ place, problem, asks }: CopyPlace, change: Readonly<Record<string, Answer | undefined>> = {}): PlaceEntry {
	const right = answered(problem).answers as Readonly<Record<string, unknown>> as Readonly<Record<string, Answer>>;
	const answers = Object.fromEntries(asks.flatMap(({ id }) => ((id in change ? change[id] : right[id]) === undefined ? [] : [[id, id in change ? change[id] : right[id]]])));
	return { place, answers: answers as Readonly<Record<string, Answer>>, restEmpty: false };
}

/** A wrong number in a place that the diagnosis traces to one slip alone. */
function slipIn(places: readonly CopyPlace[]): { readonly place: CopyPlace; readonly ask: NumberAsk; readonly slip: SlipId; readonly text: string } {
	for (const place of places) {
		for (const ask of place.asks) {
			if (ask.kind !== 'number') continue;
			for (const slip of slipsWithEffect(place.problem, ask)) {
				const { ownTree } = explain(place.problem, ask, [slip]);
				if (ownTree === undefined || !['m', 'kN', 'kg'].includes(ask.precision.unit)) continue;
				const text = writeQuantity(evaluate(ownTree, shownGivens(place.problem)), { unit: ask.precision.unit, decimals: 2, language: 'en', withUnit: false });
				const grade = gradeAsk(place.problem, ask.id, { kind: 'number', text }, { language: 'en' });
				if (grade.kind === 'number' && grade.diagnosis?.certainty === 'asserted') return { place, ask, slip, text };
			}
		}
	}
	throw new Error('no slip of these problems is told apart from all others');
}

describe.each(DATABASES)('on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let trainer: Person;
	let other: Person;
	let crew: TestCrew;
	let set: string;

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		trainer = await aMember(db, organisation, 'trainer');
		other = await aMember(db, organisation, 'trainer', 'Ivo Land');
		crew = await aCrew(db, organisation, [trainer]);
		set = await aSet(db, trainer);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	async function printed(entry: Partial<SheetEntry> = {}): Promise<Sheet> {
		const sheet = await printSheet(db, trainer, set, { copies: 4, alike: false, language: 'en', ...entry }, NOW);
		if (sheet === null) throw new Error('the set is not found');
		return sheet;
	}

	async function opened(sheet: Sheet, copy: number, person: Person): Promise<PaperCopy> {
		const found = await findCopy(db, trainer, printedCode(sheet.code, copy), person.id);
		if (found.kind !== 'found') throw new Error(found.kind);
		return found.copy;
	}

	async function storedFor(person: Person) {
		const attempts = await db.selectFrom('attempt').select(['id', 'language']).where('guest_id', '=', person.answerer).execute();
		const outcomes = await db.selectFrom('outcome').selectAll().where('answerer_id', '=', person.answerer).execute();
		const papers = await db.selectFrom('paper_answer').selectAll().where('person_id', '=', person.id).orderBy('place').execute();
		return { attempts, outcomes, papers };
	}

	async function seedsOf(sheet: Sheet, copy: number): Promise<readonly string[]> {
		const found = await findSet(db, trainer, set);
		if (found === null) throw new Error('no set');
		const scenarios = await setScenarios(db, organisation, found.content);
		return [...paperPlaces(found.content, scenarios, sheet, copy)].map(({ problem }) => `${problem.scenario.id} ${problem.seed}`);
	}

	it('a sheet is made, noted and listed; a common one has one copy', async () => {
		const sheet = await printed();
		expect(sheet).toMatchObject({ copies: 4, alike: false, language: 'en', at: NOW.toISOString() });
		expect(sheet.code).toMatch(/^[0-9A-HJKMNP-TV-Z]{8}$/);
		const common = await printed({ alike: true, copies: 30, language: 'es' });
		expect(common).toMatchObject({ copies: 1, alike: true, language: 'es' });
		expect((await listSheets(db, trainer, set)).map(({ id }) => id)).toEqual(expect.arrayContaining([sheet.id, common.id]));
		// Of a long set fewer copies are printed at once.
		const long = await printSheet(db, trainer, await aSet(db, trainer, { count: 40 }), { copies: 40, alike: false, language: 'en' }, NOW);
		expect(long?.copies).toBe(10);
		const [event] = (await logPage(db, organisation, EVER, 50)).filter(({ subject_id }) => subject_id === sheet.id);
		expect(event).toMatchObject({ kind: 'paper-printed', actor_id: trainer.id });
	});

	it('a set that is not theirs to see has no sheets for them', async () => {
		const sheet = await printed();
		expect(await printSheet(db, other, set, { copies: 1, alike: false, language: 'en' }, NOW)).toBeNull();
		expect(await listSheets(db, other, set)).toEqual([]);
		expect(await findSheet(db, other, set, sheet.id)).toBeNull();
		expect(await findSheet(db, trainer, set, NOBODY)).toBeNull();
		const learner = await aSignedIn(db, organisation, [crew]);
		expect(await findCopy(db, other, printedCode(sheet.code, 1), learner.id)).toEqual({ kind: 'no-sheet' });
		const stranger = await aMember(db, await anOrganisation(db), 'employer');
		expect(await findCopy(db, stranger, printedCode(sheet.code, 1), learner.id)).toEqual({ kind: 'no-sheet' });
	});

	it('a copy has the same problems whenever it is drawn; copies differ, those of a common sheet do not', async () => {
		const own = await printed();
		const first = await seedsOf(own, 1);
		expect(await seedsOf(own, 1)).toEqual(first);
		expect(await seedsOf(own, 2)).not.toEqual(first);
		expect(await seedsOf(await printed(), 1)).not.toEqual(first);
		const common = await printed({ alike: true });
		expect(await seedsOf(common, 2)).toEqual(await seedsOf(common, 1));
	});

	it('wrong codes, copies that were not printed, and people of other crews are not found', async () => {
		const sheet = await printed({ copies: 2 });
		const learner = await aSignedIn(db, organisation, [crew]);
		const find = (code: string, person: string) => findCopy(db, trainer, code, person);
		expect(await find('K7QM-2XWD-01', learner.id)).toEqual({ kind: 'no-sheet' });
		expect(await find('nothing', learner.id)).toEqual({ kind: 'no-sheet' });
		expect(await find(printedCode(sheet.code, 3), learner.id)).toEqual({ kind: 'no-copy', copies: 2 });
		expect(await find(printedCode(sheet.code, 1), NOBODY)).toEqual({ kind: 'no-person' });
		const elsewhere = await aSignedIn(db, organisation, [await aCrew(db, organisation, [other])]);
		expect(await find(printedCode(sheet.code, 1), elsewhere.id)).toEqual({ kind: 'no-person' });
		expect(await find(printedCode(sheet.code, 1), trainer.id)).toEqual({ kind: 'no-person' });
	});

	it('an employer may type in for everybody, and is told what is behind an answer only where they teach', async () => {
		const employer = await aMember(db, organisation, 'employer', 'Ruth Ofori');
		const sheet = await printed();
		const learner = await aSignedIn(db, organisation, [crew, await aCrew(db, organisation, [])]);
		const own = await aSignedIn(db, organisation, [await aCrew(db, organisation, [employer])]);
		const taught = async (who: Person, person: Person) => {
			const found = await findCopy(db, who, printedCode(sheet.code, 1), person.id);
			return found.kind === 'found' ? found.copy.taught : found.kind;
		};
		expect([await taught(trainer, learner), await taught(employer, learner), await taught(employer, own)]).toEqual([true, false, true]);
	});

	it('answers typed in are the learner’s, marked as paper, and count as practice only', async () => {
		const learner = await aSignedIn(db, organisation, [crew]);
		const sheet = await printed();
		const copy = await opened(sheet, 3, learner);
		expect(await typeIn(db, trainer, copy, copy.places.map((place) => rightEntry(place)), NOW)).toEqual({ kind: 'typed', problems: 3 });
		const { attempts, outcomes, papers } = await storedFor(learner);
		expect(attempts).toHaveLength(3);
		expect(papers).toMatchObject([0, 1, 2].map((place) => ({ sheet_id: sheet.id, copy: 3, place, typed_by: trainer.id })));
		expect(papers.map(({ attempt_id }) => attempt_id).sort()).toEqual(attempts.map(({ id }) => id).sort());
		expect(outcomes.length).toBeGreaterThanOrEqual(3);
		expect(outcomes.every(({ way, assignment_id, wrong }) => way === 'paper' && assignment_id === null && wrong === 0)).toBe(true);
		expect(await db.selectFrom('set_answer').selectAll().where('person_id', '=', learner.id).execute()).toEqual([]);
		expect(await db.selectFrom('course_event').selectAll().where('person_id', '=', learner.id).execute()).toEqual([]);
		const noted = (await logPage(db, organisation, EVER, 50)).filter(({ kind, subject_id }) => kind === 'paper-typed' && subject_id === learner.id);
		expect(noted).toHaveLength(1);
		expect(JSON.parse(noted[0]?.detail ?? '')).toEqual({ sheet: sheet.id, copy: 3, problems: 3 });
		const again = await opened(sheet, 3, learner);
		expect(again.places.every(({ typed }) => typed !== null && Object.values(typed.grades).every((grade) => grade.kind === 'decision' || (grade.kind === 'number' && grade.mark.kind === 'right')))).toBe(true);
		expect((await listSheets(db, trainer, set)).find(({ id }) => id === sheet.id)?.people).toBe(1);
	});

	it('a slip on paper is found like any other', async () => {
		const learner = await aSignedIn(db, organisation, [crew]);
		const sheet = await printed({ copies: 40 });
		for (let nth = 1; ; nth += 1) {
			const copy = await opened(sheet, nth, learner);
			let found: ReturnType<typeof slipIn>;
			try {
				found = slipIn(copy.places);
			} catch (error) {
				if (nth === sheet.copies) throw error;
				continue;
			}
			const { place, ask, slip, text } = found;
			expect(await typeIn(db, trainer, copy, [rightEntry(place, { [ask.id]: { kind: 'number', text } })], NOW)).toEqual({ kind: 'typed', problems: 1 });
			const { outcomes } = await storedFor(learner);
			expect(outcomes.find((one) => one.ask === ask.id)).toMatchObject({ way: 'paper', wrong: 1, slip });
			return;
		}
	});

	it('a problem is typed in once for a person; a problem left empty waits', async () => {
		const learner = await aSignedIn(db, organisation, [crew]);
		const sheet = await printed();
		const copy = await opened(sheet, 1, learner);
		const [first, ...rest] = copy.places.map((place) => rightEntry(place));
		if (first === undefined) throw new Error('no places');
		expect(await typeIn(db, trainer, copy, [first, ...rest.map((one) => ({ ...one, answers: {} }))], NOW)).toEqual({ kind: 'typed', problems: 1 });
		const again = await opened(sheet, 1, learner);
		expect(again.places.map(({ typed }) => typed !== null)).toEqual([true, false, false]);
		expect(await typeIn(db, trainer, again, [first, ...rest], NOW)).toEqual({ kind: 'typed-before', places: [0] });
		expect((await storedFor(learner)).attempts).toHaveLength(1);
		expect(await typeIn(db, trainer, again, rest, NOW)).toEqual({ kind: 'typed', problems: 2 });
		expect(await typeIn(db, trainer, again, [], NOW)).toEqual({ kind: 'nothing' });
	});

	it('of two who type in the same at the same time, one is told', async () => {
		const learner = await aSignedIn(db, organisation, [crew]);
		const copy = await opened(await printed(), 1, learner);
		const entries = copy.places.map((place) => rightEntry(place));
		const both = await Promise.all([typeIn(db, trainer, copy, entries, NOW), typeIn(db, trainer, copy, entries, NOW)]);
		expect(both.map(({ kind }) => kind).sort()).toEqual(['typed', 'typed-before']);
		const { attempts, papers, outcomes } = await storedFor(learner);
		expect([attempts.length, papers.length]).toEqual([3, 3]);
		expect(new Set(outcomes.map(({ answer_id }) => answer_id)).size).toBe(3);
	});

	it('is stored and noted all together or not at all: of a copy that another began meanwhile, nothing is stored', async () => {
		const learner = await aSignedIn(db, organisation, [crew]);
		const copy = await opened(await printed(), 1, learner);
		const entries = copy.places.map((place) => rightEntry(place));
		expect(await typeIn(db, trainer, copy, entries.slice(1, 2), NOW)).toEqual({ kind: 'typed', problems: 1 });
		// Opened before that: here the second problem still looks empty.
		expect(await typeIn(db, trainer, copy, entries, NOW)).toEqual({ kind: 'typed-before', places: [1] });
		const { attempts, papers, outcomes } = await storedFor(learner);
		expect([attempts.length, papers.map(({ place }) => place)]).toEqual([1, [1]]);
		expect(new Set(outcomes.map(({ answer_id }) => answer_id)).size).toBe(1);
		const notes = (await logPage(db, organisation, EVER, 1000)).filter(({ kind, subject_id }) => kind === 'paper-typed' && subject_id === learner.id);
		expect(notes.map(({ detail }) => JSON.parse(detail) as object)).toEqual([{ sheet: copy.sheet.id, copy: 1, problems: 1 }]);
	});

	it('entries that cannot be read, and empty ones, are asked for again; nothing is stored', async () => {
		const learner = await aSignedIn(db, organisation, [crew]);
		const copy = await opened(await printed(), 2, learner);
		const [place, next] = copy.places;
		const [ask, second] = place?.asks ?? [];
		if (place === undefined || next === undefined || ask?.kind !== 'number' || second === undefined) throw new Error('the first problem asks for a number and more');
		const bad = rightEntry(place, { [ask.id]: { kind: 'number', text: 'two' }, [second.id]: undefined });
		const refused = await typeIn(db, trainer, copy, [bad, rightEntry(next)], NOW);
		expect(refused).toMatchObject({
			kind: 'refused',
			faults: [
				{ kind: 'reading', place: 0, ask: { id: ask.id }, reading: { kind: 'unreadable' } },
				{ kind: 'empty', place: 0, ask: { id: second.id } }
			]
		});
		expect((await storedFor(learner)).attempts).toEqual([]);
	});

	it('what is empty on the paper is left out of the marking; a decision alone is asked for its numbers', async () => {
		const learner = await aSignedIn(db, organisation, [crew]);
		const copy = await opened(await printed(), 2, learner);
		const place = copy.places.find(({ asks }) => asks.length > 2 && asks.some(({ kind }) => kind === 'decision'));
		const [ask, ...others] = place?.asks ?? [];
		if (place === undefined || ask === undefined) throw new Error('a problem asks for numbers and a decision');
		const onlyFirst = rightEntry(place, Object.fromEntries(others.map(({ id, kind }) => [id, kind === 'decision' ? { kind: 'decision', decision: 'tie-off' } : undefined])));
		const decisionAlone = { ...rightEntry(place, Object.fromEntries(place.asks.flatMap(({ id, kind }) => (kind === 'number' ? [[id, undefined]] : [])))), restEmpty: true };
		expect((await typeIn(db, trainer, copy, [decisionAlone], NOW)).kind).toBe('refused');
		expect((await typeIn(db, trainer, copy, [onlyFirst], NOW)).kind).toBe('refused');
		expect(await typeIn(db, trainer, copy, [{ ...onlyFirst, restEmpty: true }], NOW)).toEqual({ kind: 'typed', problems: 1 });
		const { outcomes } = await storedFor(learner);
		expect(outcomes.map((one) => one.ask)).toEqual([ask.id]);
	});

	it('numbers are read in the language of the sheet', async () => {
		const learner = await aSignedIn(db, organisation, [crew]);
		const copy = await opened(await printed({ language: 'es' }), 1, learner);
		const place = copy.places[0];
		if (place === undefined) throw new Error('no places');
		const comma = Object.fromEntries(
			place.asks.map(({ id, kind }) => {
				const answer = answered(place.problem).answers[id];
				return [id, kind === 'number' && answer?.['kind'] === 'number' ? { kind: 'number', text: (answer['text'] ?? '').replace('.', ',') } : undefined] as const;
			})
		);
		const entry = rightEntry(place, Object.fromEntries(Object.entries(comma).filter(([, answer]) => answer !== undefined)) as Record<string, Answer>);
		expect(await typeIn(db, trainer, copy, [entry], NOW)).toEqual({ kind: 'typed', problems: 1 });
		const { attempts, outcomes } = await storedFor(learner);
		expect(attempts).toMatchObject([{ language: 'es' }]);
		expect(outcomes.every(({ wrong }) => wrong === 0)).toBe(true);
	});

	it('a copy of one’s own that was typed in for somebody else says so; a common sheet takes many people', async () => {
		const [ada, bo] = [await aSignedIn(db, organisation, [crew], 'Ada Moor'), await aSignedIn(db, organisation, [crew], 'Bo Lund')];
		const sheet = await printed();
		const copy = await opened(sheet, 1, ada);
		await typeIn(db, trainer, copy, copy.places.map((place) => rightEntry(place)), NOW);
		expect((await opened(sheet, 1, bo)).others).toEqual(['Ada Moor']);
		expect((await opened(sheet, 2, bo)).others).toEqual([]);
		const common = await printed({ alike: true });
		for (const person of [ada, bo]) {
			const one = await opened(common, 1, person);
			expect(one.others).toEqual([]);
			expect((await typeIn(db, trainer, one, one.places.map((place) => rightEntry(place)), NOW)).kind).toBe('typed');
		}
	});
});
