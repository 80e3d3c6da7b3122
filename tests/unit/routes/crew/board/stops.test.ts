import { describe, expect, test } from 'vitest';
import { deedOf, type Pressed } from '../../../../../src/routes/crew/board/keys.ts';
import { sentences } from '../../../../../src/routes/crew/board/model/anonymous.ts';
import { beside, placeOf, stopsOf, type Stop } from '../../../../../src/routes/crew/board/model/stops.ts';

describe('what the board shows one after the other', () => {
	const stops = stopsOf({ steps: 2, called: 1, refused: false });

	test('is the site, the question, each step, the answer, each number called, the fall', () => {
		expect(stops).toEqual([{ kind: 'problem' }, { kind: 'class' }, { kind: 'step', n: 1 }, { kind: 'step', n: 2 }, { kind: 'answer' }, { kind: 'called', at: 0 }, { kind: 'fall' }]);
	});

	test('is gone through in both ways, and ends at its ends', () => {
		let stop: Stop = { kind: 'problem' };
		for (const next of stops.slice(1)) {
			stop = beside(stops, stop, 1);
			expect(stop).toEqual(next);
		}
		expect(beside(stops, stop, 1)).toEqual({ kind: 'fall' });
		for (const before of [...stops].reverse().slice(1)) {
			stop = beside(stops, stop, -1);
			expect(stop).toEqual(before);
		}
		expect(beside(stops, stop, -1)).toEqual({ kind: 'problem' });
	});

	test('begins anew where a stop is gone: a number that was taken off', () => {
		expect(placeOf(stops, { kind: 'called', at: 4 })).toBe(0);
	});

	test('of a refused plan is the site alone', () => {
		expect(stopsOf({ steps: 5, called: 2, refused: true })).toEqual([{ kind: 'problem' }]);
	});
});

describe('a key of the board', () => {
	const plain: Pressed = { key: 'n', altKey: false, ctrlKey: false, metaKey: false, defaultPrevented: false, tag: 'body', role: null };

	test.each([
		['ArrowRight', 'next'],
		['PageDown', 'next'],
		['ArrowLeft', 'back'],
		['PageUp', 'back'],
		['n', 'problem'],
		['N', 'problem'],
		['p', 'play'],
		['f', 'full']
	] as const)('%s asks for: %s', (key, deed) => {
		expect(deedOf({ ...plain, key })).toBe(deed);
	});

	test.each<[string, Partial<Pressed>]>([
		['in a field', { tag: 'input' }],
		['in a list', { tag: 'select' }],
		['on a slider', { key: 'ArrowRight', role: 'slider' }],
		['with Ctrl', { ctrlKey: true }],
		['with Alt: the browser goes back', { key: 'ArrowLeft', altKey: true }],
		['with the command key', { metaKey: true }],
		['that somebody else took', { defaultPrevented: true }],
		['that means nothing', { key: 'q' }]
	])('is none %s', (_where, pressed) => {
		expect(deedOf({ ...plain, ...pressed })).toBeUndefined();
	});
});

describe('a sentence that begins with the word in place of a name', () => {
	test.each([
		['the worker kneels. the worker stands? the worker falls.', 'The worker kneels. The worker stands? The worker falls.'],
		['«la persona cae. ¿la persona cuelga?', '«La persona cae. ¿La persona cuelga?'],
		['Not arrested: the worker’s feet meet it after 0.8 s.', 'Not arrested: the worker’s feet meet it after 0.8 s.'],
		['2.10 m of it', '2.10 m of it']
	])('%s', (text, told) => {
		expect(sentences(text)).toBe(told);
	});
});
