/** The hands-on part of a person's training, as it is signed for. No names of learners stand in it. */

/** What somebody must have been seen doing, in the order in which it is asked. */
export const HANDS_ON_CHECKS = ['inspection', 'donning', 'connecting', 'anchorage-choice', 'rescue-plan'] as const;
export type HandsOnCheck = (typeof HANDS_ON_CHECKS)[number];

/** In which capacity a trainer signs, as law names it. @source 29 CFR 1926.32(f), 1926.32(m); from memory */
export const CAPACITIES = ['competent-person', 'qualified-person'] as const;
export type Capacity = (typeof CAPACITIES)[number];

/** The theory that was passed by then. */
export interface TheoryPassed {
	readonly completion: string;
	readonly course: string;
	readonly version: number;
	readonly day: string;
	readonly supervised: boolean;
}

/** What is signed for. */
export interface HandsOnRecord {
	readonly kind: 'hands-on';
	readonly version: 1;
	/** UUID. */
	readonly id: string;
	readonly organisation: string;
	/** Id of the person. */
	readonly person: string;
	/** The system that it is about; other systems are not covered. */
	readonly scope: string;
	readonly checks: readonly HandsOnCheck[];
	readonly place: string;
	/** Local day at the site. */
	readonly day: string;
	/** Null where the final check of the theory was not passed yet. */
	readonly theory: TheoryPassed | null;
}

/** A signature, bound to a record by its hash. */
export interface Signature {
	/** SHA-256 of the record's canonical JSON, hexadecimal. */
	readonly record: string;
	readonly signer: string;
	readonly name: string;
	readonly capacity: Capacity;
	/** Word for word as it was shown before signing. */
	readonly meaning: string;
	readonly language: 'en' | 'es';
	/** ISO 8601, UTC. */
	readonly at: string;
}
