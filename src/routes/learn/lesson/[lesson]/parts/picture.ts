/** Pictures to be judged: how they are drawn and shown, and what an answer to one says. */
export { default as PictureTask } from './PictureTask.svelte';
export { drawPicture } from '#lib/findings/index.ts';
export { pictureCredits } from '#lib/flow/index.ts';
