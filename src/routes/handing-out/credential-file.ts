/** An open credential as a file, for whoever may hand it out. */
import { error } from '@sveltejs/kit';
import { database, handOutCredential, publicAddress, type Person } from '#lib/server/index.ts';
import { messages, recordMessages } from '#lib/text/index.ts';
import { credentialWords } from './credential-words.ts';

/** @returns the token; 404 for a record of others, and for one that has no credential */
export async function credentialFile(who: Person, of: { readonly person: string; readonly record: string }, url: URL): Promise<Response> {
	const words = {
		en: { m: await messages('en'), record: await recordMessages('en') },
		es: { m: await messages('es'), record: await recordMessages('es') }
	};
	const token = await handOutCredential(
		await database(),
		who,
		of,
		publicAddress(process.env, url),
		(told) => credentialWords(words[told.entry.language].m, words[told.entry.language].record, told),
		new Date()
	);
	if (token === null) error(404, 'Not Found');
	return new Response(token, { headers: { 'content-type': 'application/jwt', 'content-disposition': `attachment; filename="credential-${of.record}.jwt"` } });
}
