import { pluralOf } from '../../plural.ts';

const plural = pluralOf('en');

/** What the law of the place says of records of training: on settings, certificates and the learner's own copy. */
export const recordLaw = {
	months: ({ count }: { count: number }) => plural(count, { one: '1 month', other: `${String(count)} months` }),
	period: ({ months }: { months: string }) => `By law here, training is valid for ${months}.`,
	noPeriod: 'The law here sets no fixed period.',
	/** Clause and title of the law, as they are printed. */
	source: ({ clause, title }: { clause: string; title: string }) => `${title}: ${clause}`,
	fromMemory: 'From memory. Look it up in the law itself.',
	notProofOf: {
		'approved-programme': 'The law here asks for a course that the authority has approved. This record is no proof of one.',
		practice: 'The law here asks for practice with real gear. The theory alone is no proof of it.'
	}
};
