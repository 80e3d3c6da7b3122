import { describe, expect, it } from 'vitest';
import { inspect, type FindingCode, type Inspection } from '#lib/scenario/index.ts';
import { scenarioWith, type Document } from './document.ts';

const DRAWS = 60;

function inspected(change?: (document: Document) => object | undefined): Inspection {
	return inspect(scenarioWith(change), { draws: DRAWS });
}

/** The findings of one code, as severity and path. */
function found(inspection: Inspection, code: FindingCode): string[] {
	return inspection.findings.filter((one) => one.code === code).map((one) => `${one.severity} ${one.path.join('.')}`);
}

/** A draw of the document put in the place of the one that sets the same given. */
function redrawn(document: Document, draw: { sets: string[] }): object {
	return { ...document, draws: document.draws.map((one) => ('sets' in one && one.sets?.[0] === draw.sets[0] ? draw : one)) };
}

describe('an inspection', () => {
	it('of a sound scenario finds nothing', () => {
		expect(inspected().findings).toEqual([]);
	});

	it('is the same each time, and another one from other seeds', () => {
		const scenario = scenarioWith();
		expect(inspect(scenario, { draws: 30 })).toEqual(inspect(scenario, { draws: 30 }));
		expect(inspect(scenario, { draws: 30, firstSeed: 1000 }).answers).not.toEqual(inspect(scenario, { draws: 30 }).answers);
	});

	it('counts draws, tries, results and failed topics', () => {
		const of = inspected();
		expect(of).toMatchObject({ scenario: { id: 'test-shelf', version: 1 }, draws: DRAWS, firstSeed: 0, drawn: DRAWS });
		expect(of.results.passes + of.results.fails).toBe(DRAWS);
		expect(of.failedBy).toEqual({ clearance: of.results.fails });
		const turnedDown = Object.values(of.turnedDown).reduce((sum, count) => sum + count, 0);
		expect(turnedDown).toBe(Math.round(DRAWS * (of.meanTries - 1)));
		expect(of.mostTries).toBeGreaterThanOrEqual(of.meanTries);
	});

	it('gives the spread of each answer in the unit asked for, and the slips that act on it', () => {
		const [fall, required] = inspected().answers;
		expect(fall?.ask).toBe('free-fall');
		expect(fall?.unit).toBe('m');
		expect(fall?.values).toEqual(fall?.values?.toSorted((a, b) => a - b));
		expect(fall?.values?.[0]).toBeGreaterThanOrEqual(0.4 - 1e-9);
		expect(fall?.slips['lanyard-for-free-fall']).toBe(DRAWS);
		expect(fall?.slips['margin-left-out']).toBeUndefined();
		expect(required?.slips['margin-left-out']).toBe(DRAWS);
	});

	it('refuses to inspect without drawing', () => {
		expect(() => inspect(scenarioWith(), { draws: 0 })).toThrow(RangeError);
		expect(() => inspect(scenarioWith(), { draws: 1.5 })).toThrow(RangeError);
	});
});

