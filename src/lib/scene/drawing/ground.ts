/** Groups of three strokes under the ground line. Pixels. */
import { px } from './view.ts';

export function earthStrokes(x1: number, x2: number, y: number): string {
	let d = '';
	for (let x = x1 + 4; x + 20 <= x2; x += 27) {
		for (let i = 0; i < 3; i++) d += `M${px(x + i * 5)} ${px(y + 10)}l7 -7`;
	}
	return d;
}

/** Two break lines, each with its zigzags, round a strip that is left out. */
export function breakLines(x1: number, x2: number, top: number, bottom: number): readonly string[] {
	return [top + 5, bottom - 5].map((y) => {
		let d = `M${px(x1)} ${px(y)}`;
		const zigzags = Math.max(1, Math.round((x2 - x1) / 220));
		for (let i = 0; i < zigzags; i++) {
			const mid = x1 + ((x2 - x1) * (i + 0.5)) / zigzags;
			d += `L${px(mid - 9)} ${px(y)}l5 -6l8 12l5 -6`;
		}
		return `${d}L${px(x2)} ${px(y)}`;
	});
}
