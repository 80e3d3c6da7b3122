import { error, type RequestHandler } from '@sveltejs/kit';
import { database, handOutCheckpoint } from '#lib/server/index.ts';
import { employerMessages } from '#lib/text/index.ts';
import { employerOf } from '../../asking.ts';

/** A checkpoint as a file: what it says, the key that it is verified with, and the signed whole. */
export const GET: RequestHandler<{ size: string }> = async ({ locals, params }) => {
	const employer = employerOf(locals.who);
	const size = /^[1-9]\d{0,14}$/.test(params.size) ? Number(params.size) : 0;
	const file = await handOutCheckpoint(await database(), employer, size, new Date());
	if (file === null) error(404, 'Not Found');
	const { fileNote } = (await employerMessages(locals.language)).keeping;
	const name = `checkpoint-${file.checkpoint.at.slice(0, 10)}-${String(size)}.json`;
	return new Response(`${JSON.stringify({ note: fileNote, ...file }, null, '\t')}\n`, {
		headers: { 'content-type': 'application/json', 'content-disposition': `attachment; filename="${name}"`, 'x-content-type-options': 'nosniff' }
	});
};
