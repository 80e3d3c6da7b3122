/** Path texts as the operators of a PDF: for the tiles of hatches, which are written into the file as they are. */

/** A path text's commands with their numbers. */
const COMMAND = /([MmLlHhVvQqTtCcZz])([^A-Za-z]*)/g;
const NUMBER = /-?\d*\.?\d+/g;

/** How many numbers each command takes. */
const TAKES: Readonly<Record<string, number>> = { m: 2, l: 2, h: 1, v: 1, q: 4, t: 2, c: 6, z: 0 };

function written(...numbers: readonly number[]): string {
	return numbers.map((one) => String(Math.round(one * 1000) / 1000)).join(' ');
}

/**
 * @param d a path text of the commands M L H V Q T C Z, large and small
 * @returns the operators that build the path, without the one that paints it
 * @throws RangeError on a command with too few numbers
 */
export function pathOperators(d: string): string {
	const out: string[] = [];
	let [x, y] = [0, 0];
	let [startX, startY] = [0, 0];
	/** The last control point of a quadratic curve, for the smooth one behind it. */
	let control: readonly [number, number] | undefined;
	for (const [, letter = '', rest = ''] of d.matchAll(COMMAND)) {
		const kind = letter.toLowerCase();
		const takes = TAKES[kind] ?? 0;
		const numbers = [...rest.matchAll(NUMBER)].map(([text]) => Number(text));
		if (takes === 0) {
			out.push('h');
			[x, y] = [startX, startY];
			continue;
		}
		if (numbers.length === 0 || numbers.length % takes !== 0) throw new RangeError(`the path command "${letter}" has ${numbers.length} numbers`);
		for (let i = 0; i < numbers.length; i += takes) {
			const [dx, dy] = letter === kind ? [x, y] : [0, 0];
			const at = (n: number): number => numbers[i + n] ?? 0;
			const before: readonly [number, number] | undefined = control;
			control = undefined;
			switch (kind) {
				case 'h':
					x = dx + at(0);
					out.push(`${written(x, y)} l`);
					break;
				case 'v':
					y = dy + at(0);
					out.push(`${written(x, y)} l`);
					break;
				case 'c':
					out.push(`${written(dx + at(0), dy + at(1), dx + at(2), dy + at(3), dx + at(4), dy + at(5))} c`);
					[x, y] = [dx + at(4), dy + at(5)];
					break;
				case 'q':
				case 't': {
					const [cx, cy] = kind === 'q' ? [dx + at(0), dy + at(1)] : before === undefined ? [x, y] : [2 * x - before[0], 2 * y - before[1]];
					const [ex, ey] = kind === 'q' ? [dx + at(2), dy + at(3)] : [dx + at(0), dy + at(1)];
					// A quadratic curve is a cubic one with its control points two thirds of the way.
					out.push(`${written(x + (2 / 3) * (cx - x), y + (2 / 3) * (cy - y), ex + (2 / 3) * (cx - ex), ey + (2 / 3) * (cy - ey), ex, ey)} c`);
					[x, y, control] = [ex, ey, [cx, cy]];
					break;
				}
				default:
					[x, y] = [dx + at(0), dy + at(1)];
					// Further places behind a move are lines.
					out.push(`${written(x, y)} ${kind === 'm' && i === 0 ? 'm' : 'l'}`);
					if (kind === 'm' && i === 0) [startX, startY] = [x, y];
			}
		}
	}
	return out.join('\n');
}
