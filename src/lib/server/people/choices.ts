import * as z from 'zod';
import { PASS_RULES } from '#lib/mastery/index.ts';
import { RULE_TABLES } from '#lib/rules/index.ts';
import { field } from './fields.ts';
import { LONGEST_CODE } from './code.ts';
import { LONGEST_PASSWORD, passwordFault } from './secret.ts';
import { emailKept } from './staff.ts';

/** What an organisation can choose from. */
export interface Choices {
	readonly rules: readonly { readonly id: string; readonly jurisdiction: string; readonly scope: string }[];
	readonly zones: readonly string[];
	/** Ids; the first is the usual one. */
	readonly passRules: readonly string[];
}

/** Longest e-mail address. @source RFC 5321, 4.5.3.1 (from memory) */
const LONGEST_EMAIL = 254;

const zones: readonly string[] = ['UTC', ...Intl.supportedValuesOf('timeZone').filter((zone) => zone !== 'UTC')];

/** @returns what an organisation can choose from. */
export function choices(): Choices {
	return {
		rules: RULE_TABLES.map(({ id, jurisdiction, scope }) => ({ id, jurisdiction, scope })),
		zones,
		passRules: PASS_RULES.map(({ id }) => id)
	};
}

/** One of a list. */
function listed(ids: readonly string[]) {
	return z.string({ error: 'missing' }).refine((id) => ids.includes(id), { error: 'not-listed' });
}

/** What the page of the settings changes: the pass rule has a page of its own. */
export const CHANGED_FIELDS = {
	organisation: field.name,
	rules: listed(RULE_TABLES.map(({ id }) => id)),
	units: z.enum(['metric', 'us'], { error: 'not-listed' }),
	language: z.enum(['en', 'es'], { error: 'not-listed' }),
	zone: listed(zones)
} as const;

/** The form of an organisation's settings at its set-up: the entries are keys of `Settings`, its name is `organisation`. */
export const SETTINGS_FIELDS = {
	...CHANGED_FIELDS,
	passRule: listed(PASS_RULES.map(({ id }) => id))
} as const;

/** The e-mail of staff, as it is kept. */
export const emailField = z
	.string({ error: 'missing' })
	.max(LONGEST_EMAIL, { error: 'too-long', abort: true })
	.transform(emailKept)
	.pipe(z.string().min(1, { error: 'missing' }).regex(/^[^\s@]+@[^\s@]+$/, { error: 'not-an-email' }));

/** A one-use code, as it was typed. */
export const codeField = z.string({ error: 'missing' }).trim().min(1, { error: 'missing' }).max(LONGEST_CODE, { error: 'code' });

/** A password to be chosen. */
export const newPasswordField = z
	.string({ error: 'missing' })
	.min(1, { error: 'missing' })
	.max(LONGEST_PASSWORD * 4, { error: 'too-long', abort: true })
	.superRefine((text, context) => {
		const problem = passwordProblem(text, []);
		if (problem !== null) context.addIssue({ code: 'custom', message: problem });
	});

/** What is wrong with a password, as a key of the catalogue; null if nothing is. @param own what others know of the person */
export function passwordProblem(text: string, own: readonly string[]): 'password-short' | 'password-weak' | 'too-long' | null {
	switch (passwordFault(text, own)) {
		case 'short':
			return 'password-short';
		case 'weak':
			return 'password-weak';
		case 'long':
			return 'too-long';
		case null:
			return null;
	}
}
