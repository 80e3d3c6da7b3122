/**
 * The order in which a line is set: letters that are written from right to left stand in it as one sees them. Lines run
 * from left to right, with names in other scripts within them.
 * @source Unicode Standard Annex 9 (bidirectional algorithm), rules W2, N1, N2 and L2 for a paragraph of level 0, without explicit marks; from memory
 */

/** A stretch of a line, in the order from left to right. */
export interface Stretch {
	/** In the order of reading. */
	readonly text: string;
	/** Whether it is set from right to left. */
	readonly leftward: boolean;
}

type Way = 'right' | 'left' | 'number' | 'none';

const LEFTWARD = /[\p{Script=Hebrew}\p{Script=Arabic}\p{Script=Syriac}\p{Script=Thaana}\p{Script=Nko}]/u;

/** @returns whether a text has letters that are written from right to left. */
export function hasLeftward(text: string): boolean {
	return LEFTWARD.test(text);
}

function wayOf(letter: string): Way {
	if (/\p{N}/u.test(letter)) return 'number';
	if (/\p{M}|[\u200c\u200d]/u.test(letter)) return 'none';
	if (LEFTWARD.test(letter)) return 'left';
	return /\p{L}/u.test(letter) ? 'right' : 'none';
}

/** Marks go with the letter before them, whatever it is. */
function clusters(text: string): readonly string[] {
	return text.match(/[^\p{M}\u200c\u200d][\p{M}\u200c\u200d]*|[\p{M}\u200c\u200d]+/gu) ?? [];
}

/** The way of a whole line: that of its first letter, unless most letters go the other way. @source the same, P2 and P3, for the first line; a line that is broken off somewhere begins with any letter */
function wayOfLine(ways: readonly Way[]): 'right' | 'left' {
	const count = (way: Way): number => ways.filter((one) => one === way).length;
	const first = ways.find((one) => one === 'left' || one === 'right');
	return first === 'left' && count('left') >= count('right') ? 'left' : 'right';
}

/** What stands between two of one way goes with them; else with the line. A number goes with the letters before it. */
function resolved(ways: readonly Way[], line: 'right' | 'left'): readonly ('right' | 'left' | 'number')[] {
	const before = (i: number): 'right' | 'left' => {
		const found = ways.slice(0, i).findLast((way) => way === 'left' || way === 'right');
		return found === 'left' || found === 'right' ? found : line;
	};
	const after = (i: number): 'right' | 'left' => {
		const at = ways.findIndex((way, nth) => nth > i && way !== 'none');
		const found = ways[at];
		if (found === 'number') return before(at);
		return found === 'left' || found === 'right' ? found : line;
	};
	return ways.map((way, i) => {
		if (way === 'left' || way === 'right') return way;
		if (way === 'number') return before(i) === 'left' ? 'number' : 'right';
		const [left, right] = [before(i), after(i)];
		return left === right ? left : line;
	});
}

const MIRRORED: Readonly<Record<string, string>> = { '(': ')', ')': '(', '[': ']', ']': '[', '«': '»', '»': '«' };

/** @returns the stretches of a line from left to right. */
export function inSightOrder(line: string): readonly Stretch[] {
	const letters = clusters(line);
	const plain = letters.map((letter) => wayOf([...letter][0] ?? ''));
	const whole = wayOfLine(plain);
	const ways = resolved(plain, whole);
	if (whole === 'left') return fromRightToLeft(letters, ways);
	const stretches: Stretch[] = [];
	for (let i = 0; i < letters.length; ) {
		const leftward = ways[i] !== 'right';
		let end = i;
		while (end < letters.length && (ways[end] !== 'right') === leftward) end += 1;
		if (leftward) stretches.push(...fromRightToLeft(letters.slice(i, end), ways.slice(i, end)));
		else stretches.push({ text: letters.slice(i, end).join(''), leftward: false });
		i = end;
	}
	return stretches;
}

/** Words as one sees them, the last from the left first; what goes the other way within them keeps its order. */
function fromRightToLeft(letters: readonly string[], ways: readonly ('right' | 'left' | 'number')[]): readonly Stretch[] {
	const pieces: Stretch[] = [];
	for (let i = 0; i < letters.length; ) {
		const way = ways[i];
		const space = way === 'left' && letters[i] === ' ';
		let end = i + 1;
		while (end < letters.length && ways[end] === way && !space && (way !== 'left' || letters[end] !== ' ')) end += 1;
		const text = letters.slice(i, end).join('');
		pieces.push(way === 'left' && !space ? { text: text.replace(/[()[\]«»]/g, (mark) => MIRRORED[mark] ?? mark), leftward: true } : { text, leftward: false });
		i = end;
	}
	return pieces.toReversed();
}
