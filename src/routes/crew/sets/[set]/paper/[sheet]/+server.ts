import { error } from '@sveltejs/kit';
import { PAGE_SIZES, printCopies } from '#lib/paper/index.ts';
import { database, findSheet, grouped, setScenarios } from '#lib/server/index.ts';
import { messages, staffMessages } from '#lib/text/index.ts';
import { staffOnly } from '../../../../staff.ts';
import { copiesToPrint, pageWords, printedTitle, type Printing } from '../print/copies.ts';
import type { RequestHandler } from './$types';

const PARTS = ['sheet', 'key'] as const;

/** A sheet or its key as PDF, page by page: others are served between the pages. */
export const GET: RequestHandler = async ({ locals, params, url }) => {
	const who = staffOnly(locals.who);
	const part = PARTS.find((one) => one === (url.searchParams.get('part') ?? 'sheet'));
	const size = PAGE_SIZES.find((one) => one === (url.searchParams.get('size') ?? 'a4'));
	const db = await database();
	const found = await findSheet(db, who, params.set, params.sheet);
	if (part === undefined || size === undefined || found === null) error(404, 'Not Found');
	const { sheet, set } = found;
	const scenarios = await setScenarios(db, who.organisation, set.content);
	if (scenarios.length < set.content.scenarios.length) error(404, 'Not Found');
	const [m, staff] = await Promise.all([messages(sheet.language), staffMessages(sheet.language)]);
	const printing: Printing = { sheet, name: set.name, content: set.content, scenarios, m, words: staff.paper };
	const options = { size, language: sheet.language, title: printedTitle(printing, part), at: new Date(sheet.at) };
	return new Response(printCopies(options, pageWords(printing), copiesToPrint(printing, part)), {
		headers: {
			'content-type': 'application/pdf',
			'content-disposition': `inline; filename="${grouped(sheet.code)}-${part}-${size}.pdf"`
		}
	});
};
