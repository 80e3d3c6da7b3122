import type { crewPicture as english } from '../en/picture.ts';

export const crewPicture: typeof english = {
	title: 'Qué sale mal'
};
