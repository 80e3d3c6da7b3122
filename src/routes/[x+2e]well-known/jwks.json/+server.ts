import { credentialKeySet, database, publicAddress } from '#lib/server/index.ts';
import { publishedAs } from '../../handing-out/published.ts';
import type { RequestHandler } from './$types';

/** The public keys that credentials are checked with. */
export const GET: RequestHandler = async ({ url }) => {
	const set = await credentialKeySet(await database(), publicAddress(process.env, url));
	return new Response(JSON.stringify(set), { headers: publishedAs('keys', 'application/jwk-set+json') });
};
