import type { LessonText } from '../../lesson-text.ts';

export const requiredClearance: LessonText = {
	title: 'Required clearance',
	able: 'You can add up the free room that a fall needs, from any place that one can measure from.',
	ideas: [
		({ falls, required }) => `In the example the free fall is ${falls}. Yet ${required} must be free below. The stop needs room too.`,
		() => 'The parts follow one on the other: free fall, elongation, slide and stretch, margin. Lay them end to end, as on a tape.',
		() => 'Plan with the most that the label states for the elongation. What one expects is shorter. It is not for planning.',
		() => 'The margin stays free below the soles. It is for what nobody could know. It is not there to be used up.',
		() =>
			'The number depends on where you start. From the walking surface you count the free fall. From the anchorage you count the whole line and the body.',
		() => 'Why the body? It hangs below the D-ring. From the walking surface it is left out, because the feet started there.'
	],
	captions: {
		fall: ({ surface, falls }) => `We measure from ${surface} down. First comes the free fall: ${falls}.`,
		opens: ({ opens }) => `Then the absorber opens. The label states ${opens} at most, and that much is planned for.`,
		slides: ({ slides }) => `The D-ring slides up the back by ${slides}. The soles sink by as much.`,
		margin: ({ margin }) => `Last comes the margin of ${margin}. It stays free below the soles.`,
		whole: ({ required, surface }) => `Laid end to end, it makes ${required}. That much must be free below ${surface}.`,
		'other-datum': ({ anchorage, length, body, required }) =>
			`The same plan from ${anchorage} down. The lanyard of ${length} stands in place of the free fall, and the body of ${body} is added. It makes ${required}.`,
		'same-plan': ({ required, surface, total, anchorage, anchorageAt }) =>
			`One plan, two right numbers: ${required} from ${surface}, and ${total} from ${anchorage}. They differ by ${anchorageAt}, the height of the anchorage.`
	},
	cautions: [
		'Always say where you measure from. A clearance without that is half a number.',
		'Tables count the body in different ways. Read which way yours counts.',
		'To kneel makes the free fall shorter. It does not make the room below the anchorage smaller: the body hangs at full length.',
		'If the sum only works without the margin, do not tie off.'
	]
};
