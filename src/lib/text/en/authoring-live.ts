/** What stands beside the form in which a scenario is written: a drawn example, what many draws show, findings. */
import type { ImpossibleSite, Severity } from '#lib/scenario/index.ts';
import { pluralOf } from '../plural.ts';

const plural = pluralOf('en');

export const authoringLive = {
	/* Live panel. */
	exampleHeading: 'A drawn example',
	panelShort: 'Example',
	toForm: 'Back to the form',
	next: 'Next example',
	nextKeys: 'Keys: Alt and N',
	exampleNumber: ({ n }: { n: number }) => `Example ${String(n)}`,
	noExample: 'No draw fits. The findings say why.',
	exampleFaulty: 'This example cannot be shown yet. The findings say why.',
	exampleWaits: 'The example comes when the document fits. The findings say what is missing.',
	exampleOld: 'This is from before your last change.',
	rightAnswers: 'The right answers',
	answer: 'Right answer',
	cannotBeStated: 'It cannot be stated from this label.',
	working: 'Working',
	allNumbers: 'All numbers of the example',

	/* Inspection. */
	inspectionHeading: 'What many draws show',
	inspecting: ({ n, of }: { n: number; of: number }) => `Inspecting: ${String(n)} of ${String(of)} draws`,
	inspectedOf: ({ count }: { count: number }) => plural(count, { one: 'From 1 draw.', other: `From ${String(count)} draws.` }),
	inspectFailed: 'The inspection stopped. Change something to start it again.',
	solvable: 'Draws that give a problem',
	tries: 'Tries for one problem',
	triesText: ({ value, right }: { value: string; right: string }) => `${value} on average, ${right} at most`,
	balance: 'How they come out',
	results: { passes: 'pass', fails: 'fail', 'cannot-be-shown': 'cannot be shown to hold' },
	failedBy: ({ checks }: { checks: string }) => `Of all draws: ${checks}.`,
	share: ({ value, count }: { value: string; count: number }) => `${value} (${String(count)})`,
	spread: 'Spread of the right answers',
	spreadText: ({ from, first, value, second, right }: { from: string; first: string; value: string; second: string; right: string }) =>
		`from ${from} to ${right}, half of them from ${first} to ${second}, middle ${value}`,
	spreadNone: 'no draw gives a value',
	notStated: ({ count }: { count: number }) => plural(count, { one: 'not to be stated once', other: `not to be stated ${String(count)} times` }),
	alike: 'Slips that fall together',
	alikePair: ({ first, second, value }: { first: string; second: string; value: string }) => `${first}, and ${second}: in ${value} of the tries`,
	rightAnswer: 'the right answer',
	noAlike: 'None.',
	turnedDown: 'Why tries are turned down',

	/* Findings. */
	findingsHeading: 'Findings',
	noFindings: 'Nothing to mend.',
	findingsCount: ({ faults, warnings, notes }: { faults: string; warnings: string; notes: string }) => `${faults}, ${warnings}, ${notes}.`,
	faults: ({ count }: { count: number }) => plural(count, { one: '1 fault', other: `${String(count)} faults` }),
	warnings: ({ count }: { count: number }) => plural(count, { one: '1 warning', other: `${String(count)} warnings` }),
	notes: ({ count }: { count: number }) => plural(count, { one: '1 note', other: `${String(count)} notes` }),
	severity: { fault: 'Fault', warning: 'Warning', note: 'Note' } as Readonly<Record<Severity, string>>,
	goTo: ({ name }: { name: string }) => `Go to: ${name}`,
	alsoGoTo: ({ name }: { name: string }) => `Also: ${name}`,
	showSeed: ({ n }: { n: number }) => `Show example ${String(n)}`,

	/* Where a field stands. */
	fields: {
		whole: 'the document',
		id: 'the id',
		version: 'the version',
		backdrop: 'the site in the drawing',
		units: 'the units',
		people: 'the names of people',
		difficulty: 'how hard it is',
		drivers: 'what makes it hard',
		title: 'the title',
		lead: 'the first two lines',
		body: 'the story',
		places: 'the names of places',
		obstacleNames: 'the names of things below',
		factSentences: 'the sentences for facts',
		draws: 'the ranges',
		decoys: 'the numbers that lead astray',
		constraints: 'what every draw must keep',
		aims: 'how the draws come out',
		equalSlips: 'the slips that are the same',
		asks: 'what is asked',
		rules: 'the rule that holds there',
		practice: 'the practice',
		plan: 'the plan',
		obstacle: 'a thing below'
	},
	inTheLanguage: ({ name, language }: { name: string; language: string }) => `${name}, ${language}`,
	questionNumber: ({ n }: { n: number }) => `question ${String(n)}`,

	/** Why no draw comes out as it should. */
	aimNotMet: {
		never: 'No plan that the ranges give fails by it.',
		'not-alone': 'Plans that fail by it fail by something else too.',
		'turned-down': 'Such plans are turned down for another reason.'
	},

	/** Sites that nobody could build, after "This cannot be:". */
	impossible: {
		'd-ring-off-body': 'the D-ring does not sit between the shoulder blades of such a body.',
		'posture-off-body': 'nobody’s D-ring is there when kneeling.',
		'obstacle-above-surface': 'a thing below stands higher than the walking surface.',
		'connector-reaches-past-lower-level': 'the connector reaches below the lower level.',
		'average-above-peak': 'the average force is above the greatest force.',
		'conditioned-below-dry': 'the wet absorber pulls less than the dry one.',
		'stated-above-elongation': 'the stated deceleration distance is above the elongation.',
		'label-range-turned': 'the least mass on the label is above the greatest.',
		'heights-turned': 'the D-ring is above the head.'
	} as Readonly<Record<ImpossibleSite, string>>
};
