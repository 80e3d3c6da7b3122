/** Answers that everybody may have, and pages of other sites may read. */

/** How long they may be kept, s. @reason what is taken back is to be seen soon; keys change rarely */
const KEPT = { keys: 3600, profile: 3600, list: 60 } as const;

/** @returns the headers of something that is published. */
export function publishedAs(what: keyof typeof KEPT, type: string): Readonly<Record<string, string>> {
	return { 'content-type': type, 'cache-control': `public, max-age=${String(KEPT[what])}`, 'access-control-allow-origin': '*' };
}
