/** The tables that an author chooses from: names alone, the browser needs no more of them before it draws. */
import { ABSORBER_CLASSES, PRACTICE_TABLES, RULE_TABLES, type Requirement } from '#lib/rules/index.ts';
import type { Choices } from './model/choices.ts';

/** Whether a requirement states a greatest value: only such a limit can stand beside a problem as a number. */
function hasGreatest(part: Requirement): boolean {
	if ('all' in part) return part.all.some(hasGreatest);
	if ('any' in part) return part.any.some(hasGreatest);
	return 'max' in part && 'unit' in part.max;
}

/** @returns what can be chosen, in the order in which the tables are offered. */
export function authorChoices(): Choices {
	return {
		rules: RULE_TABLES.map(({ id, jurisdiction, title, limits }) => ({
			id,
			jurisdiction,
			title,
			limits: limits.flatMap((one) => (one.role === 'check' && one.subject === 'free-fall' && hasGreatest(one.require) ? [{ id: one.id, clause: one.clause }] : []))
		})),
		practices: PRACTICE_TABLES.map(({ id, title }) => ({ id, title })),
		absorbers: ABSORBER_CLASSES.map(({ id, title }) => ({ id, title }))
	};
}
