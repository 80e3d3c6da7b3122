/** One measured figure of a bench. */
export interface Figure {
	/** What was measured, e.g. `grade p99`. */
	name: string;
	value: number;
	/** Unit of the value as people read it: `ms`, `per second`, `%`, `×`; '' for a bare number. */
	unit: string;
	/** What was to be reached, in words and numbers: `≤ 1 ms`. */
	goal: string;
	/** Whether the value reaches the goal. */
	holds: boolean;
}

/** What each file tests/bench/*.bench.ts exports as its default. */
export interface Bench {
	/** Selects the bench on the command line: `npm run bench -- name`. */
	name: string;
	/** Measures. Throws only when it could not measure. */
	run(): Promise<Figure[]>;
}
