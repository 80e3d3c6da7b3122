import type { authoring as english } from '../en/authoring.ts';

export const authoring: typeof english = {
	title: 'Escenarios'
};
