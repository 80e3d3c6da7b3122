import type { signOff as english } from '../en/sign-off.ts';

export const signOff: typeof english = {
	title: 'Firma de la parte práctica'
};
