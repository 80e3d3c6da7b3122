import type { Lesson } from '../lesson.ts';

const freeFall = { quantity: 'freeFall' } as const;

/** Anchorage above, level with, and below the D-ring: three plans, one after the other. */
export const freeFallLesson: Lesson = {
	id: 'free-fall',
	cell: 'free-fall',
	example: {
		kind: 'plans',
		plans: [
			{ scenario: 'loading-dock', seed: 21 },
			{ scenario: 'loading-dock', seed: 14 },
			{ scenario: 'flat-roof-edge', seed: 3 }
		],
		steps: [
			{
				id: 'above-look',
				plan: 0,
				show: { view: 'drawing' },
				numbers: { length: { given: 'lanyardLength' }, dRingAt: { given: 'dRingHeight' }, anchorageAt: { given: 'anchorageHeight' } }
			},
			{
				id: 'above-rise',
				plan: 0,
				show: { view: 'working', of: freeFall, step: 1 },
				numbers: { rises: { quantity: { quantity: 'rise' } } }
			},
			{
				id: 'above-fall',
				plan: 0,
				show: { view: 'fall', at: 'taut' },
				numbers: { length: { given: 'lanyardLength' }, rises: { quantity: { quantity: 'rise' } }, falls: { quantity: freeFall } }
			},
			{
				id: 'level',
				plan: 1,
				show: { view: 'tape', of: freeFall },
				numbers: { length: { given: 'lanyardLength' }, falls: { quantity: freeFall } }
			},
			{
				id: 'below-look',
				plan: 2,
				show: { view: 'drawing' },
				numbers: { length: { given: 'lanyardLength' }, strap: { given: 'connectorLength' }, anchorageAt: { given: 'anchorageHeight' } }
			},
			{
				id: 'below-line',
				plan: 2,
				show: { view: 'working', of: freeFall, step: 'all' },
				numbers: { length: { given: 'lanyardLength' }, strap: { given: 'connectorLength' }, falls: { quantity: freeFall } }
			},
			{
				id: 'below-fall',
				plan: 2,
				show: { view: 'fall', at: 'taut' },
				numbers: { falls: { quantity: freeFall }, speed: { speed: 'taut' } }
			}
		]
	},
	numbers: { length: { given: 'lanyardLength' }, falls: { quantity: freeFall } },
	halfDone: [
		{ kind: 'ask', task: 'bridge-bearing.free-fall', ask: 'free-fall', blank: 1 },
		{ kind: 'ask', task: 'flat-roof-edge.free-fall', ask: 'free-fall', blank: 2 },
		{ kind: 'ask', task: 'telecom-mast.free-fall', ask: 'free-fall', blank: 'all' }
	],
	facts: ['free-fall-limit', 'lanyard-limit', 'anchorage-height']
};
