import { error, redirect, type RequestHandler } from '@sveltejs/kit';
import { database, download, exportRecords, readRange } from '#lib/server/index.ts';
import { employerOf } from '../../asking.ts';

/** Records as a file, streamed. Where the days do not fit, the page says what is wrong, with what was typed. */
export const GET: RequestHandler<{ file: string }> = async ({ locals, params, url }) => {
	const employer = employerOf(locals.who);
	const read = readRange(url.searchParams.get('from') ?? '', url.searchParams.get('to') ?? '');
	if (read.kind === 'refused') redirect(303, `/records/exports${url.search}`);
	const given = { range: read.range, mark: url.searchParams.has('bom') };
	const file = await exportRecords(await database(), employer, params.file, given, new Date());
	if (file === null) error(404, 'Not Found');
	return download(file);
};
