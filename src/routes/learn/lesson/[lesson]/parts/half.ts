/** Half-done examples: the open steps of a working. */
export { default as HalfDone } from './HalfDone.svelte';
