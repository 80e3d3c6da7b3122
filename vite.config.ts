import { sveltekit } from '@sveltejs/kit/vite';
import { defineConfig, type Plugin } from 'vite';
import config from './svelte.config.js';

/**
 * SvelteKit 3 stops when a svelte.config.js lies in the root. Here that file is read by us and handed
 * to `sveltekit()`, so the complaint is the one error that may be swallowed: the hook sets the root
 * before it looks for the file. If an update of SvelteKit moves the check, the build stops with its own
 * message; it cannot go wrong silently.
 */
function allowConfigFile(plugins: Plugin[]): Plugin[] {
	for (const plugin of plugins) {
		if (plugin.name !== 'vite-plugin-sveltekit-resolve-root') continue;
		if (typeof plugin.config !== 'object') continue;
		const { handler } = plugin.config;
		plugin.config.handler = function (...args) {
			try {
				return handler.apply(this, args);
			} catch (error) {
				if (!String(error).includes('svelte.config.js')) throw error;
			}
		};
	}
	return plugins;
}

/**
 * Code that always comes together is one file: many small ones press worse. What draws a site and writes its
 * numbers, for every page that shows one; and what a problem is answered with.
 */
const TOGETHER = [
	{
		name: 'drawing',
		test: /\/src\/(lib\/(scene\/(SiteSheet|layout\/|drawing\/|figure\/|lanyard\/|backdrop\/(backdrop|parts|obstacles)\.)|quantity\/(write|unit|unit-words|decimal|dimension)\.|expression\/node\.|arrest\/(given|quantities)\.|scenario\/(story|problem)\.|ui\/(Button|Mark)\.|text\/(index|lookup|nouns|language)\.)|routes\/(SiteHead\.|learn\/problem\/model\/(site|names|writing|slots|words)\.))/
	},
	{
		name: 'problem',
		test: /\/src\/(lib\/(flow\/(site-problem|snapshot|resume|context|outbox)\.|ui\/(NumberField|LabelPlate)\.)|routes\/learn\/problem\/(Problem\.|session\.|device\.|later\.|model\/(draft|plates)\.|parts\/(Answers|Labels|Story|SendState)\.))/
	}
];

export default defineConfig({
	plugins: [sveltekit(config).then(allowConfigFile)],
	build: {
		rolldownOptions: { output: { codeSplitting: { groups: TOGETHER } } },
		modulePreload: {
			// Every page carries the list of what each page of the site loads. Styles have to stand in it, so that no page
			// shows without them; scripts name what they need themselves. What a page begins with, its own head says.
			resolveDependencies: (_, needed, { hostType }) => (hostType === 'js' ? needed.filter((file) => file.endsWith('.css')) : needed)
		}
	}
});
