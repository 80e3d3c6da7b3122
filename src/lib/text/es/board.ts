import type { board as english } from '../en/board.ts';

export const board: typeof english = {
	title: 'Pizarra'
};
