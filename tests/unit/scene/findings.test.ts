/** Pictures on the server: every look is drawn, said, and large enough to touch. */
import { render } from 'svelte/server';
import { describe, expect, test } from 'vitest';
import { FINDING_TASKS, FORMS, drawPicture, gradePicture, isFormId, type Shown } from '#lib/findings/index.ts';
import { LANGUAGES, messages } from '#lib/text/index.ts';
import { looksOf } from '../../../src/lib/findings/forms.ts';
import FindingExplained from '../../../src/lib/scene/findings/FindingExplained.svelte';
import FindingPicture from '../../../src/lib/scene/findings/FindingPicture.svelte';
import { layoutOf } from '../../../src/lib/scene/findings/layouts.ts';
import { findingExplanation, findingWords, type FindingFormats } from '../../../src/lib/scene/findings/words.ts';

const formats: FindingFormats = {
	length: (metres) => `${metres.toFixed(2)} m`,
	time: (seconds) => `${seconds.toFixed(2)} s`,
	speed: (speed) => `${speed.toFixed(1)} m/s`,
	number: String
};

/** Least side of a touch target, px, on a phone 390 px wide (look: phone, targets). */
const TARGET = 44;
const ids = FINDING_TASKS.map((task) => task.id);
const inert = (): void => undefined;

/** A picture with one part changed to a look. */
const withLook = (shown: Shown, id: string, look: string): Shown => ({
	...shown,
	parts: shown.parts.map((part) => (part.id === id ? { ...part, look } : part))
});

describe.each(LANGUAGES)('in %s', (language) => {
	test.each(ids)('%s has words for all that is shown and for every mistake', async (id) => {
		const m = await messages(language);
		for (let seed = 0; seed < 60; seed += 1) {
			const picture = drawPicture(id, seed);
			const words = findingWords(m, picture.shown, formats);
			expect(Object.keys(words.parts).toSorted()).toEqual(picture.shown.parts.map((part) => part.id).toSorted());
			expect(Object.values(words.choices).every((text) => text !== '')).toBe(true);
			const answer = { kind: 'picture', marked: picture.shown.parts.slice(0, 1).map((part) => part.id), choice: 'none of them' } as const;
			const explanation = findingExplanation(m, picture, gradePicture(picture, answer), formats);
			expect(explanation.notes.map((note) => note.number).toSorted((a, b) => a - b)).toEqual(picture.shown.parts.map((_, i) => i + 1));
			expect(JSON.stringify([words, explanation])).not.toMatch(/undefined|NaN|\[object/);
		}
	});
});

test('what is missed stands first, with why, what to do and its source', async () => {
	const picture = Array.from({ length: 200 }, (_, seed) => drawPicture('gear-connectors', seed)).find(({ key }) => key.notes['hook-3'] === 'gate-gap');
	if (picture === undefined) throw new RangeError('no seed leaves the gate of hook 3 open');
	const grade = gradePicture(picture, { kind: 'picture', marked: picture.key.marks.filter((id) => id !== 'hook-3'), choice: 'take-out' });
	const [first] = findingExplanation(await messages('en'), picture, grade, formats).notes;
	expect(first).toMatchObject({ id: 'hook-3', number: 3, state: 'missed', title: 'Gate does not close' });
	expect(first?.act).toContain('Take it out of use');
	expect(first?.source).toContain('29 CFR 1926.502(d)(5) (read)');
});

describe.each(ids)('%s', (id) => {
	test('every part is large enough to touch, lies in the drawing, and its middle belongs to it alone', () => {
		for (let seed = 0; seed < 120; seed += 1) {
			const { shown } = drawPicture(id, seed);
			const { width, height, parts } = layoutOf(shown);
			expect(Object.keys(parts).toSorted()).toEqual(shown.parts.map((part) => part.id).toSorted());
			for (const [part, box] of Object.entries(parts)) {
				expect(Math.min(box.w, box.h), part).toBeGreaterThanOrEqual(TARGET);
				expect(box.x >= 0 && box.y >= 0 && box.x + box.w <= width && box.y + box.h <= height, part).toBe(true);
				const middle = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
				const over = Object.entries(parts).filter(
					([, other]) => middle.x > other.x && middle.x < other.x + other.w && middle.y > other.y && middle.y < other.y + other.h
				);
				expect(over.map(([name]) => name)).toEqual([part]);
			}
		}
	});

	test('every look changes the drawing', async () => {
		const m = await messages('en');
		const { shown } = drawPicture(id, 1);
		const words = findingWords(m, shown, formats);
		const body = (one: Shown): string => render(FindingPicture, { props: { shown: one, words, marked: null, onmark: inert } }).body;
		for (const part of shown.parts) {
			if (!isFormId(part.form)) throw new RangeError(part.form);
			const drawn = looksOf(part.form).map(([look]) => body(withLook(shown, part.id, look)));
			expect(new Set(drawn).size, part.id).toBe(drawn.length);
		}
	});

	test('each part is a button that says what is seen, with its state; marks and "nothing" are told apart', async () => {
		const m = await messages('en');
		const { shown } = drawPicture(id, 2);
		const words = findingWords(m, shown, formats);
		const [first] = shown.parts;
		const at = (marked: readonly string[] | null): string => render(FindingPicture, { props: { shown, words, marked, onmark: inert } }).body;
		const pressed = (body: string): number => body.match(/aria-pressed="true"/g)?.length ?? 0;
		expect([at(null), at([]), at([first?.id ?? ''])].map(pressed)).toEqual([0, 1, 1]);
		for (const part of shown.parts) expect(at(null)).toContain(words.parts[part.id]?.see ?? 'missing');
	});

	test('is explained with every part in the picture and in words', async () => {
		const m = await messages('en');
		const picture = drawPicture(id, 3);
		const grade = gradePicture(picture, { kind: 'picture', marked: [], choice: '' });
		const explanation = findingExplanation(m, picture, grade, formats);
		const { body } = render(FindingExplained, { props: { shown: picture.shown, words: findingWords(m, picture.shown, formats), explanation } });
		for (const note of explanation.notes) expect(body).toContain(note.why);
	});
});

test('every form has a text for each of its looks and no other', async () => {
	for (const language of LANGUAGES) {
		const { findings } = await messages(language);
		const said = Object.entries(findings.looks).map(([form, looks]) => [form, Object.keys(looks).toSorted()]);
		const drawn = Object.entries(FORMS).map(([form, looks]) => [form, Object.keys(looks).toSorted()]);
		expect(Object.fromEntries(said)).toEqual(Object.fromEntries(drawn));
	}
});
