/** How long a completion is valid: by law, or by the employer's stricter period. */
import { addMonths, type EntryOf } from '#lib/records/index.ts';
import { recordLaw } from '#lib/rules/index.ts';
import type { RecordSettings } from './found.ts';

/** How long a completion is valid, and by what, as its entry says it. */
export type CompletionValidity = EntryOf<'completed'>['validity'];

/**
 * @param rules id of the organisation's rule table
 * @param day local day of completion
 * @returns the smaller of law's period and the organisation's own; where both are alike, law's
 * @source shared/records/law.json, each period with its clause
 */
export function validityFor(rules: string, settings: Pick<RecordSettings, 'validityMonths'>, day: string): CompletionValidity {
	const law = recordLaw(rules)?.validity.months ?? null;
	const own = settings.validityMonths;
	if (own !== null && (law === null || own < law)) return { months: own, by: 'employer', until: addMonths(day, own) };
	return law === null ? { months: null, by: 'nothing-fixed', until: null } : { months: law, by: 'law', until: addMonths(day, law) };
}
