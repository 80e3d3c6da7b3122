/** What a person may do in the organisation. */
export type Role = 'learner' | 'trainer' | 'employer';

/** Somebody who is signed in. */
export interface Person {
	readonly kind: 'person';
	readonly id: string;
	readonly organisation: string;
	readonly role: Role;
	readonly name: string;
	/** The guest row under which this person's answers are kept. */
	readonly answerer: string;
	readonly language: 'en' | 'es' | null;
}

/** Who asks: a guest may practise; all else needs a person. */
export type Who = { readonly kind: 'guest' } | Person;
