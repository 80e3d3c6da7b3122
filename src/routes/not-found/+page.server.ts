import { error } from '@sveltejs/kit';
import type { PageServerLoad } from './$types';

/** What a page that somebody may not open is answered with: the same as for an address where nothing is. */
export const load: PageServerLoad = () => error(404, 'Not Found');
