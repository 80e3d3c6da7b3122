import { expect, it } from 'vitest';
import { serveOptions } from '../../../src/cli/serve.ts';

it('listens on this machine alone when nothing is said', () => {
	expect(serveOptions({})).toEqual({ host: '127.0.0.1', port: 3000, behindProxy: false });
});

it('takes address, port and proxy from the environment', () => {
	expect(serveOptions({ HOST: '::1', PORT: '8080', TRUST_PROXY: '1' })).toEqual({
		host: '::1',
		port: 8080,
		behindProxy: true
	});
});

it.each(['http', '-1', '65536', '80.5'])('refuses the port %s by name', (port) => {
	expect(() => serveOptions({ PORT: port })).toThrow(
		`PORT is ${port}; it must be a whole number from 0 to 65535`
	);
});
