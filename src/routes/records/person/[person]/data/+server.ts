import { error, type RequestHandler } from '@sveltejs/kit';
import { database, download, exportPerson } from '#lib/server/index.ts';
import { employerOf } from '../../../asking.ts';

/** All that is kept of one person, as a file: everything as JSON, or a table of theirs. */
export const GET: RequestHandler<{ person: string }> = async ({ locals, params, url }) => {
	const employer = employerOf(locals.who);
	const file = await exportPerson(await database(), employer, params.person, url.searchParams.get('as') ?? 'json', new Date());
	if (file === null) error(404, 'Not Found');
	return download(file);
};
