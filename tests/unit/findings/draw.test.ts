import { describe, expect, test } from 'vitest';
import { FINDING_TASKS, FORMS, drawPicture, gradePicture, isFormId, sourcesOf, type Picture } from '#lib/findings/index.ts';
import { lookOf, looksOf } from '../../../src/lib/findings/forms.ts';
import { TASKS } from '../../../src/lib/findings/tasks.ts';

const SEEDS = 500;
const pictures = new Map(FINDING_TASKS.map(({ id }) => [id, Array.from({ length: SEEDS }, (_, seed) => drawPicture(id, seed))]));
const of = (id: string): readonly Picture[] => pictures.get(id) ?? [];
const keyOf = ({ key }: Picture): string => `${key.marks.join('+')}/${key.choice}`;

/** @returns how often the most frequent one occurs, as a share. */
function greatestShare(values: readonly string[]): number {
	const counts = new Map<string, number>();
	for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
	return Math.max(...counts.values()) / values.length;
}

describe('the picture tasks', () => {
	test('are enough of each kind, each kind at two difficulties or more, no id twice', () => {
		const kinds = { gear: 4, situation: 6, moment: 3 } as const;
		for (const [kind, least] of Object.entries(kinds)) {
			const some = FINDING_TASKS.filter((task) => task.kind === kind);
			expect(some.length, kind).toBeGreaterThanOrEqual(least);
			expect(new Set(some.map((task) => task.difficulty)).size, kind).toBeGreaterThanOrEqual(2);
		}
		expect(new Set(FINDING_TASKS.map((task) => task.id)).size).toBe(FINDING_TASKS.length);
	});

	test('a task that is not there is refused by name', () => {
		expect(() => drawPicture('gear-boots', 1)).toThrow('gear-boots');
	});

	test('every look that a form has is drawn by some seed, and its note has a source', () => {
		const drawn = new Set([...pictures.values()].flat().flatMap(({ shown }) => shown.parts.map((part) => `${part.form}.${part.look}`)));
		const all = Object.keys(FORMS).flatMap((form) => (isFormId(form) ? looksOf(form).map(([look]) => `${form}.${look}`) : []));
		expect(all.filter((look) => !drawn.has(look))).toEqual([]);
		for (const form of Object.keys(FORMS)) {
			if (!isFormId(form)) continue;
			for (const [, look] of looksOf(form)) expect(sourcesOf(look.note).length, look.note).toBeGreaterThan(0);
		}
	});
});

describe.each(FINDING_TASKS.map((task) => task.id))('%s', (id) => {
	test('is drawn alike each time, as plain data', () => {
		for (const picture of of(id).slice(0, 50)) {
			expect(JSON.stringify(drawPicture(id, picture.seed))).toBe(JSON.stringify(picture));
			expect(JSON.parse(JSON.stringify(picture))).toEqual(picture);
		}
		expect(new Set(of(id).map((picture) => JSON.stringify(picture.shown))).size).toBeGreaterThan(id.startsWith('site') ? 20 : 100);
	});

	test('has both outcomes, and each choice is right now and then', () => {
		const choices = new Set(of(id).flatMap(({ shown }) => shown.choices.map((one) => one.id)));
		for (const choice of choices) expect(of(id).filter(({ key }) => key.choice === choice).length, choice).toBeGreaterThan(SEEDS / 50);
		expect(of(id).some(({ key }) => key.marks.length === 0)).toBe(id !== 'moment-pull');
		expect(of(id).some(({ key }) => key.marks.length > 1)).toBe(true);
	});

	test('marks parts that it shows, names a choice that it shows, and tells parts by ids of their own', () => {
		for (const { shown, key } of of(id)) {
			const parts = shown.parts.map((part) => part.id);
			expect(new Set(parts).size).toBe(parts.length);
			expect(parts).toEqual(expect.arrayContaining([...key.marks]));
			const choices = shown.choices.map((one) => one.id);
			expect(new Set(choices).size).toBe(choices.length);
			expect(choices).toEqual(expect.arrayContaining([key.choice, ...key.criticalChoices]));
			expect(key.criticalChoices).not.toContain(key.choice);
			expect(Object.keys(key.notes).toSorted()).toEqual(parts.toSorted());
		}
	});

	test('a blind guess is right in at most three of a hundred', () => {
		for (const { shown } of of(id)) expect(1 / (2 ** shown.parts.length * shown.choices.length)).toBeLessThanOrEqual(0.03);
	});

	test('what is shown gives nothing of the key away', () => {
		const words = /reject|wrong|fine|take-out"?:|means|note|mark/;
		for (const { shown } of of(id).slice(0, 100)) expect(JSON.stringify({ ...shown, choices: [] })).not.toMatch(words);
	});
});

