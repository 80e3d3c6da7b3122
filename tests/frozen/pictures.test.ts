/** What seeds gave when a picture task was shipped. Add files here, never edit one: old records point to them. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { FINDING_TASKS, PICTURE_DRAW_VERSION, gradePicture } from '#lib/findings/index.ts';
import { drawnPictures, type FrozenPictures } from './drawn-pictures.ts';

const FOLDER = join(import.meta.dirname, 'pictures');
const files = readdirSync(FOLDER).filter((file) => file.endsWith('.json'));
const frozen = files.map((file): FrozenPictures => JSON.parse(readFileSync(join(FOLDER, file), 'utf8')));

describe('frozen pictures', () => {
	it('hold every picture task version', () => {
		const held = frozen.map((one) => `${one.task}-v${one.version}`);
		expect(held).toEqual(expect.arrayContaining(FINDING_TASKS.map((one) => `${one.id}-v${one.version}`)));
		expect(files.toSorted()).toEqual(held.map((one) => `${one}.json`).toSorted());
	});

	it.each(frozen.map((one) => [`${one.task} version ${one.version}`, one] as const))('of %s are drawn the same today', (_, one) => {
		expect(FINDING_TASKS.find((task) => task.id === one.task)?.version).toBe(one.version);
		expect(one.drawVersion).toBe(PICTURE_DRAW_VERSION);
		const seeds = one.pictures.map((picture) => picture.seed);
		// As text, so that not even the last bit of a number or the order of a key may differ.
		expect(JSON.stringify(drawnPictures(one.task, Math.min(...seeds), Math.max(...seeds)))).toBe(JSON.stringify(one));
	});

	it('are graded from the stored picture alone', () => {
		for (const picture of frozen.flatMap((one) => one.pictures)) {
			const { marks, choice } = picture.key;
			expect(gradePicture(picture, { kind: 'picture', marked: marks, choice }).right).toBe(true);
			expect(gradePicture(picture, { kind: 'picture', marked: [...marks, 'nothing'], choice }).right).toBe(false);
		}
	});
});
