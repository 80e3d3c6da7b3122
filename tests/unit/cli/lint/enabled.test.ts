import { ESLint } from 'eslint';
import { describe, expect, it } from 'vitest';
import { CORE, EXACT, NO_LIMITS } from '../../../../src/cli/lint/folders.ts';

const eslint = new ESLint();

/** The setting of a rule for a file: its severity (2 is an error) and options. */
async function setting(file: string, rule: string): Promise<unknown> {
	const config: { rules?: Record<string, unknown> } = await eslint.calculateConfigForFile(file);
	return config.rules?.[rule];
}

async function severity(file: string, rule: string): Promise<unknown> {
	const entry = await setting(file, rule);
	return Array.isArray(entry) ? entry[0] : entry;
}

describe('the lint configuration', () => {
	it.each([...CORE])('keeps src/lib/%s pure', async (folder) => {
		expect(await severity(`src/lib/${folder}/some.ts`, 'underfoot/core-purity')).toBe(2);
	});

	it.each([...EXACT])('keeps arithmetic exact in src/lib/%s', async (folder) => {
		expect(await setting(`src/lib/${folder}/some.ts`, 'underfoot/core-purity')).toEqual([
			2,
			{ exact: true }
		]);
	});

	it.each([...NO_LIMITS])('looks for limits in src/lib/%s', async (folder) => {
		expect(await setting(`src/lib/${folder}/some.ts`, 'underfoot/numeric-limit')).toEqual([2]);
	});

	it.each(['src/lib/arrest/some.ts', 'src/lib/scene/Some.svelte', 'src/routes/+page.ts', 'src/cli/start.ts'])(
		'holds directions and form of imports in %s',
		async (file) => {
			expect(await setting(file, 'underfoot/import-direction')).toEqual([2]);
			expect(await setting(file, 'underfoot/import-form')).toEqual([2]);
		}
	);

	it.each(['src/lib/scene/Some.svelte', 'src/routes/+page.svelte'])('keeps words out of %s', async (file) => {
		expect(await setting(file, 'underfoot/no-words-in-markup')).toEqual([2]);
	});

	it.each([
		'@typescript-eslint/no-explicit-any',
		'@typescript-eslint/no-non-null-assertion',
		'@typescript-eslint/no-floating-promises',
		'@typescript-eslint/switch-exhaustiveness-check',
		'@typescript-eslint/consistent-type-imports'
	])('makes %s an error', async (rule) => {
		expect(await severity('src/lib/arrest/some.ts', rule)).toBe(2);
	});

	it('lets no comment switch a rule off', async () => {
		const [result] = await eslint.lintText('/* eslint-disable */ console.log(1);', {
			filePath: 'svelte.config.js'
		});
		expect(result?.messages.map((message) => message.ruleId)).toContain('no-console');
	});
});
