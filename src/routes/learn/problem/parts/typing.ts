/** What answers to typing: what was understood, and the tape that grows. Loaded behind the first paint. */
export { echoOf, queryOf } from '../model/entry.ts';
export { draftTape } from '../model/typed.ts';
export { TAPE_PARTS, TapeStrip } from '#lib/scene/index.ts';
