/** `npm start`: builds the application if it is missing or stale, then serves it and prints the address. */
import { build, isStale } from './build.ts';
import { serve, serveOptions } from './serve.ts';

try {
	const options = serveOptions(process.env);
	if (isStale()) {
		console.log('Building the application …');
		build();
	}
	const address = await serve(options);
	console.log(`Underfoot is at ${address} (stop with Ctrl+C)`);
} catch (error) {
	const inUse = error instanceof Error && 'code' in error && error.code === 'EADDRINUSE';
	const reason = error instanceof Error ? error.message : String(error);
	console.error(inUse ? `${reason}\nStart on another port: PORT=3001 npm start` : reason);
	process.exit(1);
}
