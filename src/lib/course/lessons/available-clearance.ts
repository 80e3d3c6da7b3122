import type { Lesson } from '../lesson.ts';

const required = { quantity: 'requiredClearance', datum: 'surface' } as const;
const available = { quantity: 'availableClearance', datum: 'surface' } as const;

/** A lorry's trailer that is not there now, one that ends the fall, and a bay into which none can come. */
export const availableClearanceLesson: Lesson = {
	id: 'available-clearance',
	cell: 'available-and-verdict',
	example: {
		kind: 'plans',
		plans: [
			{ scenario: 'loading-dock', seed: 22 },
			{ scenario: 'loading-dock', seed: 24 },
			{ scenario: 'loading-dock', seed: 21 }
		],
		steps: [
			{ id: 'look', plan: 0, show: { view: 'drawing' }, numbers: { depth: { given: 'lowerLevelDepth' }, top: { given: 'obstacleTop_vehicle' } } },
			{
				id: 'available',
				plan: 0,
				show: { view: 'working', of: available, step: 'all' },
				numbers: { depth: { given: 'lowerLevelDepth' }, top: { given: 'obstacleTop_vehicle' }, available: { quantity: available } }
			},
			{
				id: 'aside',
				plan: 0,
				show: { view: 'drawing' },
				numbers: { top: { given: 'obstacleTop_machine' } }
			},
			{
				id: 'compare',
				plan: 0,
				show: { view: 'tape', of: required },
				numbers: { required: { quantity: required }, available: { quantity: available } }
			},
			{ id: 'hit', plan: 1, show: { view: 'fall', at: 'contact' }, numbers: { time: { time: 'contact' }, speed: { speed: 'contact' } } },
			{
				id: 'fits',
				plan: 2,
				show: { view: 'tape', of: required },
				numbers: { required: { quantity: required }, available: { quantity: available }, left: { quantity: { quantity: 'spare' } } }
			},
			{ id: 'passes', plan: 2, show: { view: 'fall', at: 'hanging' }, numbers: { margin: { given: 'margin' } } }
		]
	},
	numbers: { depth: { given: 'lowerLevelDepth' }, available: { quantity: available } },
	halfDone: [
		{ kind: 'ask', task: 'loading-dock.available', ask: 'available', blank: 'all' },
		{ kind: 'ask', task: 'loading-dock.required+available+decision', ask: 'required', blank: 1 },
		{ kind: 'ask', task: 'silo-top.available', ask: 'available', blank: 'all' }
	],
	facts: ['no-contact', 'margin']
};
