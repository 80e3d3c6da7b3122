/** A plan that uses every field of the schema at once, each with a value that differs from its default. */
export const FULL_PLAN = {
	system: 'lanyard',
	rules: 'eu',
	practice: 'europe',
	worker: {
		stature: '1.83 m',
		dRingHeight: '1.48 m',
		posture: 'kneeling',
		dRingNow: '0.98 m',
		standingHeight: '0.4 m',
		mass: { body: '84 kg', clothing: '3 kg', equipment: '4 kg', tools: '6 kg', tethered: '5 kg' }
	},
	lanyard: { length: '1.9 m', capacity: '140 kg' },
	absorber: {
		class: 'en-355',
		elongation: '1.2 m',
		peakForce: '6 kN',
		conditionedForce: '6.5 kN',
		averageForce: '3 kN',
		massMin: '60 kg',
		massMax: '140 kg',
		freeFallMax: '4 m',
		statedDeceleration: '1.1 m',
		condition: 'wet-or-frozen',
		testedForLongerFall: 'yes'
	},
	harness: { slide: '0.3 m', stretch: '0.1 m', capacity: '130 kg' },
	connectors: { compatible: 'yes', capacity: '150 kg' },
	anchorage: {
		height: '2.1 m',
		strength: '15 kN',
		persons: 2,
		engineered: 'yes',
		connector: { length: '0.6 m', lies: 'slack' }
	},
	offset: { distance: '0.5 m', direction: 'along-edge' },
	lineMeetsEdge: false,
	margin: '1 m',
	bodyCustom: 'full-height',
	below: {
		depth: '9 m',
		obstacles: [{ id: 'panels', top: '1.1 m', from: '-0.7 m', to: '0.6 m', present: 'sometimes', there: false }]
	},
	rescue: 'arranged'
} as const;

const WORDS = {
	title: 'Silo 3',
	lead: '{name} kneels at the hatch, {anchorageHeight} below the beam.',
	body: ['The panels can reach {obstacleTop_panels}.'],
	places: { surface: 'Silo top', lowerLevel: 'Apron', anchorage: 'beam', standing: 'step', otherFloor: 'gallery' },
	obstacles: { panels: 'stacked panels' },
	facts: { rescue: { arranged: 'A rescue is arranged.', 'not-arranged': 'No rescue is arranged.', unknown: 'Nobody knows of a rescue.' } }
};

/** A scenario that uses every field of the schema and every form of its unions. */
export const FULL_SCENARIO = {
	id: 'test-silo',
	version: 3,
	backdrop: 'silo-top',
	units: 'metric',
	people: ['Delphine', 'Anselm'],
	words: { en: WORDS, es: WORDS },
	base: FULL_PLAN,
	draws: [
		{ sets: ['dRingHeight'], from: 1.4, to: 1.5, step: 0.01, unit: 'm' },
		{ sets: ['stature'], above: 'dRingHeight', from: 0.3, to: 0.36, step: 0.01, unit: 'm' },
		{ sets: ['bodyMass'], among: [{ value: 80, unit: 'kg' }, { value: 90, unit: 'kg' }] },
		{ fact: 'rescue', among: ['arranged', 'not-arranged'] },
		{ fact: 'connectors', among: ['yes', 'no'] },
		{ fact: 'condition', among: ['dry'] },
		{ fact: 'posture', among: ['kneeling'] },
		{ fact: 'persons', among: [1, 2] },
		{ fact: 'obstacle', id: 'panels', among: ['there', 'none'] }
	],
	decoys: [
		{ given: 'slackShown', value: { value: 0.5, unit: 'm' } },
		{ given: 'railHeight', from: 0.9, to: 1.1, step: 0.01, unit: 'm' },
		{ given: 'freeFallLimit', limit: 'eu.lanyard-length' },
		{ given: 'otherMargin', practice: 'canada' },
		{ given: 'otherElongation', class: 'csa-e6' }
	],
	constraints: [
		{ of: 'freeFall', atLeast: { value: 0.3, unit: 'm' }, atMost: { value: 3, unit: 'm' } },
		{ of: 'availableClearance@surface', atLeast: { value: 2.2, unit: 'm' } }
	],
	aims: [
		{ fails: 'nothing', weight: 4 },
		{ fails: 'clearance', weight: 3 }
	],
	equalSlips: [['offset-ignored', 'margin-left-out']],
	asks: [
		{ id: 'free-fall', cell: 'free-fall', kind: 'number', quantity: 'freeFall', precision: { value: 0.01, unit: 'm' } },
		{ id: 'required', cell: 'required-clearance', kind: 'number', quantity: 'requiredClearance', datum: 'd-ring', precision: { value: 0.01, unit: 'm' } },
		{ id: 'decision', cell: 'decisions', kind: 'decision', with: ['free-fall', 'required'] }
	],
	difficulty: 'hard',
	drivers: { steps: 6, decoys: 2, unitChange: false, signChange: false }
} as const;
