import { slips } from './slips.ts';

/** The catalogue in English: the language in which texts are written first. */
export const en = Object.freeze({ slips });

/** What every language holds. */
export type Messages = typeof en;
