/** The board view: one problem, large, for a class. */
export const board = {
	title: 'Board'
};
