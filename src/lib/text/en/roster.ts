/** People by list: reading a file or a pasted table. */
export const roster = {
	title: 'Add people by list'
};
