import { describe, expect, it } from 'vitest';
import { refusals } from './document.ts';

describe('a scenario document', () => {
	it('is taken as it is', () => {
		expect(refusals(() => undefined)).toEqual({});
	});

	it('may only tell facts that its plan has, in states that they can be in', () => {
		const found = refusals((document) => ({
			...document,
			words: {
				...document.words,
				en: {
					...document.words.en,
					facts: {
						weather: { fine: 'It is fine.' },
						'obstacle:crane': { there: 'A crane stands below.' },
						obstacle: { there: 'Something stands below.' },
						'rescue:now': { arranged: 'A rescue is arranged.' },
						rescue: { perhaps: 'Perhaps.' }
					}
				}
			}
		}));
		expect(Object.keys(found)).toEqual([
			'words.en.facts.weather',
			'words.en.facts.obstacle:crane',
			'words.en.facts.obstacle',
			'words.en.facts.rescue:now',
			'words.en.facts.rescue.perhaps'
		]);
		expect(found['words.en.facts.rescue.perhaps']).toContain('arranged, not-arranged, unknown');
	});

	it('may only have slots for the name and for givens, wherever the slot stands', () => {
		const found = refusals((document) => {
			document.words.en.title = 'Pier of {name} at {anchorageHeight}';
			document.words.en.lead = 'See {obstacleLine}.';
			document.words.es.body[0] = '{nombre}';
			document.words.es.facts['obstacle:stack'].there = 'Hay {}.';
			return undefined;
		});
		expect(Object.keys(found)).toEqual(['words.en.lead', 'words.es.body.0', 'words.es.facts.obstacle:stack.there']);
	});

	it('may let a range count only from a given that a draw before it sets', () => {
		const found = refusals((document) => {
			document.draws.reverse();
			return undefined;
		});
		expect(Object.keys(found)).toEqual(['draws.6.above', 'draws.8.above']);
		expect(found['draws.8.above']).toContain('earlier draw');
	});

	it('names every obstacle and every ask that it speaks of', () => {
		expect(
			refusals((document) => ({
				...document,
				words: { ...document.words, es: { ...document.words.es, obstacles: {} } },
				asks: [...document.asks, { id: 'free-fall', cell: 'decisions', kind: 'decision', with: ['nothing'] }]
			}))
		).toMatchObject({
			'words.es.obstacles.stack': expect.stringContaining('name'),
			'asks.3.id': expect.stringContaining('twice'),
			'asks.3.with': expect.stringContaining('nothing')
		});
	});

	it('refuses ranges turned round, too fine, or with an unknown unit or given', () => {
		const found = refusals((document) => ({
			...document,
			draws: [
				{ sets: ['dRingHeight'], from: 1.5, to: 1.4, step: 0.01, unit: 'm' },
				{ sets: ['stature'], from: 1, to: 2, step: 0.00001, unit: 'm' },
				{ sets: ['stature'], from: 1, to: 2, step: 0.01, unit: 'cubit' },
				{ sets: ['girth'], from: 1, to: 2, step: 0.01, unit: 'm' }
			]
		}));
		expect(Object.keys(found).map((path) => path.split('.').slice(0, 2).join('.'))).toEqual(['draws.0', 'draws.1', 'draws.2', 'draws.3']);
	});
});
