import { corePurity } from '../../../../src/cli/lint/core-purity.ts';
import { typescriptTester } from './rule-tester.ts';

const exact = [{ exact: true }];

typescriptTester.run('core-purity', corePurity, {
	valid: [
		"import * as z from 'zod';",
		"import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';",
		{ name: 'a type is no clock', code: 'export function day(at: Date): string { return at.toISOString(); }' },
		{ name: 'a parameter of that name is no clock', code: 'export const later = (performance: number) => performance + 1;' },
		{ name: 'exact arithmetic', code: 'const r = Math.sqrt(a * a + b * b);', options: exact },
		{ name: 'inexact arithmetic where nothing is drawn', code: 'const y = Math.sin(t);' }
	],
	invalid: [
		{ code: "import { tick } from 'svelte';", errors: [{ messageId: 'package' }] },
		{ code: "import { page } from '$app/state';", errors: [{ messageId: 'package' }] },
		{ code: "import { error } from '@sveltejs/kit';", errors: [{ messageId: 'package' }] },
		{ code: "import { readFileSync } from 'node:fs';", errors: [{ messageId: 'package' }] },
		{ code: "import { readFileSync } from 'fs';", errors: [{ messageId: 'package' }] },
		{ code: "export * from 'node:path';", errors: [{ messageId: 'package' }] },
		{ code: "const fs = await import('node:fs');", errors: [{ messageId: 'package' }] },
		{ code: 'const now = Date.now();', errors: [{ messageId: 'surroundings' }] },
		{ code: 'export const f = () => new Date();', errors: [{ messageId: 'surroundings' }] },
		{ code: 'const t = performance.now();', errors: [{ messageId: 'surroundings' }] },
		{ code: 'setTimeout(() => {}, 10);', errors: [{ messageId: 'surroundings' }] },
		{ code: 'const id = crypto.randomUUID();', errors: [{ messageId: 'surroundings' }] },
		{ code: 'const x = Math.random();', errors: [{ messageId: 'random' }] },
		{ code: 'const r = Math.hypot(a, b);', options: exact, errors: [{ messageId: 'inexact' }] },
		{ code: 'const r = a ** b;', options: exact, errors: [{ messageId: 'inexact' }] }
	]
});
