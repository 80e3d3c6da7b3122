/** Who is signed in, in the head of every page. */
export const account = {
	signIn: 'Sign in',
	signedInAs: ({ name }: { name: string }) => `You are signed in as ${name}.`,
	signOut: 'Sign out',
	goOn: 'Go on'
};
