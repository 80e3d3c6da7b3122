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
