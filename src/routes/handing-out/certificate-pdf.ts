/** A certificate as PDF, for whoever may hand it out. */
import { error } from '@sveltejs/kit';
import { PAGE_SIZES, printCertificate } from '#lib/paper/index.ts';
import { certificateFacts, database, handOutCertificate, publicAddress, type Person } from '#lib/server/index.ts';
import { LANGUAGES, messages, recordMessages } from '#lib/text/index.ts';
import { certificateSheet } from './certificate-sheet.ts';

/**
 * @param own the language of the one who asks, where the address names none
 * @returns the PDF; 404 for a record of others, or one that is not there
 */
export async function certificatePdf(who: Person, of: { readonly person: string; readonly record: string }, url: URL, own: 'en' | 'es'): Promise<Response> {
	const size = PAGE_SIZES.find((one) => one === (url.searchParams.get('size') ?? 'a4'));
	const language = LANGUAGES.find((one) => one === (url.searchParams.get('language') ?? own));
	if (size === undefined || language === undefined) error(404, 'Not Found');
	const db = await database();
	const now = new Date();
	const handed = await handOutCertificate(db, who, of.person, of.record, now);
	if (handed.kind === 'not-found') error(404, 'Not Found');
	const facts = await certificateFacts(db, who.organisation, handed, now);
	if (facts === null) error(404, 'Not Found');
	const words = { m: await messages(language), record: await recordMessages(language), language };
	const sheet = certificateSheet(facts, words, publicAddress(process.env, url));
	const pdf = await printCertificate({ size, language, title: `${sheet.heading}: ${sheet.name}`, at: now }, sheet);
	return new Response(new Uint8Array(pdf), {
		headers: { 'content-type': 'application/pdf', 'content-disposition': `inline; filename="certificate-${of.record}-${size}-${language}.pdf"` }
	});
}
