import { error } from '@sveltejs/kit';
import type { Person, Who } from '#lib/server/index.ts';

/** @returns the member of staff who asks. @throws the error of a page that is not there, for everybody else */
export function staffOnly(who: Who): Person {
	if (who.kind === 'guest' || who.role === 'learner') error(404, 'Not Found');
	return who;
}
