/**
 * Site drawings: elevation with its tape, playback, steps. Words and formatted numbers come in from outside;
 * geometry is in plain modules, components only draw.
 */
export { default as GivensTable } from './GivensTable.svelte';
export { default as HatchBar } from './hatch/HatchBar.svelte';
export { default as HatchSwatch } from './hatch/HatchSwatch.svelte';
export { default as Playback, type PlaybackWords } from './Playback.svelte';
export { default as SiteDrawing } from './SiteDrawing.svelte';
export { default as SiteSheet, type SiteDrawingWords } from './SiteSheet.svelte';
export { default as StillFall } from './StillFall.svelte';
export { default as StepTable, type StepRow } from './StepTable.svelte';
export { default as TapeStrip } from './TapeStrip.svelte';
export { drawBackdrop } from './backdrop/draw.ts';
export { loadBackdrop } from './backdrop/load.ts';
export { TAPE_PARTS, type TapeParts } from './tape/parts.ts';
export type { Elevation, TapeView } from './layout/elevation.ts';
export type * from './model.ts';
export { default as FindingExplained } from './findings/FindingExplained.svelte';
export { default as FindingPicture, type FindingWords } from './findings/FindingPicture.svelte';
export { findingExplanation, findingWords, type FindingExplanation, type FindingFormats, type FindingNoteWords } from './findings/words.ts';
