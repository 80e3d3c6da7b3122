import type { LessonText } from '../../lesson-text.ts';

export const stages: LessonText = {
	title: 'What happens in a fall',
	able: 'You can name the stages of a fall and say what each one takes.',
	ideas: [
		({ time }) => `The whole fall in this example takes ${time}. Nobody can react in that time. All the work has to be done before.`,
		({ falls, total }) => `The body falls ${falls} with nothing to hold it. In all, the D-ring comes down ${total}. The rest is the stop.`,
		() => 'First stage: the free fall. Nothing holds the body yet. It gets faster all the way.',
		() => 'Second stage: the stop. The lanyard is tight, the absorber opens, and the harness gives. The line pulls until the body is still.',
		() => 'Third stage: hanging. The fall is over, but the danger is not. Somebody must come and bring the worker down.'
	],
	captions: {
		before: ({ name, surface }) => `${name} stands on ${surface}. The lanyard hangs loose. Nothing moves yet.`,
		'free-fall': ({ falls, time, speed }) =>
			`The free fall: ${falls} in ${time}. Only now is the line tight. The body moves at ${speed}, and nothing has slowed it so far.`,
		stopping: ({ opens, slides }) => `The absorber opens by up to ${opens}. The D-ring slides up the back by ${slides}. The body sinks by both.`,
		force: ({ force, weights }) => `The label says how hard the line may pull: ${force} at most. That is ${weights} times the weight of all that hangs.`,
		hanging: ({ time, total }) => `At rest, after ${time}. The D-ring has come down ${total} in all.`,
		room: ({ surface, required, margin, left }) =>
			`Below ${surface} this fall needs ${required}. A margin of ${margin} is part of it and must stay free. Here ${left} is left over.`
	},
	cautions: [
		'The picture shows the planning case: the most that the labels state. A real fall may be shorter. Nobody can rely on that.',
		'A body that meets something on the way is not arrested, however slow it is by then.',
		'A harness does not keep anyone from falling. Not to fall at all comes first.'
	]
};
