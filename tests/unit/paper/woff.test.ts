import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { unpackFont } from '#lib/paper/woff.ts';

const require = createRequire(import.meta.url);
const fileOf = (path: string): Buffer => readFileSync(require.resolve(`@fontsource/${path}.woff`));

/** @source OpenType specification, "Calculating checksums": the sum of a table's 32-bit numbers; of `head` with its checkSumAdjustment as zero */
function checksumOf(tag: string, table: Buffer): number {
	const padded = Buffer.alloc(Math.ceil(table.length / 4) * 4);
	table.copy(padded);
	if (tag === 'head') padded.writeUInt32BE(0, 8);
	let sum = 0;
	for (let at = 0; at < padded.length; at += 4) sum = (sum + padded.readUInt32BE(at)) >>> 0;
	return sum;
}

describe('an unpacked font', () => {
	it.each(['overpass/files/overpass-latin-400-normal', 'noto-sans-arabic/files/noto-sans-arabic-arabic-700-normal'])('%s has every table whole', (path) => {
		const woff = fileOf(path);
		const font = unpackFont(woff);
		const count = font.readUInt16BE(4);
		// WOFF File Format 1.0, section 3: numTables, and the type of the font that it holds.
		expect(count).toBe(woff.readUInt16BE(12));
		expect(font.readUInt32BE(0)).toBe(woff.readUInt32BE(4));
		const tags: string[] = [];
		for (let i = 0; i < count; i += 1) {
			const record = 12 + 16 * i;
			const tag = font.toString('latin1', record, record + 4);
			const [checksum, offset, length] = [font.readUInt32BE(record + 4), font.readUInt32BE(record + 8), font.readUInt32BE(record + 12)];
			expect(offset % 4).toBe(0);
			expect(checksumOf(tag, font.subarray(offset, offset + length)), tag).toBe(checksum);
			tags.push(tag);
		}
		// OpenType specification, "Required Tables".
		for (const tag of ['cmap', 'head', 'hhea', 'hmtx', 'maxp', 'glyf', 'loca']) expect(tags).toContain(tag);
	});

	it('is made of no other file', () => {
		expect(() => unpackFont(Buffer.from('wOF2 and so on, long enough'))).toThrow('WOFF 1.0');
	});
});
