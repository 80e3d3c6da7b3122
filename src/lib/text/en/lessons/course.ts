import type { NotCovered } from '#lib/course/index.ts';

/** What the course is called, and what it leaves out. */
export const course = {
	title: 'Orientation: lanyard with energy absorber',
	scope: 'Lanyard with energy absorber',
	lead: 'Plan your own tie-off with a lanyard and an energy absorber, from the label to the verdict.',
	coversHeading: 'What the course treats',
	covers: 'A full body harness, one lanyard with an energy absorber, and a rigid anchorage.',
	notCoveredHeading: 'What the course does not treat',
	notCovered: {
		'self-retracting-device': 'Self-retracting devices',
		'horizontal-lifeline': 'Horizontal lifelines',
		'vertical-lifeline': 'Vertical lifelines',
		'travel-restraint-plans': 'How to work out a restraint line; only that it comes first',
		'line-over-edge': 'Lines over an edge',
		positioning: 'Work positioning',
		'rope-access': 'Work on two lines, for access',
		'climbing-and-platforms': 'Climbing rails and powered platforms',
		'guardrails-nets-covers': 'How to build guardrails, nets and covers',
		'hands-on-practice': 'Practice with your own hands',
		'site-plan': 'The plan and the rules of your own site'
	} as Readonly<Record<NotCovered, string>>,
	/** Headings of a lesson's parts. */
	ideasHeading: 'In short',
	factsHeading: 'What the rule here says',
	cautionsHeading: 'Take care',
	stepOf: ({ n, of }: { n: number; of: number }) => `Step ${String(n)} of ${String(of)}`
};
