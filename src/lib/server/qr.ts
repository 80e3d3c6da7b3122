import { create } from 'qrcode';

/** A QR code as one path of squares of size 1, with the quiet zone round it. */
export interface QrCode {
	/** Width and height. */
	readonly size: number;
	/** SVG path of the dark modules. */
	readonly path: string;
}

/** @source ISO/IEC 18004 asks for four modules of quiet zone; from memory. */
const QUIET = 4;

/** @returns the QR code (ISO/IEC 18004) of a text, with medium error correction. */
export function qrCode(text: string): QrCode {
	const { modules } = create(text, { errorCorrectionLevel: 'M' });
	let path = '';
	for (let row = 0; row < modules.size; row += 1) {
		for (let column = 0; column < modules.size; column += 1) {
			if (modules.get(row, column) !== 0) path += `M${String(column + QUIET)} ${String(row + QUIET)}h1v1h-1z`;
		}
	}
	return { size: modules.size + 2 * QUIET, path };
}
