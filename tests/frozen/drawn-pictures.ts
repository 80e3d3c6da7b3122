/**
 * Pictures as they are frozen: what is shown, and the key. Imports nothing of Node, so that a browser can make
 * the same records and be compared.
 */
import { FINDING_TASKS, PICTURE_DRAW_VERSION, drawPicture, type Picture } from '#lib/findings/index.ts';

/** The pictures of one task version, as the files of tests/frozen/pictures hold them. */
export interface FrozenPictures {
	readonly task: string;
	readonly version: number;
	readonly drawVersion: number;
	readonly pictures: readonly Picture[];
}

/** @returns the pictures of the seeds from `first` up to `last`, plain enough for JSON. */
export function drawnPictures(id: string, first: number, last: number): FrozenPictures {
	const pictures: Picture[] = [];
	for (let seed = first; seed <= last; seed += 1) pictures.push(drawPicture(id, seed));
	const version = FINDING_TASKS.find((task) => task.id === id)?.version ?? NaN;
	return { task: id, version, drawVersion: PICTURE_DRAW_VERSION, pictures };
}
