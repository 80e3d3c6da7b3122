import { RuleTester } from 'eslint';
import svelte from 'eslint-plugin-svelte';
import { afterAll, describe, it } from 'vitest';
import ts from 'typescript-eslint';

RuleTester.describe = describe;
RuleTester.it = it;
RuleTester.itOnly = it.only;
Object.assign(RuleTester, { afterAll });

/** Runs a rule over TypeScript sources. */
export const typescriptTester = new RuleTester({ languageOptions: { parser: ts.parser } });

const svelteParser = svelte.configs.base
	.map((config) => config.languageOptions?.parser)
	.find((parser) => parser !== undefined);

/** Runs a rule over components. */
export const svelteTester = new RuleTester({
	languageOptions: { ...(svelteParser && { parser: svelteParser }), parserOptions: { parser: ts.parser } }
});
