import { error } from '@sveltejs/kit';
import type { Person, Who } from '#lib/server/index.ts';

/** @returns the employer who asks. The table of who may do what has let nobody else come here; else nothing is found. */
export function employerOf(who: Who): Person {
	if (who.kind !== 'person' || who.role !== 'employer') error(404, 'Not Found');
	return who;
}
