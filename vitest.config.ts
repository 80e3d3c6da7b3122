import { svelte } from '@sveltejs/vite-plugin-svelte';
import { defineConfig } from 'vitest/config';

export default defineConfig({
	// configFile: false, because svelte.config.js holds SvelteKit's options, which this plugin does not know.
	plugins: [svelte({ configFile: false })],
	test: {
		environment: 'node',
		include: ['tests/{unit,property,reference,frozen}/**/*.test.ts'],
		// Property tests run hundreds of plans; two busy cores need longer than the default five seconds.
		testTimeout: 60_000,
		// A PostgreSQL of a test's own starts slowly on a busy machine.
		hookTimeout: 60_000,
		// A test file for each of two cores; by itself vitest leaves one of them free.
		maxWorkers: 2,
		restoreMocks: true,
		// PINs of tests are hashed under this key; else a key file would be made beside the usual database.
		env: { UNDERFOOT_KEY: '7e'.repeat(32) },
		reporters: ['default']
	}
});
