import { refuse, type Outcome } from './outcome.ts';
import { withServer } from './people.ts';

/** Fills an empty database with an invented organisation. @returns who signs in with what: said once */
export function demo(): Promise<Outcome> {
	return withServer(async (server) => {
		const filled = await server.fillDemo(await server.database(), new Date());
		if (filled === null) return refuse('DATABASE_URL', 'names a database that has an organisation already', 'name an empty one: the demo never mixes with real people');
		return { kind: 'done', output: { kind: 'demo', ...filled } };
	});
}
