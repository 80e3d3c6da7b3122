import { describe, expect, test } from 'vitest';
import { append, at, documentText, isBelow, put, readDocument, textAt, type Json } from '../../../../src/routes/crew/scenarios/[scenario]/model/document.ts';

const DOCUMENT: Json = { words: { en: { title: 'Pier' } }, draws: [{ from: 1 }, { from: 2 }], extra: { kept: true } };

describe('a document', () => {
	test('gives what stands at a path, and nothing where nothing does', () => {
		expect(at(DOCUMENT, ['draws', 1, 'from'])).toBe(2);
		expect(at(DOCUMENT, ['draws', 'length'])).toBeUndefined();
		expect(at(DOCUMENT, ['words', 'toString'])).toBeUndefined();
		expect(textAt(DOCUMENT, ['draws', 0, 'from'])).toBe('1');
		expect(textAt(DOCUMENT, ['words', 'es', 'title'])).toBe('');
	});

	test('changes one thing and keeps all others, those it does not know too', () => {
		const changed = put(DOCUMENT, ['draws', 0, 'from'], 5);
		expect(changed).toEqual({ words: { en: { title: 'Pier' } }, draws: [{ from: 5 }, { from: 2 }], extra: { kept: true } });
		expect(at(changed, ['extra'])).toBe(at(DOCUMENT, ['extra']));
		expect(at(DOCUMENT, ['draws', 0, 'from'])).toBe(1);
	});

	test('stays the same object where nothing changes', () => {
		expect(put(DOCUMENT, ['draws', 1, 'from'], 2)).toBe(DOCUMENT);
		expect(put(DOCUMENT, ['words', 'fr'], undefined)).toBe(DOCUMENT);
	});

	test('makes what a path needs, lists for numbers', () => {
		expect(put({}, ['words', 'es', 'body', 0], 'Uno.')).toEqual({ words: { es: { body: ['Uno.'] } } });
		expect(put({ base: 'wrong' }, ['base', 'rules'], 'eu')).toEqual({ base: { rules: 'eu' } });
		expect(append({}, ['decoys'], 1)).toEqual({ decoys: [1] });
	});

	test('takes a field or an entry out', () => {
		expect(put(DOCUMENT, ['draws', 0], undefined)).toEqual({ words: { en: { title: 'Pier' } }, draws: [{ from: 2 }], extra: { kept: true } });
		expect(put(DOCUMENT, ['extra'], undefined)).toEqual({ words: { en: { title: 'Pier' } }, draws: [{ from: 1 }, { from: 2 }] });
	});

	test('knows what lies below a path', () => {
		expect(isBelow(['draws', 1, 'from'], ['draws', 1])).toBe(true);
		expect(isBelow(['draws', 11], ['draws', 1])).toBe(false);
		expect(isBelow([], ['draws'])).toBe(false);
	});

	test('is read from text as it was written, and from nothing that is no object', () => {
		expect(readDocument(documentText(DOCUMENT))).toEqual(DOCUMENT);
		for (const text of ['', '[1]', 'null', '{"a":', '"a"']) expect(readDocument(text), text).toBeUndefined();
	});
});
