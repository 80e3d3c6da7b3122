import { shippedScenarios } from '#lib/course/shipped.ts';
import type { PageServerLoad } from './$types';

/** The sites that one can practise on, in the order in which they are offered: easy ones first. */
export const load: PageServerLoad = ({ locals }) => ({
	sites: shippedScenarios().map(({ id, words, difficulty }) => ({ id, title: words[locals.language].title, difficulty }))
});
