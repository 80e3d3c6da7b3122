import type { RequestHandler } from './$types';

/** Answers as soon as the server takes requests: for service monitors and for the tests' start-up wait. */
export const GET: RequestHandler = () => Response.json({ ok: true });
