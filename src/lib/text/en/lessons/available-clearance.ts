import type { LessonText } from '../../lesson-text.ts';

export const availableClearance: LessonText = {
	title: 'Available clearance and the verdict',
	able: 'You can find the room that there is, hold it against the room that is needed, and decide.',
	ideas: [
		({ lowerLevel, depth, available }) => `In the first plan it is ${depth} down to ${lowerLevel}. Yet only ${available} counts. Something can stand there.`,
		() => 'The lower level is whatever the body would meet first. It may be the ground, a load, a beam, a tank or water.',
		() => 'Things that come and go count at their highest. If a truck can stand there, count it as if it did.',
		() => 'Things to the side count only if the body can meet them. Look along its whole path, with the swing.',
		() => 'Measure both clearances from the same place, the required and the available. From two places they cannot be compared.',
		() => 'If one check fails, or if something is not known, the answer is: do not tie off.'
	],
	captions: {
		look: ({ surface, lowerLevel, depth, thing, top }) =>
			`Look down from ${surface}. It is ${depth} to ${lowerLevel}. At times ${thing} stands there, ${top} high. It is not there now.`,
		available: ({ depth, top, available }) => `It can come, so it counts. ${depth} less ${top} leaves ${available}. That is the available clearance.`,
		aside: ({ top }) => `A machine of ${top} stands there as well, but off to the side. The body does not pass it. It does not count.`,
		compare: ({ surface, required, available }) =>
			`Both from ${surface}: ${required} is required, and ${available} is available. That is too little. Do not tie off.`,
		hit: ({ thing, time, speed }) => `Another plan, with less room. After ${time} the feet meet ${thing}, at ${speed}. This fall is not arrested.`,
		fits: ({ required, available, left }) => `A third plan: ${required} is required, and ${available} is available. There is ${left} to spare.`,
		passes: ({ margin }) => `The body hangs, and the margin of ${margin} is still free. The other checks hold too. This plan passes the listed checks.`
	},
	cautions: [
		'Measure to what can be there on the worst day, not to what is there today.',
		'Water, a tank and a machine are lower levels too.',
		'If it is too close to call, do not tie off. Look for a higher anchorage first.',
		'What is not known is not adequate. Ask before you hook in.'
	]
};
