/** Every command in the README does what the README shows. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { command, COMMANDS } from '../../../../src/cli/underfoot/commands.ts';
import { jsonOf } from '../../../../src/cli/underfoot/outcome.ts';
import { ROOT } from '../../../../src/cli/root.ts';

const README = readFileSync(join(ROOT, 'README.md'), 'utf8');
const CALL = 'npm run --silent underfoot -- ';

interface Block {
	readonly language: string;
	readonly text: string;
}

const blocks: readonly Block[] = [...README.matchAll(/^```(\w+)\n([\s\S]*?)^```$/gm)].map(([, language = '', text = '']) => ({ language, text }));

/** The plan that the README shows as PLAN.json: what goes in, not what comes out. */
const plan = blocks.find((block) => block.language === 'json' && block.text.startsWith('{\n\t"system"'));

/** Each command line, with the JSON that the README shows behind it, if any. */
const shown = blocks.flatMap((block, i) => {
	if (block.language !== 'sh') return [];
	const next = blocks[i + 1];
	const lines = block.text.split('\n').filter((line) => line.startsWith(CALL));
	return lines.map((line) => ({ line: line.slice(CALL.length), json: lines.length === 1 && next?.language === 'json' && next !== plan ? next.text : undefined }));
});

/** A command line as a shell splits it. */
function words(line: string): string[] {
	return [...line.matchAll(/"((?:[^"\\]|\\.)*)"|(\S+)/g)].map(([, quoted, bare]) => quoted?.replace(/\\(.)/g, '$1') ?? bare ?? '');
}

/** Shortened output against the whole: every shown key is there with its value, every shown entry in the order shown. */
function isPart(part: unknown, whole: unknown): boolean {
	if (typeof part !== 'object' || part === null) return part === whole;
	if (typeof whole !== 'object' || whole === null) return false;
	if (!Array.isArray(part)) return Object.entries(part).every(([key, value]) => Object.hasOwn(whole, key) && isPart(value, Reflect.get(whole, key)));
	if (!Array.isArray(whole)) return false;
	let from = 0;
	return part.every((one: unknown) => {
		const at = whole.findIndex((entry: unknown, i) => i >= from && isPart(one, entry));
		from = at + 1;
		return at >= 0;
	});
}

describe('the README', () => {
	let folder: string;
	beforeAll(() => {
		folder = mkdtempSync(join(tmpdir(), 'underfoot-readme-'));
		writeFileSync(join(folder, 'PLAN.json'), plan?.text ?? '');
	});
	afterAll(() => rmSync(folder, { recursive: true }));

	it('shows every command', () => {
		expect(new Set(shown.map(({ line }) => words(line)[0]))).toEqual(new Set(['--help', ...Object.keys(COMMANDS)]));
		expect(shown.filter(({ json }) => json !== undefined).length).toBeGreaterThanOrEqual(5);
	});

	// What works on a database is tried elsewhere, on one of its own.
	it.each(shown.filter(({ line }) => !/^(demo|set-up-code|password-code|backup|restore|verify-records|new-signing-key)/.test(line)))('shows what this prints: $line', async ({ line, json }) => {
		const outcome = await command(words(line).map((word) => (word === 'PLAN.json' ? join(folder, word) : word)));
		if (json === undefined) {
			expect(outcome.kind).not.toBe('refused');
			return;
		}
		const printed: unknown = JSON.parse(
			jsonOf(outcome.kind === 'refused' ? { error: outcome.problems } : outcome.kind === 'done' ? outcome.output : {})
		);
		expect(isPart(JSON.parse(json), printed), JSON.stringify(printed, null, 1)).toBe(true);
	});

	it('is compared key by key', () => {
		expect(isPart({ a: [{ b: 1 }, { b: 3 }] }, { a: [{ b: 1 }, { b: 2 }, { b: 3 }], c: 4 })).toBe(true);
		expect(isPart({ a: [{ b: 3 }, { b: 1 }] }, { a: [{ b: 1 }, { b: 3 }] })).toBe(false);
		expect(isPart({ a: 1 }, { a: 2 })).toBe(false);
		expect(isPart({ a: { b: 1 } }, { a: 1 })).toBe(false);
	});
});
