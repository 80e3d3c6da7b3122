/** What a set holds, in words. */
import type { SetContent } from '#lib/flow/index.ts';
import { languageInfo, type Messages, type StaffMessages } from '#lib/text/index.ts';
import type { OfferedAsk } from './choosing.ts';

type Words = Messages & StaffMessages;

/** @returns what is asked, for a list in a sentence: "free fall, required clearance and decision". */
export function askedText(m: Words, asks: readonly OfferedAsk[]): string {
	const names = asks.map((ask) => (ask.kind === 'decision' ? m.sets.decision : lower(m.quantities[ask.quantity].name)));
	return m.common.list([...new Set(names)]);
}

/** A name within a sentence: its first letter small, unless more capitals follow as in "D-ring". */
function lower(name: string): string {
	return /^\p{Lu}[\p{Ll} ]/u.test(name) ? name.charAt(0).toLocaleLowerCase('en') + name.slice(1) : name;
}

/** @returns a name as it stands at the beginning of a line. */
export function upper(name: string): string {
	return name.charAt(0).toLocaleUpperCase('en') + name.slice(1);
}

/** @returns how large a set is: "6 problems, 3 scenarios". */
export function sizeText(m: Words, content: Pick<SetContent, 'count' | 'scenarios'>): string {
	return m.sets.size({ count: content.count, scenarios: m.sets.scenarios({ count: content.scenarios.length }) });
}

/** @returns the sentences that tell how a set is passed, whose numbers it has, in which language, and what it aims at. */
export function rulesOf(m: Words, content: SetContent): readonly string[] {
	const { sets } = m;
	const slips = content.aims.map((id) => Object.entries(m.slips).find(([one]) => one === id)?.[1].label ?? id);
	return [
		sets.passed({ right: content.rule.right, of: content.count, unsafe: sets.unsafeAtMost({ count: content.rule.critical }) }),
		sets.untilPassed,
		content.sameForAll ? sets.alike : sets.apart,
		content.language === null ? sets.inOwnLanguage : sets.inLanguage({ language: languageInfo(content.language).name }),
		...(slips.length > 0 ? [sets.aimedAt({ slips: m.common.list(slips) })] : [])
	];
}
