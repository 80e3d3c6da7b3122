/** The parts that are shown after the check, or on demand, and what draws: loaded while the learner works. */
export { default as Explained } from './Explained.svelte';
export { default as Help } from './Help.svelte';
export { default as NumberList } from './NumberList.svelte';
export { default as StepThrough } from './StepThrough.svelte';
export { mixed } from '#lib/flow/index.ts';
export { draw } from '#lib/scenario/index.ts';
