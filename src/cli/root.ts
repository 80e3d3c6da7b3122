import { fileURLToPath } from 'node:url';

/** The folder of the repository, with a closing slash, wherever a command is started from. */
export const ROOT: string = fileURLToPath(new URL('../../', import.meta.url));
