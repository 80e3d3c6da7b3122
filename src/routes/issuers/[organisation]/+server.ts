import { error } from '@sveltejs/kit';
import { database, findOrganisation, profileOf, publicAddress } from '#lib/server/index.ts';
import { CREDENTIAL_CONTEXTS } from '#lib/records/index.ts';
import { publishedAs } from '../../handing-out/published.ts';
import type { RequestHandler } from './$types';

/** An organisation as the issuer of credentials: its name, and nothing else. */
export const GET: RequestHandler = async ({ params, url }) => {
	const found = await findOrganisation(await database(), params.organisation);
	if (found === null) error(404, 'Not Found');
	const profile = { '@context': CREDENTIAL_CONTEXTS, ...profileOf(publicAddress(process.env, url), found) };
	return new Response(JSON.stringify(profile), { headers: publishedAs('profile', 'application/ld+json') });
};
