/** Pages, and the data of pages: they shrink, and are long enough to be worth it. */
const PAGE = /^text\/html\b/;
/** Answers of the API, which are worth it only where they are long. */
const DATA = /^application\/json\b/;
/** From this length on, bytes. @reason how far a whole crew is with a set, asked for every second over a phone's line; all else stays below */
const LONG = 8192;

function isWorthIt(headers: Headers): boolean {
	const type = headers.get('content-type') ?? '';
	return PAGE.test(type) || (DATA.test(type) && Number(headers.get('content-length') ?? 0) >= LONG);
}

/**
 * A page or a long answer of the API, compressed if the browser takes it. Short answers are left alone: compressing them costs
 * more than it saves. Static files have been compressed by the build.
 * @param accepted the browser's Accept-Encoding header
 */
export function compressPage(response: Response, accepted: string | null): Response {
	if (response.body === null || !isWorthIt(response.headers)) return response;
	if (response.headers.has('content-encoding')) return response;
	const headers = new Headers(response.headers);
	headers.append('vary', 'accept-encoding');
	if (!/\bgzip\b(?!\s*;\s*q=0(?:\.0*)?(?:,|$))/.test(accepted ?? '')) {
		return new Response(response.body, { status: response.status, headers });
	}
	headers.set('content-encoding', 'gzip');
	headers.delete('content-length');
	const { status } = response;
	return new Response(response.body.pipeThrough(new CompressionStream('gzip')), { status, headers });
}
