/** What reading and parsing a document refuse, each by its field with what is wrong and what would be right. */
import { describe, expect, it } from 'vitest';
import { shippedDocument } from '#lib/course/shipped.ts';
import type { InputProblem } from '#lib/server/index.ts';
import { LONGEST_DOCUMENT, named, readDocument, type JsonObject } from '#lib/server/scenarios/document.ts';
import { parseDocument } from '#lib/server/scenarios/parse.ts';
import { withValue, type Path } from '../../../support/mutations.ts';

const GOOD = shippedDocument('bridge-bearing') ?? {};

function problemsOf(source: string | Uint8Array): readonly InputProblem[] {
	const read = readDocument(source);
	if (read.kind === 'refused') return read.problems;
	const parsed = parseDocument(read.value, 'own-aaaaaaaaaa', 1);
	return parsed.kind === 'refused' ? parsed.problems : [];
}

const bytes = (text: string, encoding: BufferEncoding) => new Uint8Array(Buffer.from(text, encoding));
const deep = (levels: number) => `{"words":${'['.repeat(levels)}${']'.repeat(levels)}}`;

describe('a document', () => {
	it('is taken as a text, as bytes, and with a mark of the byte order', () => {
		const text = JSON.stringify(GOOD);
		expect(problemsOf(text)).toEqual([]);
		expect(problemsOf(`\uFEFF${text}`)).toEqual([]);
		expect(problemsOf(bytes(text, 'utf8'))).toEqual([]);
		expect(problemsOf(bytes(`\uFEFF${text}`, 'utf8'))).toEqual([]);
	});

	it.each<[string, string | Uint8Array, string, RegExp]>([
		['nothing', ' \n', 'document', /is empty/],
		['a list', '[1]', 'document', /is a list.*one JSON object/],
		['a number', '7', 'document', /is one value/],
		['null', 'null', 'document', /is one value/],
		['half a document', '{"id": "x",\n  "draws": [', 'document', /is not JSON at line 2, column \d+/],
		['a wrong mark', '{"id": "x"\n"draws": 1}', 'document', /is not JSON at line 2, column 1/],
		['a text of a program', 'alert(1)', 'document', /is not JSON at line 1/],
		['UTF-16', bytes(JSON.stringify(GOOD), 'utf16le'), 'document', /is not in UTF-8/],
		['an old encoding', bytes('{"title":"Cañón"}', 'latin1'), 'document', /is not in UTF-8/],
		['half a sign', '{"title":"\uD83D"}', 'document', /is not in UTF-8/],
		['too much', JSON.stringify({ title: 'x'.repeat(LONGEST_DOCUMENT) }), 'document', /is 655\d\d bytes long.*at most 65536 bytes/],
		['a million draws', JSON.stringify({ ...GOOD, draws: Array.from({ length: 1_000_000 }, () => 0) }), 'document', /bytes long/],
		['a name twice', '{"id":"x","base":{"margin":1,"margin":2}}', 'base.margin', /is there twice/],
		['a name twice in a list', '{"draws":[{"a":1},{"fact":1,"fact":2}]}', 'draws.1.fact', /is there twice/],
		['a name twice, once in signs', '{"id":"x","\\u0069d":"y"}', 'id', /is there twice/],
		['a name of the language', '{"words":{"__proto__":{"title":"x"}}}', 'words.__proto__', /is not known here/],
		['a name of the language in signs', '{"\\u005f_proto__":1}', '__proto__', /is not known here/]
	])('is refused when it is %s', (_, source, field, words) => {
		const [first, ...rest] = problemsOf(source);
		expect(rest).toEqual([]);
		expect(first?.field).toBe(field);
		expect(`${first?.problem} ${first?.remedy}`).toMatch(words);
	});

	it('is refused when it is deeper than any scenario, however deep it is', () => {
		for (const levels of [16, 1000, 30_000]) expect(problemsOf(deep(levels))[0]?.problem, String(levels)).toMatch(/is deeper than 16/);
		expect(readDocument(deep(15)).kind).toBe('read');
	});

	it('may hold braces, brackets, commas and quotes in its texts', () => {
		const text = JSON.stringify(withValue(GOOD, ['words', 'en', 'lead'], 'He said "a, {name}", [b] and \\ so on: {{name}'));
		expect(readDocument(text)).toEqual({ kind: 'read', value: JSON.parse(text) });
	});

	it.each<[Path, unknown, string, RegExp]>([
		[['words', 'en', 'lead'], '<script>fetch("/records")</script>', 'words.en.lead', /holds a tag.*words alone/],
		[['words', 'es', 'body', 0], 'Mire <img src=x onerror=alert(1)>.', 'words.es.body.0', /holds a tag/],
		[['words', 'es', 'facts', 'obstacle:beam', 'there'], '<b>x', 'words.es.facts.obstacle:beam.there', /holds a tag/],
		[['people', 1], 'Ilse\u202Etxt', 'people.1', /turns the direction of text/],
		[['words', 'en', 'title'], 'Pier\u0000', 'words.en.title', /control character/],
		[['words', 'en', 'title'], 'x'.repeat(601), 'words.en.title', /at most 600/],
		[['people', 0], 'x'.repeat(60_000), 'people.0', /at most 40/],
		[['draws'], Array.from({ length: 41 }, () => ({ sets: ['margin'], among: [{ value: 1, unit: 'm' }] })), 'draws', /at most 40/],
		[['draws', 0, 'step'], 1e-9, 'draws.0.step', /coarser/],
		[['colour'], 'red', 'colour', /is not known here.*leave it out/],
		[['base', 'below', 'colour'], 'red', 'base.below.colour', /is not known here/],
		[['constraints', 0, 'atMost'], { value: 0.3, unit: 'm' }, 'constraints.0.atLeast', /is 0.4 m, which is above its own "atMost"/],
		[['constraints', 1], { of: 'freeFall', atMost: { value: 1, unit: 'ft' } }, 'constraints.0.atLeast', /is 0.4 m, which is above "atMost" of constraints.1/]
	])('is refused where %j is %j', (path, value, field, words) => {
		const told = problemsOf(JSON.stringify(withValue(GOOD, path, value)));
		const found = told.find((problem) => problem.field === field);
		expect(`${found?.problem} ${found?.remedy}`, JSON.stringify(told)).toMatch(words);
	});

	it('is refused where a number is greater than any', () => {
		const told = problemsOf(JSON.stringify(GOOD).replace('"to":1.58', '"to":1e999'));
		expect(told.map((problem) => problem.field)).toEqual(['draws.0.to']);
	});

	it('may have constraints that meet in one number', () => {
		expect(problemsOf(JSON.stringify(withValue(GOOD, ['constraints', 0, 'atMost'], { value: 400, unit: 'mm' })))).toEqual([]);
	});

	it('gets the id and version that it has here, in front, whatever it said', () => {
		const document: JsonObject = { backdrop: 'silo-top', version: 'nine', id: { a: 1 } };
		expect(JSON.stringify(named(document, 'own-aaaaaaaaaa', 3))).toBe('{"id":"own-aaaaaaaaaa","version":3,"backdrop":"silo-top"}');
		expect(problemsOf(JSON.stringify({ ...GOOD, id: '../../x', version: 1e300 }))).toEqual([]);
	});

	it('is told at most twenty problems at once', () => {
		const people = Array.from({ length: 20 }, () => '<b>');
		const told = problemsOf(JSON.stringify({ ...GOOD, people, words: { ...(GOOD['words'] as object), en: {} } }));
		expect(told.length).toBeGreaterThan(3);
		expect(problemsOf(JSON.stringify(withValue({ ...GOOD, people }, ['words', 'en', 'title'], '<i>')))).toHaveLength(20);
	});
});
