/** A set that is printed, for tests of what stands on the paper. */
import { shippedScenario } from '#lib/course/shipped.ts';
import { printCopies, type PageSize } from '#lib/paper/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { messages, staffMessages } from '#lib/text/index.ts';
import { copiesToPrint, pageWords, printedTitle, type Printing } from '../../../../src/routes/crew/sets/[set]/paper/print/copies.ts';

function scenarioOf(id: string): Scenario {
	const found = shippedScenario(id);
	if (found === undefined) throw new Error(`no scenario ${id} is shipped`);
	return found;
}

/** A sheet with one problem of each scenario, in some order, a copy. */
export async function aPrinting(ids: readonly string[], change: Partial<Printing['sheet']> = {}, name = 'Bridges, week 49'): Promise<Printing> {
	const scenarios = ids.map(scenarioOf);
	const sheet = { id: 'a', set: 'b', code: 'K7QM2XWD', copies: 1, alike: false, seed: 'printed', language: 'en', at: '2026-11-25T09:00:00.000Z', ...change } as const;
	const content = {
		scenarios: scenarios.map(({ id, version, asks }) => ({ id, version, asks: asks.map((ask) => ask.id) })),
		count: ids.length,
		rule: { right: 1, critical: 0 },
		sameForAll: false,
		language: null,
		aims: []
	};
	return { sheet, name, content, scenarios, m: await messages(sheet.language), words: (await staffMessages(sheet.language)).paper };
}

/** @returns the bytes of the PDF, without compression. */
export async function printed(printing: Printing, part: 'sheet' | 'key', size: PageSize = 'a4'): Promise<Uint8Array> {
	const options = { size, language: printing.sheet.language, title: printedTitle(printing, part), at: new Date(printing.sheet.at), compress: false };
	return new Response(printCopies(options, pageWords(printing), copiesToPrint(printing, part))).bytes();
}
