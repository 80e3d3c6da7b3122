import { staffMessages } from '#lib/text/index.ts';
import type { Section } from '../sections.ts';
import type { LayoutLoad } from './$types';

/** The words of trainers' pages beside those of all pages, and where these pages are. */
export const load: LayoutLoad = async ({ parent }) => {
	const { m, language } = await parent();
	const staff = await staffMessages(language);
	const sections: readonly Section[] = [
		{ path: '/crew', text: m.crew.title },
		{ path: '/crew/sets', text: staff.sets.title },
		{ path: '/crew/scenarios', text: staff.authoring.title },
		{ path: '/crew/paper', text: staff.paper.title },
		{ path: '/crew/board', text: staff.board.title }
	];
	return { m: { ...m, ...staff }, sections };
};
