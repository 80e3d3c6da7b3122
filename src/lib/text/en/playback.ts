/** The animated fall and the tapes. */
import type { FallEventId, FallPhase } from '#lib/arrest/index.ts';

export const playback = {
	heading: 'What would happen',
	/** Over the uprights of the strip. `thing` is what the feet meet, with its article. */
	events: {
		start: () => 'start',
		'lanyard-tight': () => 'lanyard tight',
		'passes-learner-level': () => 'your level',
		'absorber-done': () => 'absorber done',
		lowest: () => 'lowest point',
		rest: () => 'at rest',
		contact: ({ thing }) => `feet on ${thing}`
	} as Readonly<Record<FallEventId, (p: { readonly thing: string }) => string>>,
	phases: {
		'free-fall': 'in free fall',
		stopping: 'the absorber opens',
		swinging: 'in the swing',
		'at-rest': 'at rest'
	} as Readonly<Record<FallPhase, string>>,
	/** The switch between the two falls. */
	thisSite: 'This site',
	groundAt: ({ value }: { value: string }) => `Ground at your ${value}`,
	groundAtWhat: 'The same fall, with the ground just where your number says it fits.',
	notArrested: ({ name, thing, t, v }: { name: string; thing: string; t: string; v: string }) =>
		`Not arrested: ${name}’s feet meet ${thing} after ${t}, at ${v}.`,
	stillOpening: 'The absorber is still opening.',
	arrested: ({ name, left }: { name: string; left: string }) => `Arrested: ${name} hangs with ${left} to spare beyond the margin.`,
	arrestedJust: ({ name }: { name: string }) => `Arrested: ${name} hangs with the margin free, and no more.`,
	marginUsed: ({ name, used, margin }: { name: string; used: string; margin: string }) =>
		`${name} stops, but ${used} of the margin of ${margin} is used up.`,
	marginGone: ({ name }: { name: string }) => `${name} stops with the soles just at the level. The whole margin is used up.`,
	/** At the learner's level in the strip. */
	still: ({ value, v }: { value: string; v: string }) => `your ${value}: still ${v}`,
	atYour: ({ name, value, v }: { name: string; value: string; v: string }) => `At your ${value}, ${name} would still move at ${v}.`,
	overCautious: 'More than needed. You would turn down a tie-off that passes.',
	planningCase: 'Planning case: the most that the labels state.',
	averageForce: 'average, for understanding',
	/** Rows of the strip. */
	time: ({ unit }: { unit: string }) => `time, ${unit}`,
	speed: ({ unit }: { unit: string }) => `speed, ${unit}`,
	/** Controls. */
	play: 'Play',
	pause: 'Pause',
	again: 'Play again',
	nextMark: 'Next mark',
	previousMark: 'Mark before',
	quarterSpeed: 'Quarter speed',
	trueSpeed: 'True speed',
	scrubber: 'Time in the fall',
	/** Read out at each mark; `event` is empty between events. */
	spoken: ({ t, v, event }: { t: string; v: string; event: string }) => (event === '' ? `${t}, ${v}` : `${t}, ${v}, ${event}`),
	spokenSeconds: ({ value }: { value: string }) => `${value} seconds`,
	spokenSpeed: ({ value, us }: { value: string; us: boolean }) => `${value} ${us ? 'feet' : 'metres'} a second`,
	drawing: ({ name }: { name: string }) => `${name}’s fall, at marks in time`
};
