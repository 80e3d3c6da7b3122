/** @returns a new thread that inspects. The build finds the thread's file by this very expression. */
export function startWorker(): Worker {
	return new Worker(new URL('./inspect-worker.ts', import.meta.url), { type: 'module' });
}
