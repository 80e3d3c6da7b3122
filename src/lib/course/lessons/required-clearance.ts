import type { Lesson } from '../lesson.ts';

const fromSurface = { quantity: 'requiredClearance', datum: 'surface' } as const;
const fromAnchorage = { quantity: 'requiredClearance', datum: 'anchorage' } as const;

/** The terms one after the other, then the same plan measured from the anchorage. */
export const requiredClearanceLesson: Lesson = {
	id: 'required-clearance',
	cell: 'required-clearance',
	example: {
		kind: 'plans',
		plans: [{ scenario: 'bridge-bearing', seed: 10 }],
		steps: [
			{
				id: 'fall',
				plan: 0,
				show: { view: 'working', of: fromSurface, step: 2 },
				numbers: { falls: { quantity: { quantity: 'freeFall' } } }
			},
			{ id: 'opens', plan: 0, show: { view: 'working', of: fromSurface, step: 3 }, numbers: { opens: { given: 'elongation' } } },
			{ id: 'slides', plan: 0, show: { view: 'working', of: fromSurface, step: 4 }, numbers: { slides: { given: 'dRingSlide' } } },
			{ id: 'margin', plan: 0, show: { view: 'working', of: fromSurface, step: 5 }, numbers: { margin: { given: 'margin' } } },
			{
				id: 'whole',
				plan: 0,
				show: { view: 'tape', of: fromSurface },
				numbers: { required: { quantity: fromSurface } }
			},
			{
				id: 'other-datum',
				plan: 0,
				show: { view: 'tape', of: fromAnchorage },
				numbers: { length: { given: 'lanyardLength' }, body: { given: 'dRingHeight' }, required: { quantity: fromAnchorage } }
			},
			{
				id: 'same-plan',
				plan: 0,
				show: { view: 'fall', at: 'hanging' },
				numbers: {
					required: { quantity: fromSurface },
					total: { quantity: fromAnchorage },
					anchorageAt: { given: 'anchorageHeight' }
				}
			}
		]
	},
	numbers: { required: { quantity: fromSurface }, falls: { quantity: { quantity: 'freeFall' } } },
	halfDone: [
		{ kind: 'ask', task: 'bridge-bearing.required', ask: 'required', blank: 1 },
		{ kind: 'ask', task: 'loading-dock.required', ask: 'required', blank: 2 },
		{ kind: 'ask', task: 'flat-roof-edge.required', ask: 'required', blank: 'all' }
	],
	facts: ['margin', 'slide-and-stretch', 'd-ring-height', 'body-height', 'no-contact']
};
