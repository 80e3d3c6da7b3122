/** @returns a text without accents, in small letters. */
export function unaccented(text: string): string {
	return text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
}

/** @returns a text as it is sorted and searched: without accents, in small letters, one space between words. */
export function folded(text: string): string {
	return unaccented(text).trim().replace(/\s+/gu, ' ');
}
