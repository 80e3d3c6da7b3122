import { numericLimit } from '../../../../src/cli/lint/numeric-limit.ts';
import { typescriptTester } from './rule-tester.ts';

typescriptTester.run('numeric-limit', numericLimit, {
	valid: [
		'const half = 0.5 * x + 1 - 2 * y;',
		'const back = -1;',
		{ name: 'an index', code: 'const third = parts[3];' },
		{ name: 'scaling by a power of ten', code: 'const mm = Math.round(metres * 1000) / 1000;' },
		{ name: 'how close counts as equal', code: 'const same = difference < 1e-9;' },
		{ name: 'how a text is written', code: 'const text = value.toFixed(3).padStart(8);' },
		{ name: 'how long a list may be', code: 'const schema = z.array(item).min(3).max(40);' },
		{ name: 'how long a text may be', code: 'const schema = z.strictObject({ id: z.string().trim().max(64) });' },
		{ name: 'how many there may be', code: 'const schema = z.int().min(1).max(100);' },
		{ name: 'a type', code: 'type Count = 3 | 4;' },
		{
			name: 'a fact with its source',
			code: '/** Standard gravity, m/s².\n * @source 3rd CGPM (1901), resolution 2\n */\nexport const G = 9.80665;'
		},
		{
			name: 'a choice with its reason',
			code: '/** How slips are weighed. @reason the author’s guess until answers say more */\nconst TIERS = { common: 3, rare: 7 };'
		}
	],
	invalid: [
		{ name: 'a limit in a comparison', code: 'if (freeFall > 1.8) refuse();', errors: [{ messageId: 'bare' }] },
		{ name: 'a round limit in a comparison', code: 'const heavy = mass > 100;', errors: [{ messageId: 'bare' }] },
		{ name: 'a margin added', code: 'const needed = sum + 0.6;', errors: [{ messageId: 'bare' }] },
		{ name: 'a factor that is no power of ten', code: 'const short = stated * 0.75;', errors: [{ messageId: 'bare' }] },
		{ name: 'a constant without a docstring', code: 'const LIMIT = 6000;', errors: [{ messageId: 'bare' }] },
		{
			name: 'a docstring that gives no account',
			code: '/** The greatest free fall, m. */\nconst LIMIT = 1.8;',
			errors: [{ messageId: 'account' }]
		},
		{
			name: 'an account that says nothing',
			code: '/** @reason ok */\nconst LIMIT = 1.8;',
			errors: [{ messageId: 'account' }]
		},
		{
			name: 'a documented function does not cover the numbers in it',
			code: '/** @source EN 355:2002, clause 4.4 */\nfunction check(x) { return x < 6000; }',
			errors: [{ messageId: 'bare' }]
		},
		{
			name: 'a plausible range in a schema',
			code: 'const mass = z.number().max(140);',
			errors: [{ messageId: 'bare' }]
		}
	]
});
