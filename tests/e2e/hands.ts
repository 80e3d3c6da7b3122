/** How somebody uses a page: by touch or mouse, or by keyboard alone. */
import { expect, type Locator, type Page } from '@playwright/test';

export interface Hands {
	/** Presses a button, or follows a link. */
	readonly press: (target: Locator) => Promise<void>;
	readonly write: (field: Locator, text: string) => Promise<void>;
	/** Chooses one of several. */
	readonly choose: (radio: Locator) => Promise<void>;
	readonly tick: (box: Locator) => Promise<void>;
}

/** Fingers on a screen. */
export const touch: Hands = {
	press: (target) => target.tap(),
	write: (field, text) => field.fill(text),
	choose: (radio) => radio.check(),
	tick: (box) => box.check()
};

/** A mouse, and keys for what is written. */
export const mouse: Hands = { ...touch, press: (target) => target.click() };

/** @reason no page of the course has as many places that take the focus. */
const MOST_TABS = 200;

/** The keyboard alone: every place is reached by the tab key. */
export function keyboard(page: Page): Hands {
	async function reach(target: Locator): Promise<void> {
		await expect(target).toBeEnabled();
		for (let i = 0; i < MOST_TABS; i += 1) {
			const where = await target.evaluate((wanted) => {
				const now = document.activeElement;
				if (now === wanted) return 'there';
				// Of a group of radio buttons one takes the focus; the arrows move within.
				if (wanted instanceof HTMLInputElement && now instanceof HTMLInputElement && wanted.type === 'radio' && now.type === 'radio' && now.name === wanted.name) return 'there';
				if (now === null || now === document.body) return 'ahead';
				return (now.compareDocumentPosition(wanted) & Node.DOCUMENT_POSITION_PRECEDING) > 0 ? 'behind' : 'ahead';
			});
			if (where === 'there') return;
			await page.keyboard.press(where === 'behind' ? 'Shift+Tab' : 'Tab');
		}
		throw new Error(`the keyboard never reaches ${String(target)}`);
	}
	return {
		async press(target) {
			await reach(target);
			await page.keyboard.press('Enter');
		},
		async write(field, text) {
			await reach(field);
			await page.keyboard.press('ControlOrMeta+a');
			await page.keyboard.type(text);
		},
		async choose(radio) {
			await reach(radio);
			if (await radio.evaluate((wanted) => document.activeElement === wanted)) await page.keyboard.press('Space');
			for (let i = 0; i < MOST_TABS && !(await radio.isChecked()); i += 1) await page.keyboard.press('ArrowDown');
			await expect(radio).toBeChecked();
		},
		async tick(box) {
			await reach(box);
			if (!(await box.isChecked())) await page.keyboard.press('Space');
		}
	};
}
