/** What holds for a page whatever is on it. */
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/** The narrowest phone, on which all of it is hardest. */
const NARROWEST = { width: 320, height: 844 };

export interface Looked {
	/** What the page shows, for whoever reads that it does not hold. */
	readonly state?: string;
	/** In which screens; the narrowest phone, unless the state hangs on the screen that is there. */
	readonly screens?: readonly ('narrowest' | 'as it is')[];
	/** Whether every target has to be as large as a finger. */
	readonly targets?: boolean;
}

/** Nothing that axe finds, nothing wider than the screen, nothing unsaid; where it is asked for, no target too small. Leaves the screen as it was. */
export async function expectWellMade(page: Page, { state = page.url(), screens = ['narrowest'], targets = false }: Looked = {}): Promise<void> {
	const before = page.viewportSize();
	for (const screen of screens) {
		if (screen === 'narrowest') await page.setViewportSize(NARROWEST);
		const { violations } = await new AxeBuilder({ page }).analyze();
		expect(violations.map((one) => `${one.id}: ${one.nodes.map((node) => node.target.join(' ')).slice(0, 3).join(', ')}`), `${state}, ${screen}`).toEqual([]);
		expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth), `${state}, ${screen}: wider than the screen`).toBeLessThanOrEqual(0);
		if (targets) expect(await smallTargets(page), `${state}, ${screen}: small targets`).toEqual([]);
		if (screen === 'narrowest' && before !== null) await page.setViewportSize(before);
	}
	await expect(page.locator('body')).not.toContainText(/\b(undefined|NaN|null)\b/);
}

/** Links, buttons and fields of the page that are lower than a finger. A label is a target where it holds its box. */
async function smallTargets(page: Page): Promise<readonly string[]> {
	return page.evaluate(() =>
		[...document.querySelectorAll('main a, main button, main label, main summary, main select, main input[type=text]')]
			.filter((one) => one.getClientRects().length > 0 && one.getBoundingClientRect().height < 43.5 && (one.tagName !== 'LABEL' || one.querySelector('input') !== null))
			.map((one) => `${one.tagName} ${one.id} ${one.textContent.trim()}`)
	);
}
