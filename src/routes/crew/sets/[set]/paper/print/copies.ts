/** The copies of a sheet, and of its key, as they are printed. */
import type { SetContent } from '#lib/flow/index.ts';
import type { Copy, PaperWords } from '#lib/paper/index.ts';
import type { Ask, Scenario } from '#lib/scenario/index.ts';
import { copiesOf, grouped, paperPlaces, printedCode, type Sheet } from '#lib/server/index.ts';
import type { Messages, StaffMessages } from '#lib/text/index.ts';
import type { Speech } from '../../../../../learn/problem/model/names.ts';
import { keyProblem } from './key-problem.ts';
import { printedProblem } from './printed-problem.ts';

/** A sheet with all that its problems are drawn from, and the words of its language. */
export interface Printing {
	readonly sheet: Sheet;
	readonly name: string;
	readonly content: SetContent;
	readonly scenarios: readonly Scenario[];
	readonly m: Messages;
	readonly words: StaffMessages['paper'];
}

/** What stands on every page. */
export function pageWords({ m, words }: Pick<Printing, 'm' | 'words'>): PaperWords {
	return { fill: [words.fillName, words.fillNumber, words.fillDate], how: words.how, page: words.page, caution: m.verdict.caution };
}

/** The problems of one copy, each drawn and written when its turn has come. */
function* problemsOf<Printed>(
	{ sheet, content, scenarios, m, words }: Printing,
	copy: number,
	printed: (speech: Speech, asks: readonly Ask[], over: string) => Printed
): Generator<Printed> {
	for (const { place, problem, asks } of paperPlaces(content, scenarios, sheet, copy)) {
		yield printed({ problem, language: sheet.language, m }, asks, words.problem({ n: String(place + 1), of: String(content.count) }));
	}
}

/** The title of the PDF, and what it is called when it is kept. */
export function printedTitle({ sheet, name, words }: Printing, part: 'sheet' | 'key'): string {
	return part === 'sheet' ? name : words.keyOf({ name, code: grouped(sheet.code) });
}

/** @returns the copies of the sheet, or those of its key: a common sheet has one of either. */
export function* copiesToPrint(printing: Printing, part: 'sheet' | 'key'): Generator<Copy> {
	const { sheet, name, words } = printing;
	for (const copy of copiesOf(sheet)) {
		const code = printedCode(sheet.code, copy);
		if (part === 'sheet') yield { kind: 'sheet', code, title: name, problems: problemsOf(printing, copy, printedProblem) };
		else yield { kind: 'key', code, title: words.keyHead({ name }), problems: problemsOf(printing, copy, (speech, asks, over) => keyProblem(speech, asks, over, words.decision)) };
	}
}
