import js from '@eslint/js';
import { defineConfig } from 'eslint/config';
import globals from 'globals';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';
import { CORE, EXACT, NO_LIMITS } from './src/cli/lint/folders.ts';
import { underfoot } from './src/cli/lint/plugin.ts';
import svelteConfig from './svelte.config.js';

/** @param {readonly string[]} folders names of folders in src/lib */
const inLib = (folders) => folders.map((folder) => `src/lib/${folder}/**`);

export default defineConfig(
	{
		ignores: ['build/', '.svelte-kit/', 'data/', 'test-results/', 'playwright-report/']
	},
	// No comment switches a rule off: a rule that is wrong somewhere is changed here.
	{ linterOptions: { noInlineConfig: true } },
	js.configs.recommended,
	...ts.configs.recommended,
	...svelte.configs.recommended,
	{
		languageOptions: { globals: { ...globals.browser, ...globals.node } },
		rules: {
			'no-undef': 'off',
			'no-console': 'error',
			eqeqeq: 'error',
			'@typescript-eslint/no-explicit-any': 'error',
			'@typescript-eslint/no-non-null-assertion': 'error',
			'@typescript-eslint/consistent-type-imports': 'error',
			'@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
			'@typescript-eslint/ban-ts-comment': [
				'error',
				{ 'ts-ignore': true, 'ts-expect-error': true, 'ts-nocheck': true }
			]
		}
	},
	{
		// Rules that need types. Components are left to svelte-check: linting them with types is slow.
		files: ['**/*.ts'],
		ignores: ['src/service-worker/**'],
		languageOptions: {
			parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname }
		},
		rules: {
			'@typescript-eslint/no-floating-promises': 'error',
			'@typescript-eslint/no-misused-promises': 'error',
			'@typescript-eslint/await-thenable': 'error',
			'@typescript-eslint/no-unnecessary-type-assertion': 'error',
			'@typescript-eslint/switch-exhaustiveness-check': [
				'error',
				{ considerDefaultExhaustiveForUnions: true }
			]
		}
	},
	{
		files: ['**/*.svelte', '**/*.svelte.ts'],
		languageOptions: {
			parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig }
		}
	},
	{
		// These speak to whoever runs them: a terminal, or the server's log.
		files: ['src/cli/**', 'src/hooks.server.ts', 'src/lib/server/exports/response.ts', 'tests/**', '*.config.ts'],
		rules: { 'no-console': 'off' }
	},
	{
		files: ['src/**/*.ts', 'src/**/*.svelte', 'tests/**/*.ts'],
		plugins: { underfoot },
		rules: { 'underfoot/import-direction': 'error', 'underfoot/import-form': 'error' }
	},
	{ files: inLib(CORE), plugins: { underfoot }, rules: { 'underfoot/core-purity': 'error' } },
	{
		files: inLib(EXACT),
		// The playback's pendulum and spring: shown, never graded or drawn from.
		ignores: ['src/lib/arrest/simulat*'],
		plugins: { underfoot },
		rules: { 'underfoot/core-purity': ['error', { exact: true }] }
	},
	{ files: inLib(NO_LIMITS), plugins: { underfoot }, rules: { 'underfoot/numeric-limit': 'error' } },
	{
		// Its address comes resolved from the page that uses it.
		files: ['src/lib/ui/Button.svelte'],
		rules: { 'svelte/no-navigation-without-resolve': 'off' }
	},
	{
		files: ['src/**/*.svelte'],
		plugins: { underfoot },
		rules: { 'underfoot/no-words-in-markup': 'error' }
	}
);
