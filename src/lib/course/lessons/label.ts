import type { Lesson } from '../lesson.ts';

const mass = { quantity: 'massAttached' } as const;
const capacity = { quantity: 'lowestCapacity' } as const;

/** The fields of the labels, one by one, and the mass against the lowest capacity. */
export const labelLesson: Lesson = {
	id: 'label',
	cell: 'label-and-mass',
	example: {
		kind: 'plans',
		plans: [{ scenario: 'turbine-nacelle', seed: 3 }],
		steps: [
			{ id: 'story', plan: 0, show: { view: 'story' }, numbers: { tied: { given: 'tetheredMass' } } },
			{
				id: 'lengths',
				plan: 0,
				show: { view: 'labels' },
				numbers: { length: { given: 'lanyardLength' }, opens: { given: 'elongation' } }
			},
			{
				id: 'forces',
				plan: 0,
				show: { view: 'labels' },
				numbers: { force: { given: 'peakForce' }, wet: { given: 'conditionedForce' }, average: { given: 'averageForce' } }
			},
			{
				id: 'range',
				plan: 0,
				show: { view: 'labels' },
				numbers: { least: { given: 'labelMassMin' }, most: { given: 'labelMassMax' }, limit: { given: 'labelFreeFall' } }
			},
			{
				id: 'mass',
				plan: 0,
				show: { view: 'working', of: mass, step: 'all' },
				numbers: { bodyMass: { given: 'bodyMass' }, mass: { quantity: mass }, tied: { given: 'tetheredMass' } }
			},
			{
				id: 'capacity',
				plan: 0,
				show: { view: 'working', of: capacity, step: 'all' },
				numbers: { limit: { quantity: capacity }, most: { given: 'harnessCapacity' } }
			},
			{
				id: 'compare',
				plan: 0,
				show: { view: 'labels' },
				numbers: { mass: { quantity: mass }, limit: { quantity: capacity }, left: { quantity: { quantity: 'capacitySpare' } } }
			}
		]
	},
	numbers: { bodyMass: { given: 'bodyMass' }, mass: { quantity: mass } },
	halfDone: [
		{ kind: 'ask', task: 'stage-grid.mass', ask: 'mass', blank: 'all' },
		{ kind: 'ask', task: 'stage-grid.mass+capacity', ask: 'capacity', blank: 'all' }
	],
	facts: ['mass-limit', 'lanyard-limit', 'harness']
};
