/** Keys of the board, and when they are none: while somebody types or moves a slider. */

export const DEEDS = ['next', 'back', 'problem', 'play', 'full'] as const;
export type Deed = (typeof DEEDS)[number];

const KEYS: Readonly<Record<string, Deed>> = { ArrowRight: 'next', PageDown: 'next', ArrowLeft: 'back', PageUp: 'back', n: 'problem', p: 'play', f: 'full' };

/** What a key press must tell. */
export interface Pressed {
	readonly key: string;
	readonly altKey: boolean;
	readonly ctrlKey: boolean;
	readonly metaKey: boolean;
	readonly defaultPrevented: boolean;
	/** Where the focus is: a tag in small letters, and its role. */
	readonly tag: string;
	readonly role: string | null;
}

/** Places that use letters or arrows themselves. */
const TYPED: readonly string[] = ['input', 'textarea', 'select'];
const MOVED: readonly string[] = ['slider', 'radio', 'tab', 'listbox', 'menu', 'spinbutton'];

/** @returns what a key asks of the board; undefined for one that is not the board's here. */
export function deedOf(press: Pressed): Deed | undefined {
	if (press.defaultPrevented || press.altKey || press.ctrlKey || press.metaKey) return undefined;
	if (TYPED.includes(press.tag) || MOVED.includes(press.role ?? '')) return undefined;
	return KEYS[press.key.length === 1 ? press.key.toLowerCase() : press.key];
}
