import type { LayoutServerLoad } from './$types';

/** The language and the theme of the visitor's pages, and who is signed in. */
export const load: LayoutServerLoad = ({ locals: { language, theme, who } }) => ({
	language,
	theme,
	who: who.kind === 'person' ? { name: who.name, role: who.role } : null
});
