import { importForm } from '../../../../src/cli/lint/import-form.ts';
import { typescriptTester } from './rule-tester.ts';

typescriptTester.run('import-form', importForm, {
	valid: [
		"import { x } from './x.ts';",
		"import Sheet from '#lib/scene/Sheet.svelte';",
		"import type { PageLoad } from './$types';",
		"import table from '#shared/rules/us.json' with { type: 'json' };",
		"import * as z from 'zod';"
	],
	invalid: [
		{ code: "import { x } from './x';", errors: [{ messageId: 'extension' }] },
		{ code: "export { x } from '#lib/x/index';", errors: [{ messageId: 'extension' }] },
		{ code: "import table from '#shared/rules/us.json';", errors: [{ messageId: 'json' }] }
	]
});
