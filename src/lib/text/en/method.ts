/** The method page: formulas, sources, how answers are marked, what is left out. */

export const method = {
	title: 'Method and sources',
	lead: 'Here stands how every number is worked out, and where each limit comes from.',
	contents: 'On this page',
	formulas: {
		heading: 'Formulas',
		text: 'Each quantity is one formula. The same formula gives the answer, the steps, the tape and the explanation of an error.',
		symbol: 'Symbol',
		quantity: 'Quantity',
		formula: 'Formula',
		meaning: 'Meaning',
		source: 'Source',
		givens: 'Given numbers',
		cautious: 'Cautious side',
		cautiousMore: 'more',
		cautiousLess: 'less',
		where: 'When'
	},
	/** For which plans a form of a formula holds. */
	forms: {
		plain: 'straight below the anchorage',
		connector: 'with an anchorage connector',
		offset: 'with an offset along the edge',
		kneeling: 'kneeling',
		raised: 'on a raised standing place',
		'full-height': 'with the full body height',
		conditioned: 'wet or frozen',
		obstacles: 'with things below'
	},
	constants: { g: 'standard gravity' },
	/** Sources of the formulas. */
	sources: {
		definition: '29 CFR 1926.500(b), definition of free fall; then geometry',
		geometry: 'Geometry',
		pythagoras: 'Geometry: Pythagoras',
		mechanics: 'Mechanics, without drag',
		work: 'Work of a constant average force; CSA Z259.16 and ANSI Z359.6 use it (from memory)',
		label: 'Read off the label',
		sum: 'Sum of all that hangs on the harness',
		least: 'The weakest part decides'
	},
	datums: {
		heading: 'Four places to measure from',
		text: 'The same plan has four right clearances, one from each place. What is left over is the same from all four.'
	},
	customs: { heading: 'Two ways to count the body', text: 'Sheets count the body in two ways. Each question says which one holds.' },
	caution: { heading: 'What this is not' },
	marking: {
		heading: 'How answers are marked',
		text: [
			'An answer is right within half of the last place that is asked for.',
			'On the cautious side a little more is let through. On the unsafe side, only what rounding on the way explains.',
			'An answer on the unsafe side is counted apart from the score.',
			'What cannot be read is not an error. You are asked again.'
		]
	},
	diagnosis: {
		heading: 'How an error is found',
		text: [
			'Each known slip is a change to the formula. All of them are tried on your number.',
			'One clear fit is said to look so. Two slips at once are only a guess.',
			'If several fit alike, you are asked one more question.',
			'If none fits, the working is shown step by step.'
		],
		table: 'All slips',
		slip: 'Slip',
		side: 'Errs to',
		sides: { unsafe: 'the unsafe side', cautious: 'the cautious side', either: 'either side' },
		often: 'How often',
		tiers: { common: 'common', occasional: 'now and then', rare: 'rare' },
		oftenGuess: 'How often a slip happens is the author’s guess until there is data.'
	},
	checks: { heading: 'Checks of geometry and labels', text: 'These hold whatever the law.' },
	rules: {
		heading: 'Rule tables',
		text: 'A limit is shown with its clause, its source and how it is known. The number is the one that the law prints.',
		about: 'About',
		limit: 'Limit',
		clause: 'Clause',
		source: 'Source',
		known: 'How known'
	},
	practice: {
		heading: 'Margins and stretch',
		text: 'These are practice, not law. The maker’s instructions go first.',
		value: 'Value'
	},
	classes: { heading: 'Classes of energy absorbers', text: 'The label of the device goes before its class.' },
	fields: { heading: 'What labels and instructions state', text: 'The fields, and the text that asks for each.' },
	marksHeading: 'How a number is known',
	playback: {
		heading: 'The fall that is shown',
		text: [
			'The picture shows the planning case: the most that the labels state.',
			'The pull in it is an average, for understanding. A check uses the peak.',
			'A real fall can be shorter. Nobody can rely on that.'
		]
	},
	scope: {
		heading: 'What is left out',
		text: [
			'Only a lanyard on a rigid anchorage is worked out, with an absorber or without.',
			'A line over an edge is refused.',
			'Other systems are refused by name.'
		]
	}
};
