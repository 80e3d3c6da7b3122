import { describe, expect, it } from 'vitest';
import * as z from 'zod';
import { field, readForm, sameName, tidy, tidyNumber, typedIn } from '#lib/server/people/fields.ts';

function form(entries: Readonly<Record<string, string | Blob>>): FormData {
	const data = new FormData();
	for (const [name, value] of Object.entries(entries)) data.set(name, value);
	return data;
}

describe('a name', () => {
	it.each([
		['  Dario \t Penn\n', 'Dario Penn'],
		['Jose\u0301', 'José'],
		['\u202eoslo\u202c', 'oslo'],
		['a\u0000b', 'ab'],
		// The joiner that Persian and Indic scripts need stays.
		['می\u200cروم', 'می\u200cروم']
	])('%j is kept as %j', (typed, kept) => {
		expect(tidy(typed)).toBe(kept);
	});

	it.each([
		['Dario Penn', 'penn, DARIO', true],
		['José Ángel Ruiz', 'jose angel ruiz', true],
		['O’Brien', "O'Brien", true],
		['نادية روك', 'روك نادية', true],
		['Dario Penn', 'Dario', false],
		['Dario Penn', 'Dario Penna', false],
		['…', '?', false]
	])('%s and %s are one name: %s', (one, other, same) => {
		expect(sameName(one, other)).toBe(same);
		expect(sameName(other, one)).toBe(same);
	});
});

describe('a personal number', () => {
	it.each([
		[' w - 12 ', 'W-12'],
		['ａ１２', 'A12'],
		['07\u200e', '07']
	])('%j is %j', (typed, kept) => {
		expect(tidyNumber(typed)).toBe(kept);
	});
});

describe('a form', () => {
	const schema = z.object({ name: field.name, number: field.number, code: field.code });

	it('is read field by field, each as it is kept', () => {
		expect(readForm(form({ name: ' Dario  Penn', number: 'w 1', code: 'x66c-hfgi', more: 'is left out' }), schema)).toEqual({
			kind: 'read',
			value: { name: 'Dario Penn', number: 'W1', code: 'X66CHFG1' }
		});
	});

	it.each([
		[{ name: '', number: '1', code: 'A' }, { name: 'missing' }],
		[{ name: ' \u202e ', number: '1', code: 'A' }, { name: 'missing' }],
		[{ name: '…', number: '1', code: 'A' }, { name: 'not-a-name' }],
		[{ name: 'x'.repeat(201), number: '1', code: 'A' }, { name: 'too-long' }],
		[{ name: 'x'.repeat(1_000_000), number: '1', code: 'A' }, { name: 'too-long' }],
		[{ name: 'Dario', number: "1' or 1=1", code: 'A' }, { number: 'not-a-number' }],
		[{ name: 'Dario', number: '1'.repeat(41), code: 'A' }, { number: 'too-long' }],
		[{}, { name: 'missing', number: 'missing', code: 'missing' }],
		[{ name: new Blob(['x']), number: '1', code: '--' }, { name: 'missing', code: 'missing' }]
	])('tells for each field what is wrong: %#', (entries: Record<string, string | Blob>, problems) => {
		expect(readForm(form(entries), schema)).toEqual({ kind: 'refused', problems });
	});

	it('comes back as it was typed, but not endlessly', () => {
		const typed = typedIn(form({ name: '  Dario', number: 'x'.repeat(5000), other: 'no' }), ['name', 'number', 'code']);
		expect(typed).toEqual({ name: '  Dario', number: 'x'.repeat(800), code: '' });
	});
});
