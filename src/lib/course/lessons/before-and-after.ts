import type { Lesson } from '../lesson.ts';

/** Gear, people and places: what is put right before, and what must be ready for after. */
export const beforeAndAfterLesson: Lesson = {
	id: 'before-and-after',
	cell: 'decisions',
	example: {
		kind: 'pictures',
		steps: [
			{ id: 'restraint', picture: 'site-restraint', seed: 12 },
			{ id: 'place', picture: 'site-roof-edge', seed: 4 },
			{ id: 'inspection', picture: 'gear-harness', seed: 8 },
			{ id: 'donning', picture: 'gear-worn-back', seed: 5 },
			{ id: 'connectors', picture: 'site-hook-ups', seed: 13 },
			{ id: 'legs-wrong', picture: 'site-twin-legs', seed: 5 },
			{ id: 'legs-right', picture: 'site-twin-legs', seed: 2 },
			{ id: 'steel', picture: 'site-steel', seed: 7 },
			{ id: 'rescue', picture: 'site-rescue', seed: 8 }
		]
	},
	numbers: {},
	halfDone: [
		{ kind: 'finding', task: 'gear-harness', blank: 1 },
		{ kind: 'finding', task: 'site-hook-ups', blank: 1 },
		{ kind: 'finding', task: 'site-roof-edge', blank: 'all' }
	],
	facts: ['restraint-first', 'anchorage-strength', 'one-person', 'harness', 'connectors', 'edges', 'rescue', 'training']
};
