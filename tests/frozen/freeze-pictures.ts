/**
 * Freezes the first pictures of every task version that has no file yet in tests/frozen/pictures. A file that is
 * there is never touched: a picture that changes needs a new draw version or a new task version.
 *
 *   node tests/frozen/freeze-pictures.ts
 */
import { existsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { FINDING_TASKS } from '#lib/findings/index.ts';
import { drawnPictures } from './drawn-pictures.ts';

const FIRST = 0;
const LAST = 11;

for (const { id, version } of FINDING_TASKS) {
	const file = join(import.meta.dirname, 'pictures', `${id}-v${version}.json`);
	if (existsSync(file)) continue;
	writeFileSync(file, `${JSON.stringify(drawnPictures(id, FIRST, LAST), undefined, '\t')}\n`);
	console.log(`froze ${id} version ${version}`);
}
