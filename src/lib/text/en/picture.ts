/** What a crew gets wrong. */
export const crewPicture = {
	title: 'What goes wrong'
};
