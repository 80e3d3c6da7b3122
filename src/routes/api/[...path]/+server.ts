import type { RequestHandler } from '@sveltejs/kit';
import { refusal } from '#lib/server/index.ts';

/** Whatever is asked for here and is not there, refused in the form of all refusals. */
export const fallback: RequestHandler = () =>
	refusal(404, [{ field: 'path', problem: 'is not known here', remedy: 'use /api/attempts or /api/attempts/ID' }]);
