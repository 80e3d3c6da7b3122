import type { Language } from '#lib/quantity/index.ts';

/** The forms of a counted word; `other` is for whatever a language does not tell apart. */
export type PluralForms = Readonly<{ other: string } & Partial<Record<Exclude<Intl.LDMLPluralRule, 'other'>, string>>>;

/**
 * @returns a chooser of plural forms of a language: (3, { one: '1 answer waits', other: '3 answers wait' }).
 */
export function pluralOf(language: Language): (count: number, forms: PluralForms) => string {
	const rules = new Intl.PluralRules(language);
	return (count, forms) => forms[rules.select(count)] ?? forms.other;
}
