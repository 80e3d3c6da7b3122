/** What the course is, and what it is not about. */

/** What the course does not treat, by name, in the order in which it is told. */
export const NOT_COVERED = [
	'self-retracting-device',
	'horizontal-lifeline',
	'vertical-lifeline',
	'travel-restraint-plans',
	'line-over-edge',
	'positioning',
	'rope-access',
	'climbing-and-platforms',
	'guardrails-nets-covers',
	'hands-on-practice',
	'site-plan'
] as const;
export type NotCovered = (typeof NOT_COVERED)[number];

/** The course's identity, as completions name it. A change of lessons, tasks or rules raises the version. */
export const COURSE = Object.freeze({
	id: 'lanyard-orientation',
	version: 1,
	/** What a completion is for; its name is in the catalogue. */
	scope: 'lanyard-with-energy-absorber',
	notCovered: NOT_COVERED
});
