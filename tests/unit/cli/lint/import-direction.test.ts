import { importDirection } from '../../../../src/cli/lint/import-direction.ts';
import { typescriptTester } from './rule-tester.ts';

const at = (path: string) => `${process.cwd()}/${path}`;

typescriptTester.run('import-direction', importDirection, {
	valid: [
		{
			name: 'a folder above imports the face of one below',
			filename: at('src/lib/arrest/free-fall.ts'),
			code: "import { add } from '#lib/expression/index.ts';"
		},
		{
			name: 'inside a folder, files import each other',
			filename: at('src/lib/arrest/free-fall.ts'),
			code: "import { x } from './reach.ts';"
		},
		{
			name: 'a folder that needs types alone imports types',
			filename: at('src/lib/mastery/completion.ts'),
			code: "import type { Grade } from '#lib/grading/index.ts';"
		},
		{
			name: 'rules reads the shared facts',
			filename: at('src/lib/rules/load.ts'),
			code: "import table from '#shared/rules/us.json' with { type: 'json' };"
		},
		{
			name: 'the schema of documents is a face of its own',
			filename: at('src/lib/scenario/schema.ts'),
			code: "import { planSchema } from '#lib/arrest/schema.ts';"
		},
		{
			name: 'a folder reads the shared file that is its own',
			filename: at('src/lib/arrest/schema.ts'),
			code: "import plausible from '#shared/plausible.json' with { type: 'json' };"
		},
		{
			name: 'routes import any folder',
			filename: at('src/routes/learn/+page.ts'),
			code: "import { grade } from '#lib/grading/index.ts';"
		},
		{
			name: 'packages are no matter of this rule',
			filename: at('src/lib/quantity/unit.ts'),
			code: "import * as z from 'zod';"
		},
		{
			name: 'a unit test looks inside',
			filename: at('tests/unit/arrest/free-fall.test.ts'),
			code: "import { x } from '#lib/arrest/free-fall.ts';"
		}
	],
	invalid: [
		{
			name: 'a folder below imports one above',
			filename: at('src/lib/arrest/verdict.ts'),
			code: "import { slips } from '#lib/slips/index.ts';",
			errors: [
				{
					message:
						'arrest may not import slips: slips imports arrest, not the other way round: move what both need into arrest or below, or pass it in. (arrest stands on: quantity, expression, rules.)'
				}
			]
		},
		{
			name: 'slips stands between arrest and scenario',
			filename: at('src/lib/slips/catalogue.ts'),
			code: "export * from '#lib/scenario/index.ts';",
			errors: [{ messageId: 'direction' }]
		},
		{
			name: 'the screen does not enter the core',
			filename: at('src/lib/grading/grade.ts'),
			code: "const scene = await import('#lib/scene/index.ts');",
			errors: [{ messageId: 'direction' }]
		},
		{
			name: 'two folders that know nothing of each other',
			filename: at('src/lib/server/db.ts'),
			code: "import { Button } from '#lib/ui/index.ts';",
			errors: [{ messageId: 'direction' }]
		},
		{
			name: 'an outsider reaches into a folder',
			filename: at('src/routes/learn/+page.ts'),
			code: "import { x } from '#lib/arrest/free-fall.ts';",
			errors: [{ messageId: 'face' }]
		},
		{
			name: 'a relative path leads into another folder',
			filename: at('src/lib/arrest/free-fall.ts'),
			code: "import { x } from '../quantity/index.ts';",
			errors: [{ messageId: 'relative' }]
		},
		{
			name: 'an insider goes through the face',
			filename: at('src/lib/arrest/free-fall.ts'),
			code: "import { x } from '#lib/arrest/index.ts';",
			errors: [{ messageId: 'own' }]
		},
		{
			name: 'values where only types may be known',
			filename: at('src/lib/mastery/completion.ts'),
			code: "import { grade } from '#lib/grading/index.ts';",
			errors: [{ messageId: 'typesOnly' }]
		},
		{
			name: 'shared facts without their citation',
			filename: at('src/lib/arrest/verdict.ts'),
			code: "import table from '#shared/rules/us.json' with { type: 'json' };",
			errors: [
				{
					message:
						'arrest may not read shared/rules/us.json; rules does, and gives it out with its citation (src/cli/lint/folders.ts).'
				}
			]
		},
		{
			name: 'a route reads a shared file',
			filename: at('src/routes/method/+page.ts'),
			code: "import marking from '#shared/marking.json' with { type: 'json' };",
			errors: [{ messageId: 'shared' }]
		},
		{
			name: 'the library imports a route',
			filename: at('src/lib/scene/sheet.ts'),
			code: "import { x } from '../../routes/learn/page.ts';",
			errors: [{ messageId: 'up' }]
		},
		{
			name: 'a folder that the table does not know',
			filename: at('src/lib/helpers/text.ts'),
			code: 'export const x = 1;',
			errors: [{ messageId: 'unknown' }]
		}
	]
});
