/** The form of a review by judges. */
import { field } from '#lib/server/index.ts';
import * as z from 'zod';

/** @source standard setting with fewer judges is not defensible: learning-and-records.md 6, and `passRuleSchema` */
const FEWEST_JUDGES = 3;
/** @source `passRuleSchema` */
const MOST_JUDGES = 40;
const LONGEST_NAME = 120;

/** Names, one on each line, tidied; whoever is named twice counts once. */
const judges = z
	.string({ error: 'judges' })
	.max(LONGEST_NAME * MOST_JUDGES, { error: 'too-many-judges', abort: true })
	.transform((text) => [...new Set(text.split(/[\r\n]+/u).map((name) => name.normalize('NFC').replace(/\s+/gu, ' ').trim()))].filter((name) => name !== ''))
	.pipe(
		z
			.array(z.string().max(LONGEST_NAME, { error: 'too-long' }).regex(/\p{L}/u, { error: 'judges' }))
			.min(FEWEST_JUDGES, { error: 'judges' })
			.max(MOST_JUDGES, { error: 'too-many-judges' })
	);

/** @param today local day at the sites, YYYY-MM-DD: a review has been held */
export function reviewForm(today: string) {
	return z.object({
		rule: field.id,
		version: z.coerce.number().int(),
		date: z
			.string({ error: 'missing' })
			.trim()
			.min(1, { error: 'missing' })
			.pipe(z.iso.date({ error: 'date', abort: true }))
			.refine((day) => day <= today, { error: 'date-ahead' }),
		judges,
		document: field.place
	});
}
