/** The same seeds give the same problems in Node and in Chromium, to the last bit, and as frozen. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { build } from 'vite';
import { shippedScenarios } from '../../src/lib/course/shipped.ts';
import { ROOT } from '../../src/cli/root.ts';
import { drawnRecords, type FrozenDraws } from '../frozen/drawn-record.ts';

/** Beyond the frozen seeds: both engines are asked for these as well. */
const LAST = 59;

test('draws are the same in Node, in Chromium and as frozen', async ({ page }) => {
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-draws-'));
	try {
		await build({
			configFile: false,
			logLevel: 'error',
			root: ROOT,
			build: {
				outDir: folder,
				target: 'es2022',
				lib: { entry: join(ROOT, 'tests/frozen/in-browser.ts'), formats: ['iife'], name: 'draws', fileName: () => 'draws.js' }
			}
		});
		await page.addScriptTag({ path: join(folder, 'draws.js') });
	} finally {
		rmSync(folder, { recursive: true });
	}
	for (const scenario of shippedScenarios()) {
		const inChromium = await page.evaluate(
			([text, last]) => globalThis.underfootDraws?.(text, 0, last),
			[JSON.stringify(scenario), LAST] as const
		);
		expect(inChromium, scenario.id).toBe(JSON.stringify(drawnRecords(scenario, 0, LAST)));
		const file = join(ROOT, `tests/frozen/draws/${scenario.id}-v${scenario.version}.json`);
		const frozen: FrozenDraws = JSON.parse(readFileSync(file, 'utf8'));
		const drawn: FrozenDraws = JSON.parse(inChromium ?? '');
		expect(drawn.draws.slice(0, frozen.draws.length), scenario.id).toEqual(frozen.draws);
	}
});
