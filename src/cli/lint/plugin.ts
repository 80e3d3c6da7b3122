import type { ESLint } from 'eslint';
import { corePurity } from './core-purity.ts';
import { importDirection } from './import-direction.ts';
import { importForm } from './import-form.ts';
import { noWordsInMarkup } from './no-words-in-markup.ts';
import { numericLimit } from './numeric-limit.ts';

/** The project's own lint rules, named `underfoot/…` in eslint.config.js. */
export const underfoot: ESLint.Plugin = {
	meta: { name: 'underfoot' },
	rules: {
		'import-direction': importDirection,
		'import-form': importForm,
		'core-purity': corePurity,
		'numeric-limit': numericLimit,
		'no-words-in-markup': noWordsInMarkup
	}
};
