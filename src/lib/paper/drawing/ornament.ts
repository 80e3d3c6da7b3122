/** The tape beside a certificate: the hatches of its terms, drawn for their looks. It states no length. */
import type { Pen } from '../pen.ts';
import { strokePath } from './lines.ts';

/** Parts of the tape from above, as shares of its height. @reason for the eye alone */
const PARTS = [
	{ hatch: 'open', share: 0.29 },
	{ hatch: 'zigzag', share: 0.25 },
	{ hatch: 'upright', share: 0.07 },
	{ hatch: 'dots', share: 0.12 },
	{ hatch: 'diagonal', share: 0.27 }
] as const;

type Hatch = (typeof PARTS)[number]['hatch'];

function lines(from: number, to: number, step: number): readonly number[] {
	return Array.from({ length: Math.max(0, Math.ceil((to - from) / step)) }, (_, i) => from + i * step);
}

function zigzag(x: number, y: number, width: number, height: number): string {
	const step = width / 4;
	return lines(y - 4, y + height + 4, 7)
		.map((at) => `M${x} ${at}${[1, 2, 3, 4].map((i) => `L${x + i * step} ${at + (i % 2 === 1 ? 5 : 0)}`).join('')}`)
		.join('');
}

const DRAW: Readonly<Record<Hatch, (pen: Pen, x: number, y: number, width: number, height: number) => void>> = {
	open: (pen, x, y, width, height) => {
		strokePath(pen, lines(y, y + height, 12).map((at, i) => `M${x} ${at}H${x + (i % 4 === 0 ? 9 : 5)}`).join(''), { width: 0.6 });
		const [middle, end] = [x + width / 2, y + height - 9];
		strokePath(pen, `M${middle} ${y + 10}V${end}`, { width: 0.9, dash: [2, 3] });
		strokePath(pen, `M${middle - 4} ${end - 6}L${middle} ${end}L${middle + 4} ${end - 6}`, { width: 0.9 });
	},
	zigzag: (pen, x, y, width, height) => strokePath(pen, zigzag(x, y, width, height), { width: 0.9 }),
	upright: (pen, x, y, width, height) => strokePath(pen, lines(x + 3.5, x + width, 4).map((at) => `M${at} ${y}V${y + height}`).join(''), { width: 0.9 }),
	dots: (pen, x, y, width, height) => {
		const rows = lines(y + 4, y + height, 5);
		const dots = rows.flatMap((at, i) => lines(x + (i % 2 === 0 ? 3 : 6.5), x + width, 7).map((left) => `M${left} ${at}h0.01`));
		strokePath(pen, dots.join(''), { width: 1.5, cap: 'round' });
	},
	diagonal: (pen, x, y, width, height) => strokePath(pen, lines(y - width, y + height + width, 8).map((at) => `M${x} ${at + width}L${x + width} ${at}`).join(''), { width: 1.1 })
};

/** Draws the tape into a room. Call it within an artifact: it says nothing. */
export function ornament(pen: Pen, x: number, y: number, width: number, height: number): void {
	let at = y;
	for (const { hatch, share } of PARTS) {
		const tall = height * share;
		pen.doc.save().rect(x, at, width, tall).clip();
		DRAW[hatch](pen, x, at, width, tall);
		pen.doc.restore();
		strokePath(pen, `M${x} ${at}H${x + width}`, { width: 1.2 });
		at += tall;
	}
	strokePath(pen, `M${x} ${y}H${x + width}V${y + height}H${x}Z`, { width: 1.4 });
	strokePath(pen, `M${x - 3} ${y}H${x + width + 3}`, { width: 2.4 });
}
