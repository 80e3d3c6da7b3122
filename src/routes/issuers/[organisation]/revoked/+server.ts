import { error } from '@sveltejs/kit';
import { database, publicAddress, statusListToken } from '#lib/server/index.ts';
import { publishedAs } from '../../../handing-out/published.ts';
import type { RequestHandler } from './$types';

/** The list of withdrawn credentials of an organisation, signed. */
export const GET: RequestHandler = async ({ params, url }) => {
	const token = await statusListToken(await database(), params.organisation, publicAddress(process.env, url), new Date());
	if (token === null) error(404, 'Not Found');
	return new Response(token, { headers: publishedAs('list', 'application/vc+jwt') });
};