describe('an inspection finds', () => {
	it('a scenario that no seed can draw', () => {
		const of = inspected((document) => ({
			...document,
			constraints: [{ of: 'freeFall', atLeast: { value: 9, unit: 'm' } }]
		}));
		expect(of.drawn).toBe(0);
		expect(found(of, 'seldom-drawn')).toEqual(['fault constraints.0']);
		expect(found(of, 'many-tries')).toEqual(['warning constraints.0']);
		expect(of.turnedDown.constraint).toBeGreaterThan(0);
		expect(of.answers.map((answer) => answer.values)).toEqual([undefined, undefined]);
	});

	it('an aim that never comes about, and draws that nearly all pass', () => {
		const of = inspected((document) => ({ ...document, aims: [{ fails: 'nothing', weight: 99 }, { fails: 'rescue', weight: 1 }] }));
		expect(found(of, 'aim-not-met')).toEqual(['fault aims.1']);
		expect(found(of, 'lopsided')).toEqual(['fault aims.0']);
	});

	it('an ask for a number that the plans do not have', () => {
		const of = inspected((document) => ({
			...document,
			aims: [{ fails: 'reach', weight: 1 }],
			constraints: [],
			draws: [
				{ sets: ['anchorageHeight'], from: 3.6, to: 4.6, step: 0.01, unit: 'm' },
				{ sets: ['lowerLevelDepth'], from: 6, to: 9, step: 0.01, unit: 'm' }
			],
			asks: [
				{ id: 'distance', cell: 'swing-and-path', kind: 'number', quantity: 'reachDistance', precision: { value: 0.01, unit: 'm' } },
				{ id: 'needed', cell: 'required-clearance', kind: 'number', quantity: 'requiredClearance', datum: 'anchorage', precision: { value: 0.01, unit: 'm' } }
			]
		}));
		expect(found(of, 'ask-without-value')).toEqual(['fault draws.0']);
		const finding = of.findings.find((one) => one.code === 'ask-without-value');
		expect(finding?.detail).toEqual({ which: 'not-rigged', ask: 'needed', given: '' });
		expect(finding?.also).toContainEqual(['asks', 1]);
	});

	it('answers that hardly differ', () => {
		const of = inspected((document) => ({
			...document,
			aims: [{ fails: 'nothing', weight: 1 }],
			draws: [{ sets: ['lowerLevelDepth'], from: 7, to: 9, step: 0.01, unit: 'm' }]
		}));
		expect(found(of, 'narrow-answers')).toEqual(['warning asks.0', 'warning asks.1']);
	});

	it('slips that fall together, and pairs declared equal that are not', () => {
		const of = inspected((document) => ({
			...document,
			// Slide and elongation alike: leaving out either gives one number.
			draws: [
				...document.draws.filter((one) => !('sets' in one && ['elongation', 'dRingSlide'].includes(one.sets?.[0] ?? ''))),
				{ sets: ['elongation', 'dRingSlide'], from: 0.6, to: 0.9, step: 0.05, unit: 'm' }
			],
			equalSlips: [['margin-left-out', 'body-from-surface']]
		}));
		expect(of.alike).toContainEqual({ ask: 'required', slips: ['elongation-left-out', 'stretch-left-out'], share: 1, tries: DRAWS });
		expect(found(of, 'slips-alike')).toContain('fault draws.8');
		expect(found(of, 'declared-but-not-equal')).toEqual(['fault equalSlips.0']);
	});

	it('nothing against a pair that is declared equal and is', () => {
		const of = inspected((document) => ({
			...document,
			draws: [
				...document.draws.filter((one) => !('sets' in one && ['elongation', 'dRingSlide'].includes(one.sets?.[0] ?? ''))),
				{ sets: ['elongation', 'dRingSlide'], from: 0.6, to: 0.9, step: 0.05, unit: 'm' }
			],
			equalSlips: [['stretch-left-out', 'elongation-left-out']]
		}));
		expect(found(of, 'declared-but-not-equal')).toEqual([]);
		const pairs = of.findings.filter((one) => one.code === 'slips-alike').map((one) => one.detail['which']);
		expect(pairs).not.toContain('elongation-left-out stretch-left-out');
	});

	it.each([
		['d-ring-off-body', { sets: ['stature'], from: 2.2, to: 2.25, step: 0.01, unit: 'm' }],
		['obstacle-above-surface', { sets: ['obstacleTop_stack'], from: 9, to: 9.5, step: 0.01, unit: 'm' }],
		['stated-above-elongation', { sets: ['statedDeceleration'], from: 2, to: 2.5, step: 0.01, unit: 'm' }],
		['average-above-peak', { sets: ['averageForce'], from: 7, to: 8, step: 0.1, unit: 'kN' }],
		['conditioned-below-dry', { sets: ['conditionedForce'], from: 4, to: 5, step: 0.1, unit: 'kN' }]
	])('a site that nobody could build: %s', (which, draw) => {
		const of = inspected((document) => ({
			...redrawn(document, draw),
			...(document.draws.some((one) => 'sets' in one && one.sets?.[0] === draw.sets[0]) ? {} : { draws: [...document.draws, draw] }),
			aims: [{ fails: which === 'obstacle-above-surface' ? 'clearance' : 'nothing', weight: 1 }],
			constraints: [],
			asks: document.asks.slice(0, 1)
		}));
		const sites = of.findings.filter((one) => one.code === 'impossible-site');
		expect(sites.map((one) => one.detail['which'])).toEqual([which]);
		expect(sites[0]?.seed).toBeTypeOf('number');
	});

	it('a drawn fact that no sentence tells, in each language', () => {
		const of = inspected((document) => ({ ...document, draws: [...document.draws, { fact: 'rescue', among: ['arranged', 'unknown'] }] }));
		expect(found(of, 'fact-untold')).toEqual([
			'fault words.en.facts.rescue.arranged',
			'fault words.en.facts.rescue.unknown',
			'fault words.es.facts.rescue.arranged',
			'fault words.es.facts.rescue.unknown'
		]);
	});

	it('sentences that are too long, and words that are hard', () => {
		const long = `Notwithstanding considerable administrative complications, ${'interdependent organisational responsibilities '.repeat(9)}continue.`;
		const of = inspected((document) => {
			document.words.en.lead = long;
			document.words.en.body = [long];
			return undefined;
		});
		expect(found(of, 'long-sentence')).toEqual(['warning words.en.lead', 'warning words.en.body.0']);
		expect(found(of, 'long-sentences')).toEqual(['fault words.en.lead']);
		expect(found(of, 'hard-words')).toEqual(['warning words.en.lead']);
		expect(of.reading.en?.longest.words).toBeGreaterThan(20);
		expect(of.reading.es?.longest.words).toBeLessThanOrEqual(20);
	});
});

describe('the reading measures', () => {
	/** Fixed words, no facts. */
	function reading(language: 'en' | 'es', text: string) {
		return inspected((document) => ({
			...document,
			draws: document.draws.filter((one) => !('fact' in one)),
			words: { ...document.words, [language]: { ...document.words[language], lead: text, body: [], facts: {} } }
		})).reading[language];
	}

	it('count words and sentences, a slot as one word', () => {
		expect(reading('en', "{name} ties off. The rail is two metres high! Isn't it?")).toMatchObject({ sentences: 3, words: 11 });
	});

	it('give the grade of Kincaid et al. 1975 (formula from memory)', () => {
		// Ten words of one syllable in two sentences: 0.39 × 5 + 11.8 × 1 − 15.59.
		expect(reading('en', 'The rope is on the beam. It is too long.')?.measure).toBeCloseTo(0.39 * 5 + 11.8 - 15.59, 9);
	});

	it('give the index of Fernández Huerta 1959 (formula from memory)', () => {
		// Cua-dri-lla, po-ne, la, cuer-da, en, el, pi-so: 3 + 2 + 1 + 2 + 1 + 1 + 2 syllables.
		expect(reading('es', 'Cuadrilla pone la cuerda en el piso.')?.measure).toBeCloseTo(206.84 - (60 * 12) / 7 - 1.02 * 7, 9);
	});

	it('count hiatus and silent u in Spanish', () => {
		// Ca-í-da (3), que (1), guí-a (2), a-e-re-o (4).
		expect(reading('es', 'Caída que guía aereo.')?.syllablesPerWord).toBe(10 / 4);
	});
});
