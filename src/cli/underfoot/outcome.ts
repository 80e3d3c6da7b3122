import type { InputProblem } from '#lib/server/index.ts';

/** What came of reading one part of the input. */
export type Read<Value> =
	| { readonly kind: 'read'; readonly value: Value }
	| Refused;

/** The input cannot be used: exit code 2, every problem on the error output. */
export interface Refused {
	readonly kind: 'refused';
	readonly problems: readonly InputProblem[];
}

/** What came of a command. */
export type Outcome =
	/** Exit code 0; written to the output as JSON. */
	| { readonly kind: 'done'; readonly output: object }
	/** Exit code 1: what was verified does not hold; written to the output as JSON. */
	| { readonly kind: 'broken'; readonly output: object }
	/** Exit code 0; written to the output as it is. */
	| { readonly kind: 'help'; readonly text: string }
	| Refused;

/** @returns a refusal for one problem. */
export function refuse(field: string, problem: string, remedy: string): Refused {
	return { kind: 'refused', problems: [{ field, problem, remedy }] };
}

/** @returns what was read. */
export function readAs<Value>(value: Value): Read<Value> {
	return { kind: 'read', value };
}

/**
 * @returns an output as it is printed: JSON, a field a line, with a line feed behind. Spaces that never break are
 * for pages: in a terminal, and in a search through a file, they are in the way.
 */
export function jsonOf(output: object): string {
	return `${JSON.stringify(output, null, 2).replace(/[\u00a0\u202f]/g, ' ')}\n`;
}
