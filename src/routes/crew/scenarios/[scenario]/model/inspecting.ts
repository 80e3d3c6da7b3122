/**
 * Inspects documents one after the other, in slices: whoever changes the document while an older one is being
 * inspected gets the newer one inspected next. Runs in a worker; time and waiting come in from outside.
 */
import { draw, inspectSteps, type Inspection, type Scenario } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import type { Json } from './document.ts';
import type { Answered, Asked } from './inspect-messages.ts';
import { schemaProblems } from './schema-problems.ts';

/** How many draws an inspection is made of. @reason enough that a share is known to a few per cent, and few enough to be there at once. */
export const DRAWS = 200;
/** How long the worker goes on before it looks for messages, ms. */
const SLICE = 20;
/** How long an example is looked for, ms. */
const EXAMPLE_LIMIT = 150;
/** Seeds that are tried for an example. */
const EXAMPLE_SEEDS = 40;

/** What inspecting needs from where it runs. */
export interface Place {
	readonly post: (answer: Answered) => void;
	/** Lets messages in. */
	readonly pause: () => Promise<void>;
	/** A clock, ms. */
	readonly now: () => number;
}

/** @returns what takes in what the page asks. It never rejects: what fails is answered. */
export function inspector(place: Place): (asked: Asked) => Promise<void> {
	const { post, pause, now } = place;
	let newest = 0;
	let scenario: Scenario | undefined;

	function postExample(of: Scenario, run: number, seed: number): void {
		const start = now();
		for (let i = 0; ; i += 1) {
			const result = draw(of, seed + i);
			const found = result.kind === 'drawn';
			if (!found && i + 1 < EXAMPLE_SEEDS && now() - start < EXAMPLE_LIMIT) continue;
			post({ kind: 'example', run, seed: seed + i, problem: found ? result.problem : undefined, reasons: result.reasons });
			return;
		}
	}

	/** Undefined if a newer document has come meanwhile. */
	async function inspectInSlices(of: Scenario, run: number): Promise<Inspection | undefined> {
		const steps = inspectSteps(of, { draws: DRAWS });
		let since = now();
		for (;;) {
			const step = steps.next();
			if (step.done === true) return step.value;
			if (now() - since < SLICE) continue;
			post({ kind: 'progress', run, done: step.value.done, of: step.value.of });
			await pause();
			if (newest !== run) return undefined;
			since = now();
		}
	}

	async function inspectDocument(document: Json, run: number, seed: number): Promise<void> {
		const parsed = scenarioSchema.safeParse(document);
		if (!parsed.success) {
			scenario = undefined;
			post({ kind: 'problems', run, problems: schemaProblems(parsed.error.issues, document) });
			return;
		}
		scenario = parsed.data;
		post({ kind: 'fits', run, scenario });
		postExample(scenario, run, seed);
		await pause();
		if (newest !== run) return;
		const inspection = await inspectInSlices(scenario, run);
		if (inspection !== undefined) post({ kind: 'inspected', run, inspection });
	}

	return async (asked) => {
		newest = Math.max(newest, asked.run);
		try {
			if (asked.kind === 'document') await inspectDocument(asked.document, asked.run, asked.seed);
			else if (scenario !== undefined) postExample(scenario, asked.run, asked.seed);
		} catch (error) {
			post({ kind: 'failed', run: asked.run, message: error instanceof Error ? error.message : String(error) });
		}
	};
}
