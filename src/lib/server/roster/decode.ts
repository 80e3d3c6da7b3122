/** Bytes of a file that somebody saved from a spreadsheet, as text. */

/** The longest list that is read, bytes. @reason a thousand people in any encoding; far longer is another file. */
export const LONGEST_LIST = 256 * 1024;

const utf8 = new TextDecoder('utf-8', { fatal: true });

/** By the marks that files begin with; those of the decoder's own name are taken off by it. */
const MARKED: readonly (readonly [mark: readonly number[], encoding: string])[] = [
	[[0xef, 0xbb, 0xbf], 'utf-8'],
	[[0xff, 0xfe], 'utf-16le'],
	[[0xfe, 0xff], 'utf-16be']
];

/** @returns whether bytes look like Latin text of two bytes a letter: every second one is zero. */
function zerosAt(bytes: Uint8Array, offset: 0 | 1): boolean {
	const looked = Math.min(bytes.length - (bytes.length % 2), 200);
	if (looked < 4) return false;
	let zeros = 0;
	for (let i = offset; i < looked; i += 2) if (bytes[i] === 0) zeros += 1;
	return zeros > looked / 4;
}

function encodingOf(bytes: Uint8Array): string {
	const marked = MARKED.find(([mark]) => mark.every((byte, i) => bytes[i] === byte));
	if (marked !== undefined) return marked[1];
	if (zerosAt(bytes, 1)) return 'utf-16le';
	if (zerosAt(bytes, 0)) return 'utf-16be';
	try {
		utf8.decode(bytes);
		return 'utf-8';
	} catch {
		// What spreadsheets on Windows write in western Europe and America when they are not asked for UTF-8.
		return 'windows-1252';
	}
}

/** @returns the text of a file: UTF-8, UTF-16 of either order, with or without a mark, else Windows-1252. */
export function decodeList(bytes: Uint8Array): string {
	return new TextDecoder(encodingOf(bytes)).decode(bytes);
}
