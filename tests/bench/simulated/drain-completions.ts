/** Its own process, so that its memory is its own: reads the whole list of completions of an organisation and lets it go. */
import { readFileSync } from 'node:fs';
import { openDatabase } from '#lib/server/db/open.ts';
import { completionsCsv } from '#lib/server/exports/tables.ts';

/** The most memory that this process had so far, MB. The peak that the system tells of a child begins with that of its parent. */
function peak(): number {
	const [, kilobytes = '0'] = /^VmHWM:\s+(\d+) kB$/m.exec(readFileSync('/proc/self/status', 'utf8')) ?? [];
	return Number(kilobytes) / 1024;
}

const [address = '', organisation = ''] = process.argv.slice(2);
const db = await openDatabase(address);
const loaded = peak();
let bytes = 0;
for await (const part of completionsCsv(db, organisation)) bytes += part.length;
await db.destroy();
console.log(JSON.stringify({ bytes, loaded, peak: peak() }));
