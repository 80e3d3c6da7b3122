/** The hands-on part: checks, place, day, signature. */
export const signOff = {
	title: 'Hands-on sign-off'
};
