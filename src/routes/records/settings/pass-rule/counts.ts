/** The form of a rule's counts: which fields it has, and how they are read. */
import type { PassRule } from '#lib/mastery/index.ts';
import type { RuleCounts } from '#lib/server/index.ts';

/** More digits than any count has. */
const WHOLE = /^\d{1,3}$/;

/** What the fields hold for a rule, by their names. */
export function fieldsOf(rule: PassRule): Readonly<Record<string, string>> {
	const stages = rule.stages.flatMap(({ passAtMost, failAtLeast }, i) => [
		[`pass-${String(i)}`, String(passAtMost)],
		[`fail-${String(i)}`, failAtLeast === undefined ? '' : String(failAtLeast)]
	]);
	return Object.fromEntries([
		...stages,
		['unsafe-first', String(rule.unsafe.first.atMost)],
		['unsafe-in-all', String(rule.unsafe.atMost)],
		['tries', String(rule.tries.beforeUnlock)],
		['tries-a-day', String(rule.tries.perDay)]
	] as [string, string][]);
}

/** What came of reading the form: counts, or by field what is wrong, as keys of the catalogue. */
export type CountsResult = { readonly kind: 'read'; readonly counts: RuleCounts } | { readonly kind: 'refused'; readonly problems: Readonly<Record<string, string>> };

/** @returns the counts of a form, for a rule with as many stages as `rule` has. */
export function readCounts(form: FormData, rule: PassRule): CountsResult {
	const problems: Record<string, string> = {};
	const text = (name: string): string => {
		const value = form.get(name);
		return typeof value === 'string' ? value.trim() : '';
	};
	const count = (name: string): number => {
		const typed = text(name);
		if (!WHOLE.test(typed)) problems[name] = 'count';
		return Number(typed);
	};
	const counts: RuleCounts = {
		stages: rule.stages.map((_, i) => {
			const fail = `fail-${String(i)}`;
			const last = i === rule.stages.length - 1;
			return { passAtMost: count(`pass-${String(i)}`), failAtLeast: last || text(fail) === '' ? undefined : count(fail) };
		}),
		unsafeFirst: count('unsafe-first'),
		unsafeInAll: count('unsafe-in-all'),
		tries: count('tries'),
		triesADay: count('tries-a-day')
	};
	return Object.keys(problems).length > 0 ? { kind: 'refused', problems } : { kind: 'read', counts };
}
