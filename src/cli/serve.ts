import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { pathToFileURL } from 'node:url';
import { join } from 'node:path';
import { ROOT } from './root.ts';

/** In it a proxy says where the visitor is. */
const FORWARDED_FOR = 'x-forwarded-for';

/** What the adapter's handler is: it answers, or calls `next` when it has no answer. */
type Handler = (request: IncomingMessage, response: ServerResponse, next: () => void) => void;

/** How the server is reached, read from the environment. */
export interface ServeOptions {
	/** Address listened on; only this machine by default. */
	host: string;
	/** 0 takes a free port. */
	port: number;
	/** Whether a proxy in front says by `x-forwarded-proto` how the visitor came; else the header is ignored. */
	behindProxy: boolean;
}

/** How long open requests, and then the database, may take to end when the server is told to stop, ms. */
const GRACE = 3000;

/** Said with every answer, static files included; the content security policy comes with each page. */
const HEADERS: Readonly<Record<string, string>> = {
	'x-content-type-options': 'nosniff',
	'x-frame-options': 'DENY',
	'referrer-policy': 'same-origin',
	'cross-origin-opener-policy': 'same-origin',
	'cross-origin-resource-policy': 'same-origin',
	'permissions-policy': 'camera=(), geolocation=(), microphone=(), payment=(), usb=()'
};

/**
 * Reads HOST, PORT and TRUST_PROXY.
 * @throws Error naming the variable that cannot be read
 */
export function serveOptions(env: NodeJS.ProcessEnv): ServeOptions {
	const port = Number(env.PORT ?? '3000');
	if (!Number.isInteger(port) || port < 0 || port > 65535) {
		throw new Error(`PORT is ${env.PORT}; it must be a whole number from 0 to 65535`);
	}
	return { host: env.HOST ?? '127.0.0.1', port, behindProxy: env.TRUST_PROXY === '1' };
}

/** The built application. Imported by its address, so that the checker does not check the whole build. */
async function builtHandler(behindProxy: boolean): Promise<Handler> {
	// The adapter takes the visitor's protocol from this header; without it every form post would seem foreign.
	process.env.PROTOCOL_HEADER = 'x-forwarded-proto';
	// Behind a proxy all visitors come from one address; tries to sign in are counted by the visitor's own.
	if (behindProxy) process.env.ADDRESS_HEADER ??= FORWARDED_FOR;
	const address = pathToFileURL(join(ROOT, 'build/handler.js')).href;
	const built: { handler: Handler } = await import(address);
	return built.handler;
}

function respond(handler: Handler, options: ServeOptions) {
	return (request: IncomingMessage, response: ServerResponse) => {
		const said = request.headers['x-forwarded-proto'];
		if (!options.behindProxy || said === undefined) request.headers['x-forwarded-proto'] = 'http';
		// The adapter refuses to tell an address that the proxy does not tell.
		if (options.behindProxy) request.headers[FORWARDED_FOR] ??= request.socket.remoteAddress ?? '';
		for (const [name, value] of Object.entries(HEADERS)) response.setHeader(name, value);
		if (request.headers['x-forwarded-proto'] === 'https') {
			response.setHeader('strict-transport-security', 'max-age=31536000');
		}
		handler(request, response, () => {
			response.statusCode = 404;
			response.end();
		});
	};
}

/** Stops taking requests, lets open ones end, closes the database, and leaves. */
function stopOn(signal: NodeJS.Signals, server: Server): void {
	process.once(signal, () => {
		server.close(() => {
			// SvelteKit's own event: src/hooks.server.ts closes the database on it.
			process.emit('sveltekit:shutdown' as never);
			// The process ends by itself once the database is closed; if that hangs, it ends all the same.
			setTimeout(() => process.exit(0), GRACE).unref();
		});
		server.closeIdleConnections();
		setTimeout(() => server.closeAllConnections(), GRACE).unref();
	});
}

/**
 * Serves the built application until the process is told to stop.
 * @returns the address that it is reached at, e.g. `http://127.0.0.1:3000`
 */
export async function serve(options: ServeOptions): Promise<string> {
	const server = createServer(respond(await builtHandler(options.behindProxy), options));
	await new Promise<void>((listening, failed) => {
		server.once('error', failed);
		server.listen(options.port, options.host, listening);
	});
	stopOn('SIGTERM', server);
	stopOn('SIGINT', server);
	const { port } = server.address() as AddressInfo;
	const host = options.host.includes(':') ? `[${options.host}]` : options.host;
	return `http://${host}:${port}`;
}
