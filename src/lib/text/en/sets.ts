/** Practice sets: what trainers make and assign, and what learners find. */
export const sets = {
	title: 'Practice sets'
};
