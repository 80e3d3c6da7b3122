import { describe, expect, it } from 'vitest';
import { refusals } from './document.ts';
import shelf from './shelf.json' with { type: 'json' };

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

	it('refuses words that steer a screen, and words with nothing to read', () => {
		const found = refusals((document) => {
			document.people[0] = 'Ada\u202Eadnil';
			document.people[1] = ' \u200B ';
			document.words.en.title = 'Shelf\u0000';
			document.words.en.lead = '{name} ties off.\nThen falls.';
			document.words.es.body[0] = '\u2067{name}';
			document.words.es.places.surface = '\u00a0';
			return undefined;
		});
		expect(Object.keys(found)).toEqual(['people.0', 'people.1', 'words.en.title', 'words.en.lead', 'words.es.body.0', 'words.es.places.surface']);
		expect(found['people.0']).toMatch(/^has .*; write /);
		expect(found['people.1']).toBe('has nothing to read; write a name');
	});

	it('takes names and words of any script, and what looks like code, as text', () => {
		expect(
			refusals((document) => {
				document.people = ['Nguyễn Thị', 'محمد', '田中', "O'Brien-Łuk"];
				document.words.en.lead = '{name} <script>alert(1)</script> & "ties" off.';
				return undefined;
			})
		).toEqual({});
	});

	it('holds every number that a draw or a decoy can take against what such a thing can be', () => {
		const ends = refusals((document) => ({
			...document,
			draws: [
				{ sets: ['dRingHeight'], from: 1.3, to: 1.9, step: 0.01, unit: 'm' },
				{ sets: ['stature'], above: 'dRingHeight', from: 0.1, to: 0.9, step: 0.01, unit: 'm' },
				{ sets: ['lanyardLength'], among: [{ value: 5, unit: 'ft' }, { value: 50, unit: 'ft' }] },
				{ sets: ['lowerLevelDepth'], from: -1, to: 6, step: 0.01, unit: 'm' }
			],
			decoys: [
				{ given: 'railHeight', value: { value: 300, unit: 'm' } },
				{ given: 'slackShown', from: 0.4, to: 40, step: 0.01, unit: 'm' }
			]
		}));
		expect(Object.keys(ends)).toEqual(['draws.1.to', 'draws.2.among.1.value', 'draws.3.from', 'decoys.0.value.value', 'decoys.1.to']);
		expect(ends['draws.1.to']).toBe('makes stature more or less than it can be; give values that keep it from 1.2 m to 2.3 m');
		expect(ends['draws.2.among.1.value']).toContain('ft');
		const turned = refusals((document) => ({ ...document, decoys: [{ given: 'slackShown', from: 0.4, to: 0.3, step: 0.01, unit: 'm' }] }));
		expect(Object.keys(turned)).toEqual(['decoys.0']);
	});

	it('refuses what no plan of its base can have, at the field', () => {
		expect(refusals((document) => ({ ...document, draws: [...document.draws, { fact: 'posture', among: ['standing', 'kneeling'] }] }))['draws.10.among.1']).toContain('dRingNow');
		const { absorber, harness, ...base } = structuredClone(shelf).base;
		const bare = refusals((document) => ({
			...document,
			base: { ...base, absorber: { elongation: absorber.elongation, peakForce: absorber.peakForce }, harness: { slide: harness.slide } },
			asks: [{ id: 'capacity', cell: 'label-and-mass', kind: 'number', quantity: 'lowestCapacity', precision: { value: 1, unit: 'kg' } }]
		}));
		expect(bare['asks.0.quantity']).toContain('capacity');
		const bounds = ['freeFall@surface', 'requiredClearance@moon', 'speedAtObstacle', 'speedAtObstacle@crane', 'obstacleTop_crane', 'requiredClearance@anchorage'];
		const constrained = refusals((document) => ({ ...document, constraints: bounds.map((of) => ({ of, atLeast: { value: 1, unit: of.startsWith('speed') ? 'm/s' : 'm' } })) }));
		expect(Object.keys(constrained)).toEqual(['constraints.0.of', 'constraints.1.of', 'constraints.2.of', 'constraints.3.of', 'constraints.4.of']);
	});

	it('refuses more kinds of plans than can be prepared', () => {
		const found = refusals((document) => ({
			...document,
			draws: [
				...document.draws.filter((one) => !('fact' in one)),
				...['clothingMass', 'equipmentMass', 'toolsMass', 'tetheredMass'].map((id) => ({ sets: [id], from: 0, to: 5, step: 1, unit: 'kg' })),
				...['standingHeight', 'harnessStretch', 'dRingSlide'].map((id) => ({ sets: [id], from: 0, to: 0.3, step: 0.1, unit: 'm' })),
				{ fact: 'condition', among: ['dry', 'wet-or-frozen', 'dry'] }
			]
		}));
		expect(Object.keys(found)).toEqual(['draws.16']);
		expect(found['draws.16']).toContain('kinds of plans');
	});
});
