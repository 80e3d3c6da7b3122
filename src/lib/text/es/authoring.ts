import type { authoring as english } from '../en/authoring.ts';
import { authoringFindings } from './authoring-findings.ts';
import { authoringImport, authoringList } from './authoring-list.ts';
import { authoringPage } from './authoring-page.ts';
import { authoringProblems } from './authoring-problems.ts';

export const authoring: typeof english = {
	title: 'Escenarios',
	list: authoringList,
	importing: authoringImport,
	page: authoringPage,
	findings: authoringFindings,
	/** What does not fit the schema. */
	problems: authoringProblems
};
