/** What the method page explains beside its tables: one part after the other, each a heading and some lines. */

export interface MethodPart {
	readonly heading: string;
	readonly text: readonly string[];
}

export const method = {
	formulas: {
		heading: 'One formula each',
		text: ['Each quantity is one formula. The same formula gives the answer, the steps, the tape and the explanation of an error.']
	} as MethodPart,
	datums: {
		heading: 'Four places to measure from',
		text: ['The same plan has four right clearances, one from each place.', 'What is left over is the same from all four.']
	} as MethodPart,
	customs: {
		heading: 'Two ways to count the body',
		text: ['Sheets count the body in two ways. Each question says which one holds.']
	} as MethodPart,
	marking: {
		heading: 'How answers are marked',
		text: [
			'An answer is right within half of the last place that is asked for.',
			'On the cautious side a little more is let through. On the unsafe side, only what rounding on the way explains.',
			'An answer on the unsafe side is counted apart from the score.',
			'What cannot be read is not an error. You are asked again.'
		]
	} as MethodPart,
	diagnosis: {
		heading: 'How an error is found',
		text: [
			'Each known slip is a change to the formula. All of them are tried on your number.',
			'One clear fit is said to look so. Two slips at once are only a guess.',
			'If several fit alike, you are asked one more question.',
			'If none fits, the working is shown step by step.'
		]
	} as MethodPart,
	limits: {
		heading: 'Where limits come from',
		text: [
			'A limit is shown with its clause, its source and how it is known. The number is the one that the law prints.',
			'Margins and stretch are practice, not law. The maker’s instructions go first.',
			'The label of a device goes before its class.'
		]
	} as MethodPart,
	playback: {
		heading: 'The fall that is shown',
		text: [
			'The picture shows the planning case: the most that the labels state.',
			'The pull in it is an average, for understanding. A check uses the peak.',
			'A real fall can be shorter. Nobody can rely on that.'
		]
	} as MethodPart,
	scope: {
		heading: 'What is left out',
		text: [
			'Only a lanyard on a rigid anchorage is worked out, with an absorber or without.',
			'A line over an edge is refused.',
			'Other systems are refused by name.'
		]
	} as MethodPart
};
