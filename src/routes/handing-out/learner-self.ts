import { error } from '@sveltejs/kit';
import type { Person, Who } from '#lib/server/index.ts';

/** @returns the learner who asks for their own. The table of who may do what has let nobody else come here; else nothing is found. */
export function learnerSelf(who: Who): Person {
	if (who.kind !== 'person' || who.role !== 'learner') error(404, 'Not Found');
	return who;
}
