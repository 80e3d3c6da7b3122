/** Entry for another engine: bundled and loaded into a page, it draws there what the fixtures hold. */
import { drawnPictures } from './drawn-pictures.ts';

declare global {
	/** Draws the seeds `first` to `last` of a picture task and returns the records as JSON. */
	var underfootPictures: ((task: string, first: number, last: number) => string) | undefined;
}

globalThis.underfootPictures = (task, first, last) => JSON.stringify(drawnPictures(task, first, last));
