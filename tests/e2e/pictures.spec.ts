/** The same seeds give the same pictures in Node and in Chromium, to the last bit, and as frozen. */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';
import { build } from 'vite';
import { ROOT } from '../../src/cli/root.ts';
import { FINDING_TASKS } from '../../src/lib/findings/index.ts';
import { drawnPictures, type FrozenPictures } from '../frozen/drawn-pictures.ts';

/** Beyond the frozen seeds: both engines are asked for these as well. */
const LAST = 199;

test('pictures are the same in Node, in Chromium and as frozen', async ({ page }) => {
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-pictures-'));
	try {
		await build({
			configFile: false,
			logLevel: 'error',
			root: ROOT,
			build: {
				outDir: folder,
				target: 'es2022',
				lib: { entry: join(ROOT, 'tests/frozen/pictures-in-browser.ts'), formats: ['iife'], name: 'pictures', fileName: () => 'pictures.js' }
			}
		});
		await page.addScriptTag({ path: join(folder, 'pictures.js') });
	} finally {
		rmSync(folder, { recursive: true });
	}
	for (const { id, version } of FINDING_TASKS) {
		const inChromium = await page.evaluate(([task, last]) => globalThis.underfootPictures?.(task, 0, last), [id, LAST] as const);
		expect(inChromium, id).toBe(JSON.stringify(drawnPictures(id, 0, LAST)));
		const file = join(ROOT, `tests/frozen/pictures/${id}-v${version}.json`);
		const frozen: FrozenPictures = JSON.parse(readFileSync(file, 'utf8'));
		const drawn: FrozenPictures = JSON.parse(inChromium ?? '');
		expect(drawn.pictures.slice(0, frozen.pictures.length), id).toEqual(frozen.pictures);
	}
});
