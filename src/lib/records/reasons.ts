/** Reasons, as codes: words are in the catalogue. */

/** Why somebody is to be trained again. @source 29 CFR 1926.503(c), 1910.30(c); New Brunswick 91-191 s. 50.3; from memory */
export const RETRAINING_REASONS = ['expiry', 'change-of-work', 'change-of-gear-or-system', 'seen-inadequate', 'incident', 'yearly-review'] as const;
export type RetrainingReason = (typeof RETRAINING_REASONS)[number];

/** Reasons that say that somebody does not know enough now: what was valid ends on the day of the order. For others it holds until the due day. */
const AT_ONCE: readonly RetrainingReason[] = ['seen-inadequate', 'incident'];

/** @returns whether an order for this reason ends at once what was valid. */
export function endsAtOnce(reason: RetrainingReason): boolean {
	return AT_ONCE.includes(reason);
}

/** Why a record counts no more. */
export const REVOCATION_REASONS = ['entered-by-mistake', 'wrong-person', 'not-done-as-recorded', 'other'] as const;
export type RevocationReason = (typeof REVOCATION_REASONS)[number];
