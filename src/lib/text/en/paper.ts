/** Sheets of a set on paper, and typing the answers in. */
export const paper = {
	title: 'Paper sheets'
};
