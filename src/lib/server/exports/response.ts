import type { ExportFile } from './files.ts';
import { bodyOf } from './stream.ts';

const TYPES = { csv: 'text/csv; charset=utf-8', json: 'application/json; charset=utf-8' } as const;

/** @returns a file as a download, streamed. A fault that comes while it is on its way breaks the connection, and is said in the server's log: nobody else hears of it. */
export function download({ name, type, parts }: ExportFile): Response {
	return new Response(bodyOf(parts, (fault) => console.error('An export broke off:', name, fault)), {
		headers: {
			'content-type': TYPES[type],
			'content-disposition': `attachment; filename="${name}"`,
			'x-content-type-options': 'nosniff'
		}
	});
}
