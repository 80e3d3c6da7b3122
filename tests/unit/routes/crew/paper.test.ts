import { setTimeout } from 'node:timers/promises';
import { describe, expect, it } from 'vitest';
import { analysisOf, rightValue } from '#lib/grading/index.ts';
import { printCopies } from '#lib/paper/index.ts';
import { storyOf, type Problem } from '#lib/scenario/index.ts';
import { paperPlaces } from '#lib/server/index.ts';
import { askParts, askText, type Speech } from '../../../../src/routes/learn/problem/model/names.ts';
import { allGivens } from '../../../../src/routes/learn/problem/model/plates.ts';
import { answerUnit, writerFor } from '../../../../src/routes/learn/problem/model/writing.ts';
import { copiesToPrint, pageWords, type Printing } from '../../../../src/routes/crew/sets/[set]/paper/print/copies.ts';
import { packed, readPdf, type ReadPage } from '../../../support/pdf-text.ts';
import { aPrinting, printed } from './printed-set.ts';

/** Metric, decimal feet, feet and inches; decoys, obstacles, a swing, a kneeling worker, a deep shaft. */
const SOME = ['tank-roof', 'yard-mast', 'silo-weld', 'lift-shaft'];

function wordsOf(page: ReadPage): string {
	return packed(page.runs.join(' '));
}

function placesOf({ sheet, content, scenarios }: Printing, copy = 1) {
	return [...paperPlaces(content, scenarios, sheet, copy)];
}

function speechOf({ sheet, m }: Printing, problem: Problem): Speech {
	return { problem, language: sheet.language, m };
}

/** A given as it may stand: with its unit on a label, without it in the drawing. */
function stands(text: string, value: string): boolean {
	return text.includes(packed(value)) || text.includes(packed(value.replace(/\s\p{L}+$/u, '')));
}

describe.each([
	['en', 'a4'],
	['es', 'letter']
] as const)('a sheet in %s on %s', (language, size) => {
	it('has every problem on one page, with its story, all its numbers, a box for each answer, and its code', async () => {
		const printing = await aPrinting(SOME, { language });
		const places = placesOf(printing);
		const { pages } = readPdf(await printed(printing, 'sheet', size));
		expect(pages).toHaveLength(SOME.length);
		for (const [i, { problem, asks }] of places.entries()) {
			const page = pages[i];
			if (page === undefined) throw new Error(`no page ${i}`);
			const text = wordsOf(page);
			const speech = speechOf(printing, problem);
			const story = storyOf(problem, language);
			for (const one of [story.title, story.lead, ...story.paragraphs]) expect(text).toContain(packed(one));
			expect(text).toContain('K7QM-2XWD-01');
			expect(text).toContain(packed(printing.words.page({ code: 'K7QM-2XWD-01', n: String(i + 1), of: String(SOME.length) })));
			const missing = allGivens(speech, writerFor(problem.scenario, language)).filter(({ value }) => !stands(text, value));
			expect(missing, problem.scenario.id).toEqual([]);
			for (const ask of asks) {
				const question = ask.kind === 'decision' ? printing.m.decision.question({ name: problem.drawn.person }) : askText(speech, ask).question(askParts(speech));
				expect(text).toContain(packed(question));
				if (ask.kind === 'number') expect(text).toContain(packed(answerUnit(problem.scenario, ask, language)));
			}
			// Boxes to write into are 28.6 points high, those to tick 9.8 points square.
			expect(page.operators.match(/ 28\.6 re/g) ?? []).toHaveLength(asks.filter(({ kind }) => kind === 'number').length);
			const ticks = asks.reduce((sum, ask) => sum + (ask.kind === 'decision' ? 2 : Number(ask.quantity === 'requiredClearance')), 0);
			expect(page.operators.match(/ 9\.8 9\.8 re/g) ?? []).toHaveLength(ticks);
		}
	});

	it('the key has every right answer, the decision, the verdict, and the clauses that decide', async () => {
		const printing = await aPrinting(SOME, { language });
		const { pages } = readPdf(await printed(printing, 'key', size));
		const text = pages.map(wordsOf).join('');
		for (const page of pages) expect(wordsOf(page)).toContain('K7QM-2XWD-01');
		for (const { problem, asks } of placesOf(printing)) {
			const writer = writerFor(problem.scenario, language);
			const { verdict } = analysisOf(problem);
			for (const ask of asks) {
				const right = ask.kind === 'number' ? rightValue(problem, ask) : undefined;
				const value = ask.kind === 'decision' ? printing.m.verdict.decision[verdict.decision] : right === undefined ? printing.m.absences['outside-label']({ what: '' }) : writer.quantity(ask.quantity, right);
				expect(text, `${problem.scenario.id} ${ask.id}`).toContain(packed(value));
			}
			for (const { citation } of analysisOf(problem).checks) {
				if (citation !== undefined) expect(text).toContain(packed(citation.clause));
			}
		}
	});
});

