import { setImmediate } from 'node:timers/promises';

/** Lets whatever else waits in this process run, between two slices of long work. */
export async function breath(): Promise<void> {
	await setImmediate();
}
