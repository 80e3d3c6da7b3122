import type { roster as english } from '../en/roster.ts';

export const roster: typeof english = {
	title: 'Agregar personas por lista'
};
