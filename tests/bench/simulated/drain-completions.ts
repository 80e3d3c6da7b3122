/** Its own process, so that its memory is its own: reads the whole list of completions of an organisation and lets it go. */
import { openDatabase } from '#lib/server/db/open.ts';
import { completionsCsv } from '#lib/server/exports/tables.ts';

const [address = '', organisation = ''] = process.argv.slice(2);
const db = await openDatabase(address);
let bytes = 0;
for await (const part of completionsCsv(db, organisation)) bytes += part.length;
await db.destroy();
// ru_maxrss is in kilobytes on Linux.
console.log(JSON.stringify({ bytes, megabytes: process.resourceUsage().maxRSS / 1024 }));
