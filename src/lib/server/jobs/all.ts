import { backupJob } from './backup.ts';
import { forgetNamesJob } from './forget-names.ts';
import { chainCheckJob } from './chain-check.ts';
import { checkpointJob } from './checkpoint.ts';
import type { Job } from './job.ts';

/** Every job of the server, in the order in which they run: what is checked comes first, what is kept of it last. */
export const ALL_JOBS: readonly Job[] = [chainCheckJob, forgetNamesJob, checkpointJob, backupJob];
