/** Own scenarios: the list, the authoring page, and what inspecting finds. */
import { authoringFindings } from './authoring-findings.ts';
import { authoringImport, authoringList } from './authoring-list.ts';
import { authoringPage } from './authoring-page.ts';
import { authoringProblems } from './authoring-problems.ts';

export const authoring = {
	title: 'Scenarios',
	list: authoringList,
	importing: authoringImport,
	page: authoringPage,
	findings: authoringFindings,
	/** What does not fit the schema. */
	problems: authoringProblems
};
