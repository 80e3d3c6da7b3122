import type * as Server from '#lib/server/index.ts';
import { refuse, type Outcome } from './outcome.ts';
import { quoted } from './arguments.ts';

/** What works on the database of DATABASE_URL, and closes it again. The server is loaded only for the commands that need it. */
export async function withServer<Value>(work: (server: typeof Server) => Promise<Value>): Promise<Value> {
	const server = await import('#lib/server/index.ts');
	try {
		return await work(server);
	} finally {
		await server.closeDatabase();
	}
}

/** @returns a code by which a further organisation is set up on the page /setup. */
export function newSetUpCode(): Promise<Outcome> {
	return withServer(async (server) => {
		const code = await server.furtherSetUpCode(await server.database(), new Date());
		return { kind: 'done', output: { kind: 'set-up-code', code, page: '/setup', days: 7 } };
	});
}

/** @returns a code by which a member of staff chooses a new password on the page /enrol, or a refusal where nobody has this e-mail. */
export function newPasswordCode(email: string): Promise<Outcome> {
	return withServer(async (server) => {
		const code = await server.passwordCode(await server.database(), email, new Date());
		if (code === null) return refuse('EMAIL', `is ${quoted(email)}, and no member of staff has it`, 'give the e-mail that they sign in with');
		return { kind: 'done', output: { kind: 'password-code', code, page: '/enrol', days: 7 } };
	});
}
