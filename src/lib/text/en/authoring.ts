/** Own scenarios: the list, the authoring page, and what inspecting finds. */
export const authoring = {
	title: 'Scenarios'
};
