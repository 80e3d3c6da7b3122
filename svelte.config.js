import { readFileSync } from 'node:fs';
import adapter from '@sveltejs/adapter-node';

const { version } = JSON.parse(readFileSync(new URL('./package.json', import.meta.url), 'utf8'));

/**
 * SvelteKit's options. SvelteKit 3 does not read this file itself: vite.config.ts hands it over.
 *
 * @type {import('@sveltejs/kit/vite').Config}
 */
export default {
	adapter: adapter(),
	csp: {
		// Nonces for rendered pages. Nothing is loaded from another host, nothing inline runs.
		mode: 'auto',
		directives: {
			'default-src': ['self'],
			'script-src': ['self'],
			'style-src': ['self'],
			// Drawings set positions by style attributes; attributes cannot load or run anything.
			'style-src-attr': ['unsafe-inline'],
			'img-src': ['self', 'data:'],
			'font-src': ['self'],
			'connect-src': ['self'],
			'worker-src': ['self'],
			'manifest-src': ['self'],
			'object-src': ['none'],
			'base-uri': ['none'],
			'form-action': ['self'],
			'frame-ancestors': ['none']
		}
	},
	// From the package, not from the clock: the same source builds the same files.
	version: { name: version }
};