describe('what always giving the same answer comes to', () => {
	// The most that one fixed answer gets right, measured: the reason why these are marked as easy.
	test.each([
		['gear-lanyards', 0.12],
		['gear-connectors', 0.12],
		['gear-swatches', 0.12],
		['site-hook-ups', 0.12],
		['moment-pull', 0.05],
		['moment-faster', 0.08]
	])('%s: at most %d', (id, most) => {
		expect(greatestShare(of(id).map(keyOf))).toBeLessThan(most);
	});

	test('nowhere more than a third', () => {
		for (const { id } of FINDING_TASKS) expect(greatestShare(of(id).map(keyOf)), id).toBeLessThan(0.36);
	});
});

describe('parts', () => {
	const tasks = TASKS.filter((task) => task.kind !== 'moment');

	test.each(tasks.map((task) => task.id))('%s: a part is to be marked exactly if its look is not fine', (id) => {
		const task = tasks.find((one) => one.id === id);
		for (const { shown, key } of of(id)) {
			const wanted = shown.parts.filter((part) => isFormId(part.form) && lookOf(part.form, part.look).means !== 'fine').map((part) => part.id);
			expect(key.marks).toEqual(wanted);
			expect(shown.parts.map((part) => [part.id, part.form])).toEqual(task?.slots.map((slot) => [slot.id, slot.form]));
		}
	});

	test.each(tasks.map((task) => task.id))('%s: as many are marked as its weights say', (id) => {
		const task = tasks.find((one) => one.id === id);
		const total = task?.counts.reduce((sum, weight) => sum + weight, 0) ?? 0;
		task?.counts.forEach((weight, count) => {
			const share = of(id).filter(({ key }) => key.marks.length === count).length / SEEDS;
			// Four standard deviations of 500 draws.
			const p = weight / total;
			expect(Math.abs(share - p), String(count)).toBeLessThan(4 * Math.sqrt((p * (1 - p)) / SEEDS));
		});
	});

	test('a worn harness is put right if nothing is damaged, and taken out as soon as something is', () => {
		const meaning = (picture: Picture): string[] =>
			picture.shown.parts.map((part) => (isFormId(part.form) ? lookOf(part.form, part.look).means : '')).filter((means) => means !== 'fine');
		for (const id of ['gear-worn-back', 'gear-worn-front']) {
			for (const picture of of(id)) {
				const means = meaning(picture);
				const right = means.includes('take-out') ? 'take-out' : means.length > 0 ? 'put-right' : 'use';
				expect(picture.key.choice).toBe(right);
				expect(picture.key.criticalChoices.includes('use')).toBe(right !== 'use');
			}
		}
	});

	test('of two lanyards the sound ones may be used', () => {
		for (const { key } of of('gear-lanyards')) {
			const bad = (stem: string): boolean => key.marks.some((part) => part.startsWith(stem));
			const right = bad('first') ? (bad('second') ? 'neither' : 'second') : bad('second') ? 'first' : 'both';
			expect(key.choice).toBe(right);
		}
	});
});

describe('the grade', () => {
	const picture = of('gear-harness').find(({ key }) => key.marks.length === 2);
	const clean = of('gear-harness').find(({ key }) => key.marks.length === 0);
	if (picture === undefined || clean === undefined) throw new RangeError('500 seeds gave no such pictures');
	const [first, second] = picture.key.marks;
	const other = picture.shown.parts.map((part) => part.id).find((id) => !picture.key.marks.includes(id)) ?? '';
	const both = [first ?? '', second ?? ''];

	test.each([
		['all marked and taken out', both, 'take-out', true, false],
		['in another order, one twice', [second ?? '', first ?? '', second ?? ''], 'take-out', true, false],
		['one missed', [first ?? ''], 'take-out', false, true],
		['one too many', [...both, other], 'take-out', false, false],
		['all marked, used all the same', both, 'use', false, true],
		['nothing marked, used', [], 'use', false, true],
		['a choice that is not there', both, 'sell', false, false],
		['a part that is not there', [...both, 'boots'], 'take-out', false, false]
	] as const)('%s', (_, marked, choice, right, critical) => {
		const grade = gradePicture(picture, { kind: 'picture', marked, choice });
		expect([grade.right, grade.critical]).toEqual([right, critical]);
	});

	test('names what was missed and what was too much, and both choices', () => {
		const grade = gradePicture(picture, { kind: 'picture', marked: [other, 'boots', first ?? ''], choice: 'use' });
		expect(grade).toEqual({ right: false, critical: true, missed: [second], extra: [other, 'boots'], choice: { given: 'use', right: 'take-out' } });
	});

	test('a sound harness that is turned down is wrong, but not on the unsafe side', () => {
		expect(gradePicture(clean, { kind: 'picture', marked: [], choice: 'use' }).right).toBe(true);
		expect(gradePicture(clean, { kind: 'picture', marked: [], choice: 'take-out' })).toMatchObject({ right: false, critical: false });
		expect(gradePicture(clean, { kind: 'picture', marked: ['label'], choice: 'take-out' })).toMatchObject({ right: false, critical: false });
	});
});
