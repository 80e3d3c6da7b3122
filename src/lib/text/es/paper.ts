import type { paper as english } from '../en/paper.ts';

export const paper: typeof english = {
	title: 'Hojas en papel'
};
