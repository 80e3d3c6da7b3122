/** Ids that stand in records, in words. What a later version of the program no longer knows is shown as it stands. */
import { COURSE } from '#lib/course/index.ts';
import { practiceTable, ruleTable } from '#lib/rules/index.ts';
import { jurisdictionName, ruleMessage, type Messages } from '#lib/text/index.ts';

/** @returns the title of a course. */
export function courseName(m: Messages, id: string): string {
	return id === COURSE.id ? m.lessons.course.title : id;
}

/** @returns the name of a system scope: of our own course by the catalogue; what an employer wrote, as it was written. */
export function scopeName(m: Messages, scope: string): string {
	return scope === COURSE.scope ? m.lessons.course.scope : scope;
}

/** @returns the title of a lesson. */
export function lessonName(m: Messages, id: string): string {
	return Object.entries(m.lessons.of).find(([key]) => key === id)?.[1].title ?? id;
}

/** @returns what a course does not treat. */
export function notCoveredName(m: Messages, id: string): string {
	return Object.entries(m.lessons.course.notCovered).find(([key]) => key === id)?.[1] ?? id;
}

/** @returns the names of a rule table and of a practice table. */
export function tableNames(m: Messages, rules: string, practice: string): string {
	const [table, customs] = [ruleTable(rules), practiceTable(practice)];
	const law = table === undefined ? rules : m.people.ruleTable({ place: jurisdictionName(m, table.jurisdiction), scope: ruleMessage(m, table.scope) });
	return `${law}; ${customs?.title ?? practice}`;
}
