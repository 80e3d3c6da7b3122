import type { account as en } from '../en/account.ts';

export const account: typeof en = {
	signIn: 'Entrar',
	signedInAs: ({ name }) => `Usted entró como ${name}.`,
	signOut: 'Salir',
	goOn: 'Seguir'
};
