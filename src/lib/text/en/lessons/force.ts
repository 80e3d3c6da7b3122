import type { LessonText } from '../../lesson-text.ts';

export const force: LessonText = {
	title: 'Force and limits',
	able: 'You can hold the arrest force against the limit and tell whether an absorber suits a worker.',
	ideas: [
		({ mass, force: most }) => `In the example ${mass} falls. The label states ${most} at most. That is the number for the check.`,
		() => 'A longer free fall means a faster body. A fall twice as long has twice the energy. The absorber must take up all of it.',
		() => 'That is why free fall is limited. Beyond it the absorber can come to its end. Then nothing limits the force any more.',
		() => 'One absorber treats two workers differently. A heavy one pulls it open further. A light one is stopped harder.',
		() => 'So a label has a range of mass. Choose the absorber for the worker with tools, not the one that lies at hand.',
		() => 'The same pull comes to the anchorage. It must hold a good deal more than that, for each person on it.'
	],
	captions: {
		speed: ({ falls, speed }) => `After ${falls} of free fall the body moves at ${speed}. All of that must be stopped now.`,
		heavy: ({ mass, force: most, weights }) => `On this harness hangs ${mass}. The label states ${most} at most. That is ${weights} times the weight.`,
		'heavy-opens': ({ opens, most }) =>
			`By the average force, the absorber would open ${opens} here. For the clearance you still plan with ${most}, the most on the label.`,
		light: ({ mass, force: most, weights }) => `Another worker, with ${mass}. The force is ${most} again. But now it is ${weights} times the weight: a harder stop.`,
		'light-opens': ({ opens }) => `Here the absorber would open only ${opens}. A very light worker may not open it at all.`,
		range: ({ least, most }) => `So the label has two ends: ${least} and ${most}. Outside of them, choose another absorber.`,
		wet: ({ force: dry, wet }) => `This gear is frozen. Dry, the label states ${dry}. Wet or frozen, it states ${wet}. That is the number for the check.`
	},
	cautions: [
		'The average is for understanding. A check takes the peak.',
		'No label holds for two absorbers in a row. Never join them.',
		'An absorber that has opened even a little is out of use.',
		'A figure for the deceleration distance comes from the maker. It is not the elongation on the label.'
	]
};
