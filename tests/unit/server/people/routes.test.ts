import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accessTo, ROUTES, type Caller } from '#lib/server/people/routes.ts';
import type { Who } from '#lib/server/people/who.ts';
import { ROOT } from '../../../../src/cli/root.ts';

const CALLERS: readonly Caller[] = ['guest', 'learner', 'trainer', 'employer'];
const NONE = new URLSearchParams();

function who(caller: Caller): Who {
	return caller === 'guest' ? { kind: 'guest' } : { kind: 'person', id: 'p', organisation: 'o', role: caller, name: 'Helle Brandt', answerer: 'g', language: null };
}

/** The ids of all routes there are, with what they hold. */
function routesIn(folder: string, id: string): { id: string; files: string[]; folder: string }[] {
	const entries = readdirSync(folder, { withFileTypes: true });
	const files = entries.filter((entry) => entry.isFile() && /^\+(page\.svelte|server\.ts|page\.server\.ts)$/.test(entry.name)).map(({ name }) => name);
	const below = entries.filter((entry) => entry.isDirectory()).flatMap((entry) => routesIn(join(folder, entry.name), `${id === '/' ? '' : id}/${entry.name}`));
	return files.length === 0 ? below : [{ id, files, folder }, ...below];
}

const routes = routesIn(join(ROOT, 'src/routes'), '/');

describe('the table of who may do what', () => {
	it('has a row for every route that there is', () => {
		expect(routes.length).toBeGreaterThan(10);
		const unknown = routes.filter(({ id }) => CALLERS.every((caller) => ['GET', 'POST'].every((method) => accessTo(id, method, NONE, who(caller)) === 'refused')));
		expect(unknown.map(({ id }) => id)).toEqual([]);
	});

	it('has a row for every action that a page names', () => {
		const missing = routes.flatMap(({ id, folder }) => {
			const pages = readdirSync(folder).filter((name) => name.endsWith('.svelte'));
			const named = pages.flatMap((name) => [...readFileSync(join(folder, name), 'utf8').matchAll(/(?:form)?action="\?(\/[a-z-]+)/g)].map((match) => match[1] ?? ''));
			const lets = (action: string, caller: Caller) => accessTo(id, 'POST', new URLSearchParams({ [action]: '' }), who(caller)) === 'allowed';
			return named.filter((action) => !CALLERS.some((caller) => lets(action, caller))).map((action) => `${id}?${action}`);
		});
		expect(missing).toEqual([]);
	});

	it.each([
		['/records', 'GET', '', ['employer']],
		['/records/people', 'POST', '/invite', ['employer']],
		['/records/people', 'POST', '/invent', []],
		['/records/settings', 'POST', '', ['employer']],
		['/crew', 'GET', '', ['trainer', 'employer']],
		['/learn/check/[lesson]', 'GET', '', ['learner']],
		['/', 'GET', '', CALLERS],
		['/', 'HEAD', '', CALLERS],
		['/', 'POST', '', []],
		['/api/attempts', 'POST', '/staff', CALLERS],
		['/api/course/events', 'POST', '', CALLERS],
		['/api/courses', 'POST', '', []],
		['/sign-out', 'GET', '', []],
		['/constructor', 'GET', '', []],
		['/records/people', 'POST', 'constructor', []],
		['/no/such', 'GET', '', []]
	] as const)('lets to %s %s %s only %j', (route, method, action, allowed) => {
		const search = new URLSearchParams(action === '' ? '' : { [action]: '' });
		expect(CALLERS.filter((caller) => accessTo(route, method, search, who(caller)) === 'allowed')).toEqual(allowed);
	});

	it('sends guests to sign in only where somebody may come', () => {
		expect(accessTo('/records', 'GET', NONE, who('guest'))).toBe('sign-in');
		expect(accessTo('/records', 'GET', NONE, who('learner'))).toBe('refused');
		expect(accessTo('/no/such', 'GET', NONE, who('guest'))).toBe('refused');
	});

	it('refuses whatever it does not name', () => {
		fc.assert(
			fc.property(fc.string(), fc.string(), fc.constantFrom(...CALLERS), (route, method, caller) => {
				fc.pre(!Object.keys(ROUTES).includes(route) && !route.startsWith('/api/course/'));
				expect(accessTo(route, method, NONE, who(caller))).toBe('refused');
			})
		);
	});
});
