import { inflateSync } from 'node:zlib';

/** @returns a PDF of this program as it would be without compression, for `readPdf`: each stream is unpacked where it stands. */
export function inflatedPdf(bytes: Buffer): Buffer {
	const raw = bytes.toString('latin1');
	const unpacked = raw.replace(/(\/Filter \/FlateDecode[\s\S]*?stream\n)([\s\S]*?)(\nendstream)/g, (_, head: string, body: string, end: string) => head + inflateSync(Buffer.from(body, 'latin1')).toString('latin1') + end);
	return Buffer.from(unpacked, 'latin1');
}