describe('any sheet', () => {
	it('comes out the same, byte for byte, and its language, title and tags are told', async () => {
		const printing = await aPrinting(['tank-roof'], { language: 'es' });
		const once = await printed(printing, 'sheet');
		expect(Buffer.from(once).equals(Buffer.from(await printed(printing, 'sheet')))).toBe(true);
		const { raw } = readPdf(once);
		const told = ['/Lang (es)', '/Marked true', '/DisplayDocTitle true', 'D:20261125090000Z', '/S /Figure', '/S /H2', '/S /Table'];
		expect(told.filter((one) => !raw.includes(one))).toEqual([]);
	});

	it('copies have problems of their own; those of a common sheet do not', async () => {
		const own = await aPrinting(['bridge-bearing'], { copies: 2 });
		const [one, two, ...rest] = readPdf(await printed(own, 'sheet')).pages;
		expect(rest).toEqual([]);
		expect(two?.runs).toContain('K7QM-2XWD-02');
		const numbers = (page: ReadPage | undefined) => page?.runs.filter((run) => /^\d+\.\d+ m$/.test(run));
		expect(numbers(one)).not.toEqual(numbers(two));
		const common = await aPrinting(['bridge-bearing'], { alike: true });
		expect(readPdf(await printed(common, 'sheet')).pages).toHaveLength(1);
	});

	it('a name in other letters, of any length, breaks nothing', async () => {
		const printing = await aPrinting(['bridge-bearing'], {}, `جسر ${'Œuvre Łódź '.repeat(30)}${'x'.repeat(200)}`);
		const { pages } = readPdf(await printed(printing, 'sheet', 'letter'));
		expect(pages).toHaveLength(1);
		expect(pages[0]?.runs).toContain('K7QM-2XWD-01');
	});

	it('nothing more is drawn once nobody reads', async () => {
		const printing = await aPrinting(['bridge-bearing'], { copies: 40 });
		let begun = 0;
		function* counted() {
			for (const copy of copiesToPrint(printing, 'key')) {
				begun += 1;
				yield copy;
			}
		}
		const reader = printCopies({ size: 'a4', language: 'en', title: 'Key', at: new Date(printing.sheet.at) }, pageWords(printing), counted()).getReader();
		expect((await reader.read()).done).toBe(false);
		await reader.cancel();
		const before = begun;
		await setTimeout(200);
		expect(begun).toBe(before);
		expect(begun).toBeLessThan(40);
	});

	it('is made while no other one is: the next begins when it is done, has failed, or is not read any more', async () => {
		const printing = await aPrinting(['bridge-bearing', 'silo-weld']);
		const begun: string[] = [];
		const printedAs = (name: string) => {
			const counted = function* <Problem>(problems: Iterable<Problem>) {
				for (const problem of problems) {
					begun.push(name);
					if (name === 'fails') throw new RangeError(name);
					yield problem;
				}
			};
			const copies = [...copiesToPrint(printing, 'sheet')].flatMap((copy) => (copy.kind === 'sheet' ? [{ ...copy, problems: counted(copy.problems) }] : []));
			return new Response(printCopies({ size: 'a4', language: 'en', title: name, at: new Date(0) }, pageWords(printing), copies));
		};
		const [first, fails, left, last] = ['first', 'fails', 'left', 'last'].map(printedAs);
		await left?.body?.cancel();
		await expect(fails?.bytes()).rejects.toThrow('fails');
		for (const one of [last, first]) expect((await one?.bytes())?.length).toBeGreaterThan(10_000);
		expect(begun).toEqual(['first', 'first', 'fails', 'last', 'last']);
	});

	it('a copy that cannot be drawn fails the reading, not the server', async () => {
		const printing = await aPrinting(['bridge-bearing']);
		await expect(printed({ ...printing, scenarios: [] }, 'sheet')).rejects.toThrow(RangeError);
	});

	it('a story too long for a page goes on to the next, and nothing of it is lost', async () => {
		const printing = await aPrinting(['bridge-bearing']);
		const long = Array.from({ length: 6 }, (_, i) => `${i} ${'The crane driver waits and the wind turns. '.repeat(13)}`.trim());
		// A version of its own: draws are remembered by version.
		const content = { ...printing.content, scenarios: printing.content.scenarios.map((one) => ({ ...one, version: 99 })) };
		const scenarios = printing.scenarios.map((one) => ({ ...one, version: 99, words: { ...one.words, en: { ...one.words.en, body: [...one.words.en.body, ...long, ...long] } } }));
		const { pages } = readPdf(await printed({ ...printing, content, scenarios }, 'sheet'));
		expect(pages.length).toBeGreaterThan(1);
		const text = pages.map((page) => packed(page.runs.join(' '))).join('');
		for (const one of long) expect(text.split(packed(one)).length - 1).toBe(2);
		expect(pages.at(-1)?.runs.join(' ')).toContain(`page ${pages.length} of ${pages.length}`);
	});
});
