import { randomUUID } from 'node:crypto';
import { error, redirect, type RequestEvent } from '@sveltejs/kit';
import type { Handle, HandleServerError, ServerInit } from '@sveltejs/kit/hooks';
import {
	ALL_JOBS,
	accessTo,
	chooseLanguage,
	closeDatabase,
	compressPage,
	database,
	enterEarlierRecords,
	fillOutcomes,
	firstSetUpCode,
	forgetOld,
	giveGuestToken,
	publicAddress,
	lacksRoom,
	noRoom,
	NO_ROOM,
	refusal,
	serverKeys,
	signingKey,
	startJobs,
	whoIs
} from '#lib/server/index.ts';
import { recordMessages } from '#lib/text/index.ts';

/** The languages that pages are written in; the first is for visitors who want none of them. */
const LANGUAGES = ['en', 'es'] as const;

/** How pages are coloured; the first follows the visitor's system. */
const THEMES = ['system', 'light', 'dark'] as const;

/** Where visitors answer site problems. */
const LEARN = /^\/learn(\/|$)/;

/** How often sessions and failures that nobody waits for are forgotten, ms. */
const DAY = 24 * 60 * 60 * 1000;

/** What scripts ask for, and are answered in JSON. */
const INTERFACE = /^\/api(\/|$)/;

/**
 * A server whose database cannot be opened, that has no key, or whose address is none, does not start. Where there is no organisation yet,
 * the code for the first is said on the console.
 */
export const init: ServerInit = async () => {
	const db = await database();
	serverKeys();
	publicAddress(process.env, new URL('http://localhost'));
	await signingKey(db, 'checkpoint', new Date());
	const code = await firstSetUpCode(db, new Date());
	if (code !== null) console.log(`No organisation yet. Open /setup and enter this code; it works once, for seven days: ${code}`);
	// Before anybody asks for a record.
	await enterEarlierRecords(db, new Date());
	// Nobody waits for it: what is missing until then are answers from before this version.
	const ending = new AbortController();
	void fillOutcomes(db, new Date(), ending.signal).catch((error: unknown) => console.error(error));
	const tidy = () => void forgetOld(db, new Date()).catch((error: unknown) => console.error(error));
	tidy();
	setInterval(tidy, DAY).unref();
	const endJobs = startJobs(db, ALL_JOBS, (error) => console.error(error));
	process.once('sveltekit:shutdown', () => {
		ending.abort();
		void endJobs().then(closeDatabase);
	});
};

/** Whether another site's page sends this. SvelteKit asks it of forms; here it is asked of what scripts send. */
function fromElsewhere({ request, url }: RequestEvent): boolean {
	const origin = request.headers.get('origin');
	return request.method !== 'GET' && request.method !== 'HEAD' && INTERFACE.test(url.pathname) && origin !== null && origin !== url.origin;
}

/** @returns the refusal of a page or an endpoint that this visitor may not have; undefined where the table allows it. */
async function refused(event: RequestEvent): Promise<Response | undefined> {
	const { route, request, url, locals } = event;
	if (fromElsewhere(event)) return refusal(403, [{ field: 'origin', problem: 'is another site', remedy: 'send it from a page of this site' }]);
	// Where nothing is, the error page comes by itself.
	const access = route.id === null ? 'allowed' : accessTo(route.id, request.method, url.searchParams, locals.who);
	if (access === 'allowed') return undefined;
	if (INTERFACE.test(url.pathname)) {
		return access === 'sign-in'
			? refusal(401, [{ field: 'session', problem: 'is missing or has ended', remedy: 'sign in' }])
			: refusal(404, [{ field: 'path', problem: 'is not known here', remedy: 'use an address of this site' }]);
	}
	if (access === 'sign-in') {
		// The form of a page cannot be opened again: only the page itself.
		redirect(303, `/sign-in?${new URLSearchParams({ to: url.pathname + (request.method === 'GET' ? url.search : '') })}`);
	}
	if (event.isDataRequest) error(404, 'Not Found');
	// The same page as for an address where nothing is.
	const page = await event.fetch('/not-found');
	return new Response(page.body, page);
}

/** Knows the visitor, chooses the language, refuses what the table does not allow, and compresses the page. */
export const handle: Handle = async ({ event, resolve }) => {
	const { cookies, locals, request, url } = event;
	const secure = url.protocol === 'https:';
	const wanted = request.headers.get('accept-language');
	// Said before anything can fail, so that it can be told in words.
	locals.language = chooseLanguage(LANGUAGES, cookies.get('language'), wanted);
	const who = await whoIs(await database(), cookies, secure, new Date());
	locals.who = who;
	const ownLanguage = who.kind === 'person' ? (who.language ?? undefined) : undefined;
	locals.language = chooseLanguage(LANGUAGES, cookies.get('language') ?? ownLanguage, wanted);
	locals.theme = THEMES.find((theme) => theme === cookies.get('theme')) ?? THEMES[0];
	const response = (await refused(event)) ?? (await answered(event, resolve));
	// What a signed-in person sees must not stay in a cache of a shared computer.
	if (who.kind === 'person') response.headers.set('cache-control', 'no-store');
	return compressPage(response, request.headers.get('accept-encoding'));
};

async function answered(event: RequestEvent, resolve: Parameters<Handle>[0]['resolve']): Promise<Response> {
	const { cookies, locals, url } = event;
	if (LEARN.test(url.pathname)) giveGuestToken(cookies, url.protocol === 'https:');
	const response = await resolve(event, {
		transformPageChunk: ({ html }) => html.replace('%underfoot.lang%', locals.language).replace('%underfoot.theme%', locals.theme)
	});
	// handleError has given it this status; scripts are told in the form that all refusals have.
	return response.status === NO_ROOM && INTERFACE.test(url.pathname) ? noRoom() : response;
}

/**
 * A full disk is told in words: nothing was stored, and it can be sent again. An error nobody foresaw is logged under an
 * id; the visitor is told the id and nothing else.
 */
export const handleError: HandleServerError = async ({ kind, error, event }) => {
	if (kind !== 'unknown') return;
	if (lacksRoom(error)) {
		console.error('No room on the disk; nothing was stored:', event.request.method, event.url.pathname);
		return { status: NO_ROOM, message: (await recordMessages(event.locals.language)).faults.noRoom };
	}
	const id = randomUUID();
	console.error(id, event.request.method, event.url.pathname, error);
	return { message: id };
};
