import { fail, redirect, type Cookies, type RequestEvent } from '@sveltejs/kit';
import * as z from 'zod';
import { database, field, ownPath, readForm, signInLearner, signInStaff, startOf, startSession, typedIn } from '#lib/server/index.ts';
import type { Actions, PageServerLoad } from './$types';

/** How long the language is remembered, seconds: 400 days, the longest that browsers keep a cookie. */
const REMEMBERED = 400 * 24 * 60 * 60;

/** @reason nobody types a longer one; a longer one only costs work. */
const LONGEST = 400;

const typedText = z.string({ error: 'missing' }).min(1, { error: 'missing' }).max(LONGEST, { error: 'too-long' });

const STAFF = z.object({ email: typedText, password: typedText });
const LEARNER = z.object({ number: field.number, pin: typedText, crewCode: z.union([z.literal(''), field.code]).optional() });

export const load: PageServerLoad = ({ locals, url }) => ({
	to: ownPath(url.searchParams.get('to'), ''),
	person: locals.who.kind === 'person' ? { name: locals.who.name, start: startOf(locals.who.role) } : null
});

/** Starts the session, takes the person's language over, and leads on. */
async function enter(event: RequestEvent, person: string, to: FormDataEntryValue | null): Promise<never> {
	const secure = event.url.protocol === 'https:';
	const { role, language } = await startSession(await database(), event.cookies, secure, person, new Date());
	if (language !== null) rememberLanguage(event.cookies, secure, language);
	redirect(303, ownPath(to, startOf(role)));
}

function rememberLanguage(cookies: Cookies, secure: boolean, language: string): void {
	cookies.set('language', language, { path: '/', httpOnly: true, sameSite: 'lax', secure, maxAge: REMEMBERED });
}

/** What a form is told: all failures read the same, except that waiting helps. */
function refusedFor(retryAfter: number | undefined): { readonly status: 400 | 429; readonly wait: number | null } {
	return retryAfter === undefined ? { status: 400, wait: null } : { status: 429, wait: retryAfter };
}

export const actions: Actions = {
	async staff(event) {
		const form = await event.request.formData();
		const typed = typedIn(form, ['email', 'to']);
		const read = readForm(form, STAFF);
		if (read.kind === 'refused') return fail(400, { form: 'staff' as const, problems: read.problems, typed, refused: false, wait: null, whichCrew: false });
		const result = await signInStaff(await database(), read.value, event.getClientAddress(), new Date());
		if (result.kind === 'signed-in') return enter(event, result.person, form.get('to'));
		const { status, wait } = refusedFor(result.retryAfter);
		return fail(status, { form: 'staff' as const, problems: {}, typed, refused: true, wait, whichCrew: false });
	},

	async learner(event) {
		const form = await event.request.formData();
		const typed = typedIn(form, ['number', 'crewCode', 'to']);
		const asked = form.has('crewCode');
		const read = readForm(form, LEARNER);
		if (read.kind === 'refused') return fail(400, { form: 'learner' as const, problems: read.problems, typed, refused: false, wait: null, whichCrew: asked });
		const { number, pin, crewCode = '' } = read.value;
		const result = await signInLearner(await database(), { number, pin, crewCode }, event.getClientAddress(), new Date());
		if (result.kind === 'signed-in') return enter(event, result.person, form.get('to'));
		if (result.why === 'which-crew') {
			const problems: Readonly<Record<string, string>> = asked ? { crewCode: 'missing' } : {};
			return fail(400, { form: 'learner' as const, problems, typed, refused: false, wait: null, whichCrew: true });
		}
		const { status, wait } = refusedFor(result.retryAfter);
		return fail(status, { form: 'learner' as const, problems: {}, typed, refused: true, wait, whichCrew: asked });
	}
};
