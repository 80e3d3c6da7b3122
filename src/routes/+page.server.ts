import { error } from '@sveltejs/kit';
import { shippedScenarios } from '#lib/course/shipped.ts';
import type { PageServerLoad } from './$types';

/** The sites that one can practise on, easy ones first, and the scenario of the drawing beside the words. */
export const load: PageServerLoad = ({ locals }) => {
	const scenarios = shippedScenarios();
	const shown = scenarios[0];
	if (shown === undefined) error(500, 'no-such-scenario');
	return {
		shown,
		sites: scenarios.map(({ id, words }) => ({ id, title: words[locals.language].title }))
	};
};
