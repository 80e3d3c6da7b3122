import type { LayoutServerLoad } from './$types';

/** The language and the theme of the visitor's pages. */
export const load: LayoutServerLoad = ({ locals }) => ({ language: locals.language, theme: locals.theme });
