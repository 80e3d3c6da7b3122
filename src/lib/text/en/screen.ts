/** Words of the site problem's screens that came after the pages were first written. */
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const screen = {
	stop: 'Stop here',
	checkWaits: 'Your answers are checked as soon as the rest of this page has come.',
	answersCaption: 'Your answers and how they are marked',
	cases: 'Which fall is shown',
	waiting: ({ count }: { count: number }) =>
		plural(count, { one: '1 answer waits on this device to be sent.', other: `${String(count)} answers wait on this device to be sent.` }),
	tapesText: ({ needed, own }: { needed: string; own: string }) => `Needed: ${needed}. Your tape: ${own}.`,
	walkRead: ({ the }: { the: string }) => `Read it off: ${the}.`,
	likeIt: 'Try one like it',
	/** Fields of practice tables and absorber classes. */
	fields: {
		margin: 'Margin',
		stretch: 'Slide and stretch',
		dRingHeight: 'D-ring height',
		bodyHeight: 'Body height',
		halfBodyWidth: 'Half the width of a body',
		averageForce: 'Average force',
		averageForceConditioned: 'Average force, wet or frozen',
		peakForce: 'Arrest force, at most',
		peakForceConditioned: 'Arrest force wet or frozen, at most',
		deploymentMax: 'Elongation, at most',
		massMin: 'User with tools, at least',
		massMax: 'User with tools, at most',
		freeFallMax: 'Free fall, at most'
	},
	cautiousMore: 'More is more cautious.',
	cautiousLess: 'Less is more cautious.',
	noScript: 'The answers are checked with scripts. Please switch them on.'
};
