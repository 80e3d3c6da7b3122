/**
 * How wide a text will be, without a browser: the advance widths of Overpass (the wider of weights 600 and
 * 700, in thousandths of the size; figures tabular), read from the font file with the browser's own measure.
 * Layout can so be computed on the server and tested; it errs to the wide side (no kerning taken off).
 */
const ASCII = (
	'250 300 442 702 603 857 710 245 372 372 552 639 249 414 243 522 655 655 655 655 655 655 655 655 655 655 ' +
	'243 243 639 639 639 511 834 717 690 641 710 624 574 683 721 295 557 708 566 809 718 725 638 725 689 613 ' +
	'602 712 682 848 678 683 643 393 522 393 639 496 300 557 577 541 577 557 362 577 592 283 283 559 291 876 ' +
	'592 566 578 577 416 492 392 592 557 748 577 568 543 383 301 383 639'
)
	.split(' ')
	.map(Number);

const LATIN_1 = (
	'250 299 547 603 652 607 301 534 300 853 447 560 639 300 853 300 416 639 373 363 300 597 649 300 300 225 ' +
	'466 560 720 759 840 511 717 717 717 717 717 717 907 641 624 624 624 624 295 295 295 295 710 718 725 725 ' +
	'725 725 725 639 725 712 712 712 712 683 645 577 557 557 557 557 557 557 856 541 557 557 557 557 283 283 ' +
	'283 283 566 592 566 566 566 566 566 639 566 592 592 592 592 568 578 568'
)
	.split(' ')
	.map(Number);

const OTHER: Readonly<Record<string, number>> = {
	'Œ': 1167,
	'œ': 1094,
	'–': 504,
	'—': 584,
	'‘': 249,
	'’': 249,
	'“': 483,
	'”': 483,
	'…': 1056,
	'−': 639,
	'′': 260,
	'″': 457
};

/** Advance of one character not in the tables: a wide letter, so that nothing is cut. */
const UNKNOWN = 720;

/** Capital height and depth of the letters below the line, in parts of the size. */
export const ASCENT = 0.72;
export const DESCENT = 0.21;

/** Width in px of `text` set at `size` px. */
export function textWidth(text: string, size: number): number {
	let sum = 0;
	for (const char of text) {
		const code = char.codePointAt(0) ?? 0;
		if (code >= 32 && code < 127) sum += ASCII[code - 32] ?? UNKNOWN;
		else if (code >= 160 && code < 256) sum += LATIN_1[code - 160] ?? UNKNOWN;
		else sum += OTHER[char] ?? UNKNOWN;
	}
	return (sum * size) / 1000;
}

/**
 * Text broken into lines of at most `width` px, at spaces only: a single word is never cut, so a line can
 * be wider than asked when one word is.
 */
export function wrapText(text: string, size: number, width: number): string[] {
	const lines: string[] = [];
	let line = '';
	for (const word of text.split(/\s+/).filter((w) => w !== '')) {
		const longer = line === '' ? word : `${line} ${word}`;
		if (line !== '' && textWidth(longer, size) > width) {
			lines.push(line);
			line = word;
		} else {
			line = longer;
		}
	}
	if (line !== '') lines.push(line);
	return lines;
}

/** Width in px of the widest word. */
export function longestWord(text: string, size: number): number {
	return Math.max(0, ...text.split(/\s+/).map((w) => textWidth(w, size)));
}
