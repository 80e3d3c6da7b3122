import type { Lesson } from '../lesson.ts';

/** One fall from start to rest, stage by stage. */
export const stagesLesson: Lesson = {
	id: 'stages',
	cell: 'stages',
	example: {
		kind: 'plans',
		plans: [{ scenario: 'bridge-bearing', seed: 30 }],
		steps: [
			{ id: 'before', plan: 0, show: { view: 'fall', at: 'standing' }, numbers: {} },
			{
				id: 'free-fall',
				plan: 0,
				show: { view: 'fall', at: 'taut' },
				numbers: { falls: { quantity: { quantity: 'freeFall' } }, time: { time: 'taut' }, speed: { speed: 'taut' } }
			},
			{
				id: 'stopping',
				plan: 0,
				show: { view: 'fall', at: 'absorber-end' },
				numbers: { opens: { given: 'elongation' }, slides: { given: 'dRingSlide' } }
			},
			{
				id: 'force',
				plan: 0,
				show: { view: 'labels' },
				numbers: { force: { given: 'peakForce' }, weights: { quantity: { quantity: 'bodyWeights' } } }
			},
			{
				id: 'hanging',
				plan: 0,
				show: { view: 'fall', at: 'hanging' },
				numbers: { total: { quantity: { quantity: 'totalFall' } }, time: { time: 'hanging' } }
			},
			{
				id: 'room',
				plan: 0,
				show: { view: 'tape', of: { quantity: 'requiredClearance', datum: 'surface' } },
				numbers: {
					required: { quantity: { quantity: 'requiredClearance', datum: 'surface' } },
					margin: { given: 'margin' },
					left: { quantity: { quantity: 'spare' } }
				}
			}
		]
	},
	numbers: { time: { time: 'hanging' }, falls: { quantity: { quantity: 'freeFall' } }, total: { quantity: { quantity: 'totalFall' } } },
	halfDone: [
		{ kind: 'finding', task: 'moment-now', blank: 1 },
		{ kind: 'finding', task: 'moment-used-up', blank: 1 },
		{ kind: 'finding', task: 'moment-pull', blank: 'all' }
	],
	facts: ['duty-height', 'no-contact', 'harness']
};
