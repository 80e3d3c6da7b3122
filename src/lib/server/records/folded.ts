/** @returns a text as it is sorted and searched: without accents, in small letters, one space between words. */
export function folded(text: string): string {
	return text
		.normalize('NFKD')
		.replace(/\p{M}/gu, '')
		.toLowerCase()
		.trim()
		.replace(/\s+/gu, ' ');
}
