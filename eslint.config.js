import js from '@eslint/js';
import globals from 'globals';
import svelte from 'eslint-plugin-svelte';
import ts from 'typescript-eslint';
import svelteConfig from './svelte.config.js';

const strict = {
	'no-undef': 'off',
	'@typescript-eslint/no-explicit-any': 'error',
	'@typescript-eslint/no-non-null-assertion': 'error',
	'@typescript-eslint/consistent-type-imports': 'error',
	'@typescript-eslint/ban-ts-comment': [
		'error',
		{ 'ts-ignore': true, 'ts-expect-error': true, 'ts-nocheck': true }
	],
	'@typescript-eslint/no-unused-vars': ['error', { argsIgnorePattern: '^_' }],
	eqeqeq: 'error',
	'no-console': 'error'
};

/** Rules that need types: TypeScript files only, svelte-check sees to the components. */
const typed = {
	'@typescript-eslint/no-floating-promises': 'error',
	'@typescript-eslint/no-misused-promises': 'error',
	'@typescript-eslint/await-thenable': 'error',
	'@typescript-eslint/switch-exhaustiveness-check': [
		'error',
		{ considerDefaultExhaustiveForUnions: true }
	],
	'@typescript-eslint/no-unnecessary-type-assertion': 'error'
};

export default ts.config(
	{ ignores: ['build/', '.svelte-kit/', 'node_modules/', 'data/', 'test-results/', 'playwright-report/'] },
	{ linterOptions: { reportUnusedDisableDirectives: 'error', noInlineConfig: true } },
	js.configs.recommended,
	...ts.configs.recommended,
	...svelte.configs.recommended,
	{ languageOptions: { globals: { ...globals.browser, ...globals.node } }, rules: strict },
	{
		files: ['**/*.ts'],
		ignores: ['src/service-worker/**'],
		languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: import.meta.dirname } },
		rules: typed
	},
	{
		files: ['**/*.svelte', '**/*.svelte.ts'],
		languageOptions: { parserOptions: { parser: ts.parser, extraFileExtensions: ['.svelte'], svelteConfig } }
	},
	{ files: ['src/cli/**', '*.config.ts', 'tests/**'], rules: { 'no-console': 'off' } }
);
