/**
 * Headers of pages that no search engine and no cache is to keep, and whose address no other site is to learn. A policy of
 * no referrer at all would take the origin from their own forms, which are then refused.
 */
export const PRIVATE_PAGE = { 'cache-control': 'no-store', 'x-robots-tag': 'noindex', 'referrer-policy': 'same-origin' } as const;
