import { expect, it } from 'vitest';
import * as z from 'zod';
import { choices, codeField, emailField, newPasswordField, passwordProblem, SETTINGS_FIELDS } from '#lib/server/people/choices.ts';
import { readForm } from '#lib/server/people/fields.ts';
import { jurisdictionName, LANGUAGES, messages, ruleMessage } from '#lib/text/index.ts';

const GOOD = { organisation: 'Harrow Bridges', rules: 'us-construction', units: 'us', language: 'en', zone: 'America/Denver', passRule: 'staged' };

function form(entries: Readonly<Record<string, string>>): FormData {
	const data = new FormData();
	for (const [name, value] of Object.entries(entries)) data.set(name, value);
	return data;
}

it('every rule table and every pass rule that can be chosen has its words', async () => {
	const { rules, passRules, zones } = choices();
	expect(rules.length).toBeGreaterThan(5);
	expect(zones).toContain('Europe/Oslo');
	for (const language of LANGUAGES) {
		const m = await messages(language);
		expect(Object.keys(m.people.passRules).sort()).toEqual([...passRules].sort());
		for (const { jurisdiction, scope } of rules) expect(`${jurisdictionName(m, jurisdiction)} ${ruleMessage(m, scope)}`).toMatch(/\S \S/);
	}
});

it('settings are read when each is one of the list', () => {
	expect(readForm(form(GOOD), z.object(SETTINGS_FIELDS))).toEqual({ kind: 'read', value: GOOD });
});

it.each([
	['organisation', '  ', 'missing'],
	['organisation', '\u200e!?', 'not-a-name'],
	['organisation', 'x'.repeat(201), 'too-long'],
	['rules', 'us', 'not-listed'],
	['rules', '__proto__', 'not-listed'],
	['units', 'both', 'not-listed'],
	['language', 'fr', 'not-listed'],
	['zone', 'Mars/Base', 'not-listed'],
	['passRule', 'lesson', 'not-listed']
])('%s “%s” is refused: %s', (name, value, problem) => {
	expect(readForm(form({ ...GOOD, [name]: value }), z.object(SETTINGS_FIELDS))).toEqual({ kind: 'refused', problems: { [name]: problem } });
});

it('nothing at all is refused field by field', () => {
	const read = readForm(form({}), z.object({ ...SETTINGS_FIELDS, code: codeField, email: emailField, password: newPasswordField }));
	expect(read.kind === 'refused' ? Object.keys(read.problems).sort() : []).toEqual(['code', 'email', 'language', 'organisation', 'passRule', 'password', 'rules', 'units', 'zone']);
});

it.each([
	[' Helle@Example.ORG ', 'helle@example.org'],
	['helle@intranet', 'helle@intranet']
])('the e-mail “%s” is kept as %s', (typed, kept) => {
	expect(emailField.parse(typed)).toBe(kept);
});

it.each([
	['', 'missing'],
	['helle', 'not-an-email'],
	['a b@example.org', 'not-an-email'],
	[`${'x'.repeat(250)}@example.org`, 'too-long']
])('the e-mail “%s” is refused: %s', (typed, problem) => {
	expect(emailField.safeParse(typed).error?.issues[0]?.message).toBe(problem);
});

it('a password is refused for its length, its ease, and for being what everybody knows', () => {
	expect(newPasswordField.safeParse('short').error?.issues[0]?.message).toBe('password-short');
	expect(newPasswordField.safeParse('z'.repeat(30)).error?.issues[0]?.message).toBe('password-weak');
	expect(newPasswordField.safeParse(`${'three cranes '.repeat(20)}`).error?.issues[0]?.message).toBe('too-long');
	expect(passwordProblem('harrow bridges ltd', ['Harrow Bridges Ltd'])).toBe('password-weak');
	expect(passwordProblem('three cranes by the river', ['Harrow Bridges Ltd'])).toBeNull();
});
