/**
 * What the source folders may know of each other. This table is the design's "who may import whom"; the
 * lint rules read it, and DEVELOPERS.md tells it in words.
 */

/** How much of another folder may be imported: its values and types, or its types alone. */
export type Reach = 'values' | 'types';

/** For each folder of src/lib: the folders that it may import, from the ground up. */
export const MAY_IMPORT: Readonly<Record<string, Readonly<Record<string, Reach>>>> = {
	quantity: {},
	expression: { quantity: 'values' },
	rules: { quantity: 'values' },
	arrest: { quantity: 'values', expression: 'values', rules: 'values' },
	slips: { quantity: 'values', expression: 'values', rules: 'values', arrest: 'values' },
	scenario: {
		quantity: 'values',
		expression: 'values',
		rules: 'values',
		arrest: 'values',
		slips: 'values'
	},
	grading: {
		quantity: 'values',
		expression: 'values',
		rules: 'values',
		arrest: 'values',
		slips: 'values',
		scenario: 'values'
	},
	findings: { quantity: 'values', expression: 'values', arrest: 'values', scenario: 'values' },
	mastery: { grading: 'types' },
	course: { rules: 'values', arrest: 'values', scenario: 'values', findings: 'values', mastery: 'types' },
	records: { mastery: 'values' },
	flow: { scenario: 'values', grading: 'values', findings: 'values', mastery: 'values', course: 'values' },
	text: {
		quantity: 'types',
		expression: 'types',
		rules: 'types',
		arrest: 'types',
		slips: 'types',
		scenario: 'types',
		grading: 'types',
		findings: 'types',
		mastery: 'types',
		course: 'types',
		records: 'types',
		flow: 'types'
	},
	ui: { quantity: 'values', text: 'values' },
	scene: {
		quantity: 'values',
		expression: 'values',
		arrest: 'values',
		scenario: 'values',
		findings: 'values',
		text: 'values',
		ui: 'values'
	},
	paper: { scene: 'values' },
	server: {
		quantity: 'values',
		expression: 'values',
		rules: 'values',
		arrest: 'values',
		slips: 'values',
		scenario: 'values',
		grading: 'values',
		findings: 'values',
		mastery: 'values',
		course: 'values',
		records: 'values',
		flow: 'values',
		text: 'values'
	}
};

/**
 * By which files a folder is entered from outside. schema.ts is a face of its own where there is one: it holds
 * the zod schema of the folder's documents, and the browser, which needs none, must not load it by index.ts.
 * So does shipped.ts of course, which parses the shipped scenarios by that schema. print.ts of scene is the geometry of
 * the drawings alone: paper draws it too, and index.ts brings the components along.
 */
export const FACES: readonly string[] = ['index.ts', 'schema.ts', 'shipped.ts', 'print.ts', 'sheet.css'];

/**
 * What each folder reads in shared/, as beginnings of paths. Limits of law, practice and equipment are read by
 * rules alone, so that each leaves with its citation.
 */
export const READS_SHARED: Readonly<Record<string, readonly string[]>> = {
	rules: ['rules/', 'practice/', 'equipment/', 'records/'],
	arrest: ['plausible.json'],
	scenario: ['marking.json', 'usual.json']
};

/** The folders that run anywhere: no screen framework, no Node, no clock, no chance. */
export const CORE: readonly string[] = [
	'quantity',
	'expression',
	'rules',
	'arrest',
	'slips',
	'scenario',
	'grading',
	'findings',
	'mastery',
	'course',
	'records',
	'flow',
	'text'
];

/** The folders whose numbers must come out the same in every engine, because draws and grades hang on them. */
export const EXACT: readonly string[] = [
	'quantity',
	'expression',
	'rules',
	'arrest',
	'slips',
	'scenario'
];

/** The folders in which a bare number may be a limit that belongs into shared/. */
export const NO_LIMITS: readonly string[] = [
	'expression',
	'rules',
	'arrest',
	'slips',
	'scenario',
	'grading',
	'records',
	'mastery'
];
