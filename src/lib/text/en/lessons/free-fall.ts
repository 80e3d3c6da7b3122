import type { LessonText } from '../../lesson-text.ts';

export const freeFall: LessonText = {
	title: 'Free fall: above, level, below',
	able: 'You can work out how far a body falls before the line pulls tight.',
	ideas: [
		() => 'A fall starts at the D-ring. The body falls freely until the line is tight. That way down is the free fall.',
		({ length, falls }) =>
			`The free fall is not the lanyard length. In the first plan the lanyard is ${length} long. Yet the free fall is only ${falls}.`,
		() =>
			'What counts is how high you clip. Clip above the D-ring, and the line is already part of the way up. The free fall gets shorter.',
		() => 'Clip level with the D-ring, and you fall the whole line. Clip below it, and you fall further than the line is long.',
		() =>
			'A strap between anchorage and lanyard is a connector. It is part of the line. Measure from the point that holds it, not from its end.',
		() => 'Slack needs no sum of its own. It lies within the length of the line. Do not count it twice.'
	],
	captions: {
		'above-look': ({ name, dRingAt, anchorageAt, length }) =>
			`Read three numbers. ${name}’s D-ring is at ${dRingAt}. The anchorage is at ${anchorageAt}. The lanyard is ${length} long.`,
		'above-rise': ({ rises }) => `How far is the anchorage above the D-ring? Take one height off the other. The rise is ${rises}.`,
		'above-fall': ({ length, rises, falls }) =>
			`The line less the rise is the free fall: ${length} less ${rises} is ${falls}. Here the line is just tight.`,
		level: ({ length, falls }) =>
			`Now the anchorage is hardly above the D-ring. The lanyard is ${length} long, and the free fall is ${falls}. The body falls almost the whole line.`,
		'below-look': ({ anchorageAt, strap, length }) =>
			`Now the anchorage is low, at ${anchorageAt}. A strap of ${strap} lies slack round it. The lanyard of ${length} is hooked to the strap.`,
		'below-line': ({ strap, length, falls }) =>
			`Strap and lanyard are one line: ${strap} and ${length}. The anchorage is below the D-ring, so that height is added. The free fall is ${falls}.`,
		'below-fall': ({ falls, speed }) =>
			`After ${falls} of free fall the line is tight. The body moves at ${speed} by then. Hold the free fall against the limit of the rule here.`
	},
	cautions: [
		'A low anchorage is the most common way to break the free-fall limit. Look for a higher one first.',
		'Do not tie a knot to make a lanyard shorter. A knot takes much of its strength.',
		'If the line does not reach a high anchorage, it cannot be rigged. Do not work on tiptoe to get there.',
		'The maker’s instructions may set a shorter free fall than the law. The shorter one holds.'
	]
};
