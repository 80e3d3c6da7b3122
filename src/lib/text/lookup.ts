/** Messages whose key comes with data: from a formula, a check, a file of shared/. */
import type { Check, FixedGivenId, GivenId } from '#lib/arrest/index.ts';
import type { FirstMessages } from './en/first.ts';
import type { Messages } from './en/index.ts';
import type { CheckText } from './parts.ts';

/** The own value of a key; never one that every object inherits. */
function own<T>(of: Readonly<Record<string, T>>, key: string): T | undefined {
	return Object.hasOwn(of, key) ? of[key] : undefined;
}

/** @returns the short name of a term by its role; undefined for an obstacle, whose name the scenario has. */
export function termName(messages: FirstMessages, role: string): string | undefined {
	return own<string>(messages.terms, role);
}

/** @returns the texts of a check: its own, or those of its topic for a limit of a rule table. */
export function checkText(messages: Messages, check: Pick<Check, 'id' | 'topic'>): CheckText {
	return own<CheckText>(messages.ownChecks, check.id) ?? messages.ruleChecks[check.topic];
}

/**
 * @param key as a rule table writes it: `rules.note.…` or `rules.scope.…`.
 * @throws RangeError on a key that the catalogue does not have.
 */
export function ruleMessage(messages: Messages, key: string): string {
	const found = key.startsWith('rules.note.')
		? own<string>(messages.rules.note, key.slice('rules.note.'.length))
		: key.startsWith('rules.scope.')
			? own<string>(messages.rules.scope, key.slice('rules.scope.'.length))
			: undefined;
	if (found === undefined) throw new RangeError(`the message catalogue has no "${key}"`);
	return found;
}

/** @returns the name of a rule table's jurisdiction. @throws RangeError on one that the catalogue does not have. */
export function jurisdictionName(messages: FirstMessages, jurisdiction: string): string {
	const found = own<string>(messages.jurisdictions, jurisdiction);
	if (found === undefined) throw new RangeError(`the message catalogue has no jurisdiction "${jurisdiction}"`);
	return found;
}

/** @returns the name of a field of equipment labels; undefined for one that is not in shared/equipment. */
export function labelFieldName(messages: Messages, field: string): string | undefined {
	return own<string>(messages.labelFields, field);
}

/** How a given is named, by its id. */
export interface GivenNames {
	readonly name: string;
	readonly the: string;
	readonly what: string;
}

/**
 * @param thing the obstacle's name with its article, for an obstacle's top or distance; not looked at else.
 * @returns a given's names; those of an obstacle are made of the obstacle's own name.
 */
export function givenNames(messages: FirstMessages, id: GivenId, thing: string): GivenNames {
	const fixed = own<FirstMessages['givens'][FixedGivenId]>(messages.givens, id);
	if (fixed !== undefined) return fixed;
	const { name, the, what } = id.startsWith('obstacleAside_') ? messages.obstacleAside : messages.obstacleTop;
	return { name: name({ thing }), the: the({ thing }), what: what({ thing }) };
}
