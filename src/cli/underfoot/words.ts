import { isGivenId, type Absence, type Analysis, type Check, type Refusal } from '#lib/arrest/index.ts';
import { checkText, givenNames, type Messages } from '#lib/text/index.ts';

/** Why a plan is not judged at all. */
export function refusalWords(refusal: Refusal, words: Messages): string {
	switch (refusal.why) {
		case 'system-not-built':
		case 'system-outside-scope':
			return words.refusals[refusal.why]({ what: systemName(refusal.system, words) });
		case 'no-such-table':
			return words.refusals[refusal.why]({ what: refusal.id });
		case 'line-over-edge':
		case 'away-from-edge':
			return words.refusals[refusal.why]({ what: '' });
	}
}

function systemName(system: string, words: Messages): string {
	return Object.entries(words.systems).find(([id]) => id === system)?.[1] ?? system;
}

/** Why a quantity has no value. */
export function absenceWords(absence: Absence, words: Messages): string {
	const missing = absence.why === 'missing' ? absence.givens : [];
	const names = missing.map((id) => (isGivenId(id) ? givenNames(words, id, id).the : id));
	return words.absences[absence.why]({ what: words.common.list(names) });
}

/** The verdict as a sentence. */
export function verdictWords({ verdict, checks }: Pick<Analysis, 'verdict' | 'checks'>, words: Messages): string {
	const against = checks.filter((check) => verdict.against.includes(check.id)).map((check) => checkText(words, check).short);
	const named = { checks: [...new Set(against)].join(', ') };
	switch (verdict.result) {
		case 'passes':
			return words.verdict.passes;
		case 'fails':
			return words.verdict.fails(named);
		case 'cannot-be-shown':
			return words.verdict.cannotBeShown(named);
	}
}

/** What is said of a check. @param amount how much is to spare or short, as written; undefined where there is none. */
export function checkWords(check: Check, amount: string | undefined, words: Messages): string {
	const text = checkText(words, check);
	if (check.status === 'unknown') return text.unknown;
	return text[check.status]({ amount });
}
