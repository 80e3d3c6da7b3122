/** Pictures to be judged. */
export { default as PictureTask } from './PictureTask.svelte';
