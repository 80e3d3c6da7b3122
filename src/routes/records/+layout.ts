import { employerMessages } from '#lib/text/index.ts';
import type { Section } from '../sections.ts';
import type { LayoutLoad } from './$types';

/** The words of employers' pages beside those of all pages, and where these pages are. */
export const load: LayoutLoad = async ({ parent }) => {
	const { m, language } = await parent();
	const employer = await employerMessages(language);
	const sections: readonly Section[] = [
		{ path: '/records', text: employer.training.short },
		{ path: '/records/retraining', text: employer.retraining.short },
		{ path: '/crew', text: m.people.crews },
		{ path: '/records/people', text: employer.training.accounts },
		{ path: '/records/exports', text: employer.exporting.title },
		{ path: '/records/keeping', text: employer.keeping.title, with: ['/records/log'] },
		{ path: '/records/settings', text: employer.training.organisation }
	];
	return { m: { ...m, ...employer }, sections };
};
