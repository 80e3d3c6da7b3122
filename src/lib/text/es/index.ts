import type { Messages } from '../en/index.ts';
import { slips } from './slips.ts';

/** The catalogue in Spanish: neutral Latin American, "usted". A draft until a bilingual competent person has reviewed it. */
export const es: Messages = Object.freeze({ slips });
