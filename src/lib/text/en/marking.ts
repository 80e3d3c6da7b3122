/** What is said of each answer, before the explanation. */
import type { Mark } from '#lib/grading/index.ts';

export const marking = {
	marks: {
		right: 'Right.',
		'right-by-rounding': 'Right, by rounding.',
		'follows-own': 'Right with your own earlier number.',
		wrong: 'Not yet.'
	} as Readonly<Record<Mark['kind'], string>>,
	/** Behind a right answer that was rounded to the cautious side. */
	roundedUp: 'Right. You rounded up: the cautious way.',
	roundedDown: 'Right. You rounded down: the cautious way.',
	/** Wrong, on the side that costs comfort. */
	overCautious: 'More than needed. You would turn down a tie-off that passes.',
	/** The same where less is more cautious. */
	overCautiousLess: 'Less than there is. You would turn down a tie-off that passes.',
	/** Wrong, on the side that costs a life. */
	critical: 'On the unsafe side',
	criticalWhat: ({ name }: { name: string }) => `With this number ${name} would tie off where the fall does not end well.`,
	criticalCount: 'counted apart from the score',
	shortBy: ({ amount }: { amount: string }) => `Your plan looked as if it fits. It does not: it is short by ${amount}.`,
	stillFits: 'This plan fits all the same. The next one may not.',
	rightValue: ({ value }: { value: string }) => `Right is ${value}.`,
	yourValue: ({ value }: { value: string }) => `You wrote ${value}.`,
	/** Two answers in one line over the explanation: "Free fall right. Clearance not yet." */
	oneRight: ({ short }: { short: string }) => `${short} right.`,
	oneWrong: ({ short }: { short: string }) => `${short} not yet.`,
	allRight: 'All right.',
	labelOverlooked: 'The label does not hold for this case, so no number can be stated. Do not tie off.',
	labelMisjudged: 'The label does hold for this case. The number can be worked out.',
	decisionRight: 'Your decision is right.',
	decisionWrongTieOff: 'You tied off to a plan that fails.',
	decisionWrongRefused: 'You turned down a tie-off that passes.',
	decisionNotCounted: 'A decision counts only together with its numbers.'
};
