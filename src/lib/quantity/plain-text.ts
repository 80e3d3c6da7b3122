/**
 * One spelling for the many characters that keyboards, phones and copied text put in place of
 * digits, marks, minus signs and spaces.
 */

const FRACTIONS: Readonly<Record<string, string>> = {
	'½': '1/2',
	'⅓': '1/3',
	'⅔': '2/3',
	'¼': '1/4',
	'¾': '3/4',
	'⅕': '1/5',
	'⅖': '2/5',
	'⅗': '3/5',
	'⅘': '4/5',
	'⅙': '1/6',
	'⅚': '5/6',
	'⅛': '1/8',
	'⅜': '3/8',
	'⅝': '5/8',
	'⅞': '7/8'
};

const FOOT_MARKS = /[\u2018\u2019\u201a\u201b\u2032\u02b9\u02bc\u02c8\u00b4`]/g;
const INCH_MARKS = /[\u201c\u201d\u201e\u201f\u2033\u02ba\u02dd\u3003]|''/g;
const MINUSES = /[\u2010-\u2015\u2212\ufe63]/g;
const SLASHES = /[\u2044\u2215]/g;
const INVISIBLE = /[\u200b-\u200f\u2060\ufeff\u00ad]/g;
const SPACES = /\s+/g;
const FULL_WIDTH = /[\uff01-\uff5e]/g;
const FRACTION_SIGNS = new RegExp(`[${Object.keys(FRACTIONS).join('')}]`, 'g');

/**
 * The text with ASCII digits, `'` and `"` as foot and inch marks, `-` as minus, `/` as fraction
 * bar and single plain spaces; trimmed. A fraction sign becomes `n/d` set off by a space (6½ is
 * `6 1/2`), which ordinary compatibility folding would run together to 61/2.
 */
export function plainText(text: string): string {
	return text
		.replace(FULL_WIDTH, (c) => String.fromCharCode(c.charCodeAt(0) - 0xfee0))
		.replace(FRACTION_SIGNS, (c) => ` ${FRACTIONS[c] ?? c} `)
		.replace(INVISIBLE, '')
		.replace(FOOT_MARKS, "'")
		.replace(INCH_MARKS, '"')
		.replace(MINUSES, '-')
		.replace(SLASHES, '/')
		.replace(SPACES, ' ')
		.trim();
}
