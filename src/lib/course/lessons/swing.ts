import type { Lesson } from '../lesson.ts';

const swingDrop = { quantity: 'swingDrop' } as const;
const required = { quantity: 'requiredClearance', datum: 'surface' } as const;

/** The whole path of a swing that fits, and of one that meets something on the far side. */
export const swingLesson: Lesson = {
	id: 'swing',
	cell: 'swing-and-path',
	example: {
		kind: 'plans',
		plans: [
			{ scenario: 'tank-roof', seed: 11 },
			{ scenario: 'tank-roof', seed: 15 }
		],
		steps: [
			{ id: 'look', plan: 0, show: { view: 'drawing' }, numbers: { sideways: { given: 'offset' }, length: { given: 'lanyardLength' } } },
			{ id: 'tight', plan: 0, show: { view: 'swing', at: 'taut' }, numbers: { falls: { quantity: { quantity: 'freeFall' } } } },
			{
				id: 'drop',
				plan: 0,
				show: { view: 'working', of: swingDrop, step: 'all' },
				numbers: { drop: { quantity: swingDrop }, length: { given: 'lanyardLength' } }
			},
			{ id: 'low', plan: 0, show: { view: 'swing', at: 'low' }, numbers: { speed: { speed: 'low' } } },
			{ id: 'far', plan: 0, show: { view: 'swing', at: 'far-side' }, numbers: {} },
			{
				id: 'needed',
				plan: 0,
				show: { view: 'tape', of: required },
				numbers: { drop: { quantity: swingDrop }, required: { quantity: required } }
			},
			{ id: 'hit', plan: 1, show: { view: 'fall', at: 'contact' }, numbers: { speed: { speed: 'contact' } } }
		]
	},
	numbers: { sideways: { given: 'offset' }, drop: { quantity: swingDrop } },
	halfDone: [
		{ kind: 'ask', task: 'formwork-deck.reach', ask: 'reach', blank: 1 },
		{ kind: 'ask', task: 'tank-roof.swing-drop', ask: 'swing-drop', blank: 2 },
		{ kind: 'ask', task: 'tank-roof.swing-drop', ask: 'swing-drop', blank: 'all' }
	],
	facts: ['sideways-limit', 'anchorage-height', 'edges', 'no-contact']
};
