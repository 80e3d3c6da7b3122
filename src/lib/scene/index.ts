/** Site drawings: elevation, tapes, playback, steps. Words and formatted numbers come in from outside. */
export { default as SiteDrawing, type SiteDrawingWords } from './SiteDrawing.svelte';
export { default as HatchSwatch } from './hatch/HatchSwatch.svelte';
export type { TapeView } from './layout/elevation.ts';
export type * from './model.ts';
