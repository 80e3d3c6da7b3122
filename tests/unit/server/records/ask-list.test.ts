import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { addDays, type Entry } from '#lib/records/index.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import type { Person } from '#lib/server/people/who.ts';
import { appendEntries } from '#lib/server/records/append.ts';
import { askList, LONGEST_ASKED, MOST_LINES } from '#lib/server/records/ask-list.ts';
import { priorTrainingEntry } from '../../../support/record-entries.ts';
import { DATABASES, type TestDatabase } from '../databases.ts';
import { NOW, aLearner, aMember, anOrganisation } from '../people/organisation.ts';

/** Of NOW, in UTC, the zone of the organisation. */
const TODAY = '2026-11-25';

describe.each(DATABASES)('who on a list is current today, on %s', (_, start) => {
	let server: TestDatabase;
	let db: Database;
	let organisation: string;
	let employer: Person;

	async function append(entry: Entry): Promise<void> {
		await db.transaction().execute((transaction) => appendEntries(transaction, organisation, [entry]));
	}

	/** A learner, trained until a day if one is named. */
	async function learner(name: string, number: string, until?: string | null, of = organisation): Promise<string> {
		const id = await aLearner(db, of, number, [], name);
		if (until !== undefined) await db.transaction().execute((transaction) => appendEntries(transaction, of, [priorTrainingEntry(id, '2026-01-10', until)]));
		return id;
	}

	beforeAll(async () => {
		server = await start();
		db = await openDatabase(server.address);
		organisation = await anOrganisation(db);
		employer = await aMember(db, organisation, 'employer');
		await learner('Wen Abara', 'C-203', null);
		await learner('José Álvarez', 'C-117', addDays(TODAY, 3));
		await learner('Tomas Eik', 'C-201', addDays(TODAY, -1));
		await learner('Dario Penn', 'C-500');
		await learner('Ida Storm', 'C-301', null);
		await learner('Storm, Ida', 'C-302');
		const gone = await learner('Nadia Rook', 'C-700', null);
		await append({ kind: 'left', at: NOW.toISOString(), by: employer.id, person: gone, day: TODAY });
		const other = await anOrganisation(db);
		await learner('Bo Eklund', 'X-1', null, other);
		// A number that looks like the count of a line.
		await learner('Leo Strand', '1', null);
	});

	afterAll(async () => {
		await db.destroy();
		server.stop();
	});

	/** What is told of each line: kind, names, and whether it is current. */
	async function ask(text: string) {
		const asked = await askList(db, employer, text, NOW);
		if (asked.kind !== 'answered') return asked;
		const lines = asked.lines.map(({ line, answer, current }) => {
			const people = answer.kind === 'one' ? [answer.person] : answer.kind === 'not-found' ? [] : answer.people;
			return [line, answer.kind, people.map((one) => `${one.name} ${one.number ?? ''}`), current] as const;
		});
		return { repeated: asked.repeated, lines };
	}

	// What follows is reckoned by hand from the people above: common practice, no source.
	it.each([
		['a name', 'Wen Abara', ['one', ['Wen Abara C-203'], true]],
		['a name the other way round, small, without its accents', 'alvarez,  jose', ['one', ['José Álvarez C-117'], true]],
		['a number, however it is typed', ' c-203 ', ['one', ['Wen Abara C-203'], true]],
		['not a part of a number', 'C-20', ['not-found', [], false]],
		['whose training is over', 'Tomas Eik', ['one', ['Tomas Eik C-201'], false]],
		['who was never trained', 'C-500', ['one', ['Dario Penn C-500'], false]],
		['who has left, though trained', 'Nadia Rook', ['one', ['Nadia Rook C-700'], false]],
		['two people of one name', 'Ida Storm', ['several', ['Ida Storm C-301', 'Storm, Ida C-302'], false]],
		['which of the two by the number beside', 'Ida Storm;C-301', ['one', ['Ida Storm C-301'], true]],
		['a name and the number of another', 'C-203,Tomas Eik', ['two-people', ['Wen Abara C-203', 'Tomas Eik C-201'], false]],
		['who is meant by name and number, where another number counts the lines', '1;Wen Abara;C-203;North', ['one', ['Wen Abara C-203'], true]],
		['first and last name in two columns, in quotation marks', '"Abara"\t"Wen"\tC-203', ['one', ['Wen Abara C-203'], true]],
		['nobody of another organisation', 'Bo Eklund', ['not-found', [], false]],
		['nobody by the number of another organisation', 'X-1', ['not-found', [], false]],
		['nothing in signs alone', '%%%', ['not-found', [], false]]
	])('tells %s', async (_what, text, told) => {
		expect(await ask(text)).toEqual({ repeated: 0, lines: [[1, ...told]] });
	});

	it('numbers lines as they stand, leaves out headings and empty ones, and counts a line once that stands there again', async () => {
		expect(await ask('\ufeffName;Number\r\n\r\nWen Abara;C-203\r\nTomas Eik\r\nwen abara;c-203\n')).toEqual({
			repeated: 1,
			lines: [
				[3, 'one', ['Wen Abara C-203'], true],
				[4, 'one', ['Tomas Eik C-201'], false]
			]
		});
	});

	it('a column that counts the lines is nobody’s number: whoever else stands on line 1 is not taken for its holder', async () => {
		const strangers = (lines: readonly string[]) => ask(lines.join('\n'));
		expect(await strangers(['1;Ada Nobody', '2;Wen Abara', '3;Otto Nobody'])).toEqual({
			repeated: 0,
			lines: [
				[1, 'not-found', [], false],
				[2, 'one', ['Wen Abara C-203'], true],
				[3, 'not-found', [], false]
			]
		});
		// Empty lines and a heading between do not matter, nor from where it counts.
		expect(await strangers(['No;Name', '0\tAda Nobody', '', '1\tOtto Nobody'])).toMatchObject({ lines: [[2, 'not-found', [], false], [4, 'not-found', [], false]] });
		// Who is named too is meant by it; and numbers by themselves are numbers.
		expect(await strangers(['1;Leo Strand', '2;Wen Abara'])).toMatchObject({ lines: [[1, 'one', ['Leo Strand 1'], true], [2, 'one', ['Wen Abara C-203'], true]] });
		expect(await strangers(['1', '2'])).toMatchObject({ lines: [[1, 'one', ['Leo Strand 1'], true], [2, 'not-found', [], false]] });
		expect(await strangers(['1;North', 'C-203;North'])).toMatchObject({ lines: [[1, 'one', ['Leo Strand 1'], true], [2, 'one', ['Wen Abara C-203'], true]] });
	});

	it('answers as many lines as it takes, and refuses what is none or more', async () => {
		const lines = Array.from({ length: MOST_LINES - 1 }, (_one, i) => `Worker ${String(i)}`);
		const asked = await askList(db, employer, [...lines, 'Wen Abara'].join('\n'), NOW);
		expect(asked.kind === 'answered' && asked.lines.filter(({ current }) => current).map(({ line }) => line)).toEqual([MOST_LINES]);
		expect(await ask([...lines, 'one more', 'and one'].join('\n'))).toEqual({ kind: 'refused', why: 'too-many' });
		expect(await ask(' \n\t\n')).toEqual({ kind: 'refused', why: 'empty' });
		expect(await ask('x'.repeat(LONGEST_ASKED + 1))).toEqual({ kind: 'refused', why: 'too-long' });
	});
});
