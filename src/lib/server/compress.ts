/** Kinds of answers that shrink, and are long enough to be worth it: pages and the data of pages. */
const COMPRESSIBLE = /^text\/html\b/;

/**
 * A page, compressed if the browser takes it. Short answers of the API are left alone: compressing them costs
 * more than it saves. Static files have been compressed by the build.
 * @param accepted the browser's Accept-Encoding header
 */
export function compressPage(response: Response, accepted: string | null): Response {
	const type = response.headers.get('content-type') ?? '';
	if (response.body === null || !COMPRESSIBLE.test(type)) return response;
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
