import type { Lesson } from '../lesson.ts';

const arrestForce = { quantity: 'arrestForce' } as const;
const bodyWeights = { quantity: 'bodyWeights' } as const;

/** A heavy worker and a light one on the same kind of label, and one label used wet. */
export const forceLesson: Lesson = {
	id: 'force',
	cell: 'force-and-limits',
	example: {
		kind: 'plans',
		plans: [
			{ scenario: 'turbine-nacelle', seed: 15 },
			{ scenario: 'turbine-nacelle', seed: 23 },
			{ scenario: 'turbine-nacelle', seed: 1 }
		],
		steps: [
			{
				id: 'speed',
				plan: 0,
				show: { view: 'fall', at: 'taut' },
				numbers: { falls: { quantity: { quantity: 'freeFall' } }, speed: { speed: 'taut' } }
			},
			{
				id: 'heavy',
				plan: 0,
				show: { view: 'labels' },
				numbers: { mass: { quantity: { quantity: 'massAttached' } }, force: { quantity: arrestForce }, weights: { quantity: bodyWeights } }
			},
			{
				id: 'heavy-opens',
				plan: 0,
				show: { view: 'fall', at: 'absorber-end' },
				numbers: { opens: { quantity: { quantity: 'expectedElongation' } }, most: { given: 'elongation' } }
			},
			{
				id: 'light',
				plan: 1,
				show: { view: 'working', of: bodyWeights, step: 'all' },
				numbers: { mass: { quantity: { quantity: 'massAttached' } }, force: { quantity: arrestForce }, weights: { quantity: bodyWeights } }
			},
			{
				id: 'light-opens',
				plan: 1,
				show: { view: 'fall', at: 'absorber-end' },
				numbers: { opens: { quantity: { quantity: 'expectedElongation' } } }
			},
			{ id: 'range', plan: 1, show: { view: 'labels' }, numbers: { least: { given: 'labelMassMin' }, most: { given: 'labelMassMax' } } },
			{
				id: 'wet',
				plan: 2,
				show: { view: 'working', of: arrestForce, step: 'all' },
				numbers: { force: { given: 'peakForce' }, wet: { given: 'conditionedForce' } }
			}
		]
	},
	numbers: { mass: { quantity: { quantity: 'massAttached' } }, force: { quantity: arrestForce } },
	halfDone: [
		{ kind: 'ask', task: 'lift-shaft.expected', ask: 'expected', blank: 1 },
		{ kind: 'ask', task: 'lift-shaft.expected', ask: 'expected', blank: 2 },
		{ kind: 'ask', task: 'turbine-nacelle.force+body-weights', ask: 'body-weights', blank: 'all' }
	],
	facts: ['force-limit', 'free-fall-limit', 'deceleration-limit', 'mass-limit', 'anchorage-strength']
};
