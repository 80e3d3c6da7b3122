import { error, type RequestHandler } from '@sveltejs/kit';
import { database, exportScenario } from '#lib/server/index.ts';
import { staffOnly } from '../../../staff.ts';

/** A scenario of the organisation as a file, which importing takes as it is. */
export const GET: RequestHandler<{ scenario: string }> = async ({ locals, params }) => {
	const file = await exportScenario(await database(), staffOnly(locals.who), params.scenario);
	if (file === null) error(404, 'Not Found');
	return new Response(file.text, {
		headers: {
			'content-type': 'application/json; charset=utf-8',
			// The name is an id and a number of ours.
			'content-disposition': `attachment; filename="${file.name}"`,
			'x-content-type-options': 'nosniff'
		}
	});
};
