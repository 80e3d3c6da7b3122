/** Unpacks font files once, so that not every document has to: the PDF library's own way of doing so takes most of its time. */
import { inflateSync } from 'node:zlib';

/** @source WOFF File Format 1.0, sections 4 and 5: sizes of the header and of an entry of the table directory, bytes */
const WOFF = { signature: 0x774f_4646, header: 44, entry: 20 } as const;
/** @source OpenType specification, "Organization of an OpenType Font": sizes of the header and of a table record, bytes */
const SFNT = { header: 12, record: 16, align: 4 } as const;

const aligned = (length: number): number => Math.ceil(length / SFNT.align) * SFNT.align;

/**
 * @param woff a font file in WOFF 1.0
 * @returns the same font as OpenType
 * @throws Error for a file in another format
 */
export function unpackFont(woff: Buffer): Buffer {
	if (woff.readUInt32BE(0) !== WOFF.signature) throw new Error('This is no font in WOFF 1.0');
	const count = woff.readUInt16BE(12);
	const tables = Array.from({ length: count }, (_, i) => {
		const at = WOFF.header + i * WOFF.entry;
		const [offset, packed, length] = [woff.readUInt32BE(at + 4), woff.readUInt32BE(at + 8), woff.readUInt32BE(at + 12)];
		const data = woff.subarray(offset, offset + packed);
		return { tag: woff.subarray(at, at + 4), checksum: woff.readUInt32BE(at + 16), data: packed < length ? inflateSync(data) : data };
	});
	const size = tables.reduce((sum, { data }) => sum + aligned(data.length), SFNT.header + count * SFNT.record);
	const font = Buffer.alloc(size);
	const power = Math.floor(Math.log2(count));
	woff.copy(font, 0, 4, 8);
	font.writeUInt16BE(count, 4);
	font.writeUInt16BE(2 ** power * SFNT.record, 6);
	font.writeUInt16BE(power, 8);
	font.writeUInt16BE((count - 2 ** power) * SFNT.record, 10);
	let offset = SFNT.header + count * SFNT.record;
	for (const [i, { tag, checksum, data }] of tables.entries()) {
		const at = SFNT.header + i * SFNT.record;
		tag.copy(font, at);
		font.writeUInt32BE(checksum, at + 4);
		font.writeUInt32BE(offset, at + 8);
		font.writeUInt32BE(data.length, at + 12);
		data.copy(font, offset);
		offset += aligned(data.length);
	}
	return font;
}
