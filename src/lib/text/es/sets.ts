import type { sets as english } from '../en/sets.ts';

export const sets: typeof english = {
	title: 'Series de práctica'
};
