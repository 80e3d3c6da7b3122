import type { LessonText } from '../../lesson-text.ts';

export const swing: LessonText = {
	title: 'Swing and the path of the body',
	able: 'You can work out the swing drop, and see what the body would meet on its whole way.',
	ideas: [
		({ sideways, drop }) => `In the example the anchorage is ${sideways} to the side. In the swing the body comes down ${drop} more.`,
		() => 'A larger offset means a larger swing drop. It grows slowly at first, and then fast.',
		() => 'A swing turns height into speed, sideways. To hit a wall like that can hurt as much as to hit the ground.',
		() => 'The body does not stop below the anchorage. It goes on, to the far side. Look at the whole path, and at the whole body.',
		() => 'The lowest point is straight below the anchorage. Measure the room there, not only below the worker.',
		() => 'With the anchorage overhead there is no swing. Move the anchorage, or work closer to it.',
		() => 'And the line must reach. A slanted way is longer than it looks.'
	],
	captions: {
		look: ({ name, sideways, anchorage, length }) =>
			`${name} works ${sideways} to the side of ${anchorage}. The lanyard of ${length} runs there at a slant.`,
		tight: ({ falls }) => `After ${falls} of free fall the slanted line is tight. It stops a part of the motion. The rest becomes a swing.`,
		drop: ({ length, drop }) => `At the low point the whole ${length} hangs straight down. That is ${drop} deeper. This is the swing drop.`,
		low: ({ anchorage, speed }) => `Here is the lowest point, straight below ${anchorage}. The body moves at ${speed}, to the side.`,
		far: () => 'The swing goes on and up the far side. Nothing may stand anywhere on this path.',
		needed: ({ drop, required }) => `The swing drop of ${drop} is part of the required clearance. In all it makes ${required}.`,
		hit: ({ thing, speed }) => `Another plan. The low point is passed. Then the body meets ${thing} on the far side, at ${speed}. It is not arrested.`
	},
	cautions: [
		'A line that swings along an edge is sawn by it. A line over an edge needs gear that is made for edges.',
		'Do not judge a swing by its angle alone. With a longer line, the same angle drops further.',
		'Each step along the edge adds to the swing. Do not go further than was planned.',
		'A pipe, a ladder or a corner can be what the body hits.'
	]
};
