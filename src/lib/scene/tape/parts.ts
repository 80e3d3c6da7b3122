/** The components that draw tapes: handed to a sheet, so that a page can load them behind its first paint. */
import TapeDraft from './TapeDraft.svelte';
import TapeLegend from './TapeLegend.svelte';
import TapePair from './TapePair.svelte';

export const TAPE_PARTS = Object.freeze({ Draft: TapeDraft, Legend: TapeLegend, Pair: TapePair });
export type TapeParts = typeof TAPE_PARTS;
