/** Help with a question of a site problem, in levels: where to look, the rule, the working. */
import type { Datum } from '#lib/arrest/index.ts';
import type { NumberAsk } from '#lib/scenario/index.ts';

type Plain = Exclude<NumberAsk['quantity'], 'requiredClearance' | 'availableClearance'>;

export const help = {
	open: 'Help',
	of: ({ n }: { n: number }) => `Help with question ${String(n)}`,
	levels: { hint: 'Where to look', step: 'The rule', worked: 'The working' },
	showHint: 'Show where to look',
	showStep: 'Show the rule',
	showWorked: 'Show the working',
	wait: 'Read this first. More help opens in a few seconds.',
	counts: 'A problem with help does not count toward the check. It comes again with other numbers.',
	counted: 'Help was used here. This problem does not count.',
	symbols: 'What the letters stand for',
	hints: {
		freeFall: 'Read the lanyard length and the two heights. Where is the anchorage: above the D-ring, level with it, or below?',
		swingDrop: 'Read how far sideways the worker stands. How much lower does the body hang once it is below the anchorage?',
		massAttached: 'Add up what falls with the body. What hangs on the structure does not.',
		lowestCapacity: 'Read the capacity on every label. The whole is as good as its weakest part.',
		arrestForce: 'Look on the label of the absorber for the greatest force. Is the gear dry, wet or frozen here?',
		expectedElongation: 'The absorber must take up the whole fall. Look for the average force, the mass and the free fall.',
		bodyWeights: 'Find the greatest force first. How heavy is the body with all that it carries?',
		reachDistance: 'Look at the way from the D-ring to the anchorage: sideways and up or down. The line must span it.'
	} as Readonly<Record<Plain, string>>,
	required: {
		anchorage: 'Put the top of your tape at the anchorage. What hangs below it once the fall has ended? Do not forget the margin.',
		connector: 'Put the top of your tape at the end of the connector. What hangs below it once the fall has ended? Do not forget the margin.',
		surface: 'Put the top of your tape at the walking surface. How far do the soles go below it? Do not forget the margin.',
		'd-ring': 'Put the top of your tape at the D-ring before the fall. How far does it go down, and what of the body is below it? Do not forget the margin.'
	} as Readonly<Record<Datum, string>>,
	available: {
		anchorage: 'Put the top of your tape at the anchorage. What would the body meet first on its whole way? Can something stand there at times?',
		connector: 'Put the top of your tape at the end of the connector. What would the body meet first on its whole way? Can something stand there at times?',
		surface: 'Put the top of your tape at the walking surface. What would the body meet first on its whole way? Can something stand there at times?',
		'd-ring': 'Put the top of your tape at the D-ring before the fall. What would the body meet first on its whole way? Can something stand there at times?'
	} as Readonly<Record<Datum, string>>,
	decision: 'Hold each of your numbers against its limit. Is there one that fails, or one that nobody can show?',
	decisionRule: 'Tie off only if every check holds. One that fails, or one that is not known, is enough not to.',
	/** Pictures. */
	picture: 'Go through the list of all parts, one after the other. Read what is to be seen of each.'
};
