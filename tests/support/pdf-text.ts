/** Reads the words of a PDF that was written without compression: enough of the format for what this program writes. */

/** A page as it was written. */
export interface ReadPage {
	/** Each run of text in the order in which it was drawn. */
	readonly runs: readonly string[];
	/** The operators of the page. */
	readonly operators: string;
}

export interface ReadPdf {
	readonly pages: readonly ReadPage[];
	/** The whole file, byte for byte. */
	readonly raw: string;
}

function objectsOf(raw: string): ReadonlyMap<string, string> {
	const objects = new Map<string, string>();
	for (const [, id = '', body = ''] of raw.matchAll(/(?:^|\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) objects.set(id, body);
	return objects;
}

function streamOf(body: string): string {
	return /stream\n([\s\S]*?)\nendstream/.exec(body)?.[1] ?? '';
}

/** The letters of a font by number of the glyph. */
function lettersOf(map: string): ReadonlyMap<number, string> {
	const letters = new Map<number, string>();
	for (const [, from = '', , list = ''] of map.matchAll(/<([0-9a-f]+)> <([0-9a-f]+)> \[([^\]]*)\]/gi)) {
		let glyph = parseInt(from, 16);
		// A ligature stands for several letters.
		for (const [, hex = ''] of list.matchAll(/<([0-9a-f ]+)>/gi)) {
			letters.set(glyph, Buffer.from(hex.replaceAll(' ', ''), 'hex').swap16().toString('utf16le'));
			glyph += 1;
		}
	}
	return letters;
}

/** @returns the fonts that a page names. Resources may stand in an object of their own. */
function fontsOf(page: string, objects: ReadonlyMap<string, string>): ReadonlyMap<string, ReadonlyMap<number, string>> {
	const resources = objects.get(/\/Resources (\d+) 0 R/.exec(page)?.[1] ?? '') ?? page;
	const listed = /\/Font <<([\s\S]*?)>>/.exec(resources)?.[1] ?? '';
	return new Map(
		[...listed.matchAll(/\/(F\d+) (\d+) 0 R/g)].map(([, name = '', id = '']) => {
			const map = /\/ToUnicode (\d+) 0 R/.exec(objects.get(id) ?? '')?.[1] ?? '';
			return [name, lettersOf(streamOf(objects.get(map) ?? ''))];
		})
	);
}

function runsOf(operators: string, fonts: ReadonlyMap<string, ReadonlyMap<number, string>>): readonly string[] {
	const runs: string[] = [];
	let letters: ReadonlyMap<number, string> = new Map();
	for (const [, font, text] of operators.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ/g)) {
		if (font !== undefined) letters = fonts.get(font) ?? new Map();
		else runs.push([...(text ?? '').matchAll(/<([0-9a-f]+)>/gi)].map(([, hex = '']) => (hex.match(/.{4}/g) ?? []).map((glyph) => letters.get(parseInt(glyph, 16)) ?? '\ufffd').join('')).join(''));
	}
	return runs;
}

export function readPdf(bytes: Uint8Array): ReadPdf {
	const raw = Buffer.from(bytes).toString('latin1');
	const objects = objectsOf(raw);
	const pages = [...objects.values()].filter((body) => /\/Type \/Page\n/.test(body));
	return {
		raw,
		pages: pages.map((page) => {
			const operators = streamOf(objects.get(/\/Contents (\d+) 0 R/.exec(page)?.[1] ?? '') ?? '');
			return { operators, runs: runsOf(operators, fontsOf(page, objects)) };
		})
	};
}

/** The words of a page without any space, so that breaks of lines do not matter. */
export function packed(text: string): string {
	return text.replace(/\s+/g, '');
}
