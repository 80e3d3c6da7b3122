import { fail, redirect } from '@sveltejs/kit';
import { checkCredential, database, LONGEST_TOKEN, readCertificateCode, type CheckedCredential } from '#lib/server/index.ts';
import { PRIVATE_PAGE } from './private.ts';
import type { Actions, PageServerLoad } from './$types';

export const load: PageServerLoad = ({ setHeaders }) => setHeaders(PRIVATE_PAGE);

/** What was sent: the file, if one was chosen, else what was typed. Null for what is too long to be looked at. */
async function given(form: FormData): Promise<string | null> {
	const file = form.get('file');
	if (file instanceof File && file.size > 0) return file.size > LONGEST_TOKEN ? null : file.text();
	const typed = form.get('given');
	if (typeof typed !== 'string') return '';
	return typed.length > LONGEST_TOKEN ? null : typed;
}

/** What is shown of a credential whose signature holds: it stands in the credential itself. */
function shownOf({ claims }: CheckedCredential) {
	if (claims === null) return null;
	return { what: claims.name, employer: claims.issuer.name, from: claims.validFrom.slice(0, 10), until: claims.validUntil?.slice(0, 10) ?? null };
}

export const actions: Actions = {
	/** A code leads to its page; a credential is checked here. Nothing is stored. */
	async check({ request }) {
		const text = await given(await request.formData());
		const refuse = (problem: string, typed: string) => fail(400, { problem, typed, verdict: null, shown: null });
		if (text === null) return refuse('too-long', '');
		if (text.trim() === '') return refuse('missing', '');
		const code = readCertificateCode(text);
		if (code !== null) redirect(303, `/v/${code}`);
		if (!text.includes('.')) return refuse('no-code', text);
		const checked = await checkCredential(await database(), text, new Date());
		return { problem: null, typed: '', verdict: checked.kind, shown: shownOf(checked) };
	}
};
