/** What is said of a plan as a whole, and the caution that goes with it. */
export const verdict = {
	heading: 'Verdict',
	passes: 'Passes the listed checks.',
	fails: ({ checks }: { checks: string }) => `Fails: ${checks}.`,
	cannotBeShown: ({ checks }: { checks: string }) => `Cannot be shown adequate: ${checks}. Do not tie off.`,
	decision: { 'tie-off': 'Tie off', 'do-not-tie-off': 'Do not tie off' },
	nearest: ({ check, amount }: { check: string; amount: string }) => `Nearest to failing: ${check}, ${amount} to spare.`,
	allChecks: 'All checks',
	doesNotDecide: 'From memory: decides nothing until confirmed.',
	/** Stands on the start page and with every verdict. */
	caution:
		'This is a training aid, not a design tool. What counts on site is the maker’s instructions, local law, and a competent or qualified person.',
	cautionLong: [
		'Underfoot is for practice. It checks the points it lists, and no others.',
		'It knows nothing of your site, your gear, or the state they are in.',
		'No answer of this program allows or forbids work.',
		'Read the maker’s instructions. Follow local law. Let a competent or qualified person decide.'
	]
};
