import type { LessonText } from '../../lesson-text.ts';

export const label: LessonText = {
	title: 'The label and the mass',
	able: 'You can read each number on the labels, and hold the mass against the lowest capacity.',
	ideas: [
		({ bodyMass, mass }) =>
			`The worker in the example has a body mass of ${bodyMass}. Yet ${mass} hangs on the harness. Clothing, gear and tools count too.`,
		() => 'What is tied to the structure does not fall with the worker. It does not count. A tool on the belt does.',
		() => 'Absorber, harness and connectors each have a capacity. The lowest one decides for all of them.',
		() => 'A label has two ends. A worker can be too heavy for it, or too light. A light worker is stopped harder.',
		() =>
			'Each number has its place. The length goes into the free fall. The elongation goes into the clearance. The arrest force goes against the limit.',
		() => 'A label holds only within its own range. Outside its mass or its free fall, its numbers say nothing.'
	],
	captions: {
		story: ({ name, tied, anchorage }) =>
			`Read the story first. A bag of ${tied} is tied to ${anchorage}, not to ${name}. Keep that in mind.`,
		lengths: ({ length, opens }) => `The lanyard is ${length} long, hook to hook. The absorber may add up to ${opens}. That is its elongation.`,
		forces: ({ force, wet, average }) =>
			`Three forces stand here. Dry, the peak is ${force}. Wet or frozen, it is ${wet}. The average of ${average} is for understanding, never for a check.`,
		range: ({ least, most, limit }) => `This label is for ${least} to ${most}, and for a free fall up to ${limit}. Outside of that it promises nothing.`,
		mass: ({ bodyMass, mass, tied }) => `Body, clothing, gear and tools together: ${bodyMass} has become ${mass}. The bag of ${tied} stays out.`,
		capacity: ({ most, limit }) => `Now the capacities. The harness may carry ${most}. The absorber ends at ${limit}. The lower one decides.`,
		compare: ({ mass, limit, left }) => `Hold ${mass} against ${limit}: ${left} to spare. The mass is above the lower end of the range as well.`
	},
	cautions: [
		'A label that cannot be read counts as no label. Take the part out of use.',
		'Weigh yourself with all that you wear and carry. A guess is often too low.',
		'Wet or frozen gear can pull harder. Use the number that is stated for it.',
		'The label of the device goes before any table of classes. The maker’s instructions go with it.'
	]
};
