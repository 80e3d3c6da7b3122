/** The page's side of the inspection: hands each change to the worker, and keeps what it answers. */
import type { Inspection, Problem, Scenario, TurnedDownCounts } from '#lib/scenario/index.ts';
import type { Json } from './model/document.ts';
import { GATHER, type Answered, type Asked } from './model/inspect-messages.ts';
import type { SchemaProblem } from './model/schema-problems.ts';
import { startWorker } from './start-worker.ts';

/** Marks and measure on the page's timeline: from the last change to its finished inspection. */
export const CHANGED_MARK = 'authoring:changed';
export const INSPECTED_MEASURE = 'authoring:inspected';

export interface Example {
	readonly seed: number;
	/** Undefined where no seed near gives one. */
	readonly problem: Problem | undefined;
	readonly reasons: TurnedDownCounts;
}

export class Inspector {
	/** The document as it was last understood. */
	scenario = $state.raw<Scenario>();
	problems = $state.raw<readonly SchemaProblem[]>([]);
	inspection = $state.raw<Inspection>();
	example = $state.raw<Example>();
	/** `waiting`: nothing was inspected yet; `broken`: the document does not fit; `failed`: drawing it failed. */
	state = $state<'waiting' | 'inspecting' | 'inspected' | 'broken' | 'failed'>('waiting');
	progress = $state.raw<{ readonly done: number; readonly of: number }>();
	/** Whether what is shown of the last inspection belongs to an older document. */
	stale = $state(false);

	#worker: Worker | undefined;
	#run = 0;
	#seed = 1;
	#timer: ReturnType<typeof setTimeout> | undefined;

	/** Starts the worker. @returns what ends it */
	open(): () => void {
		this.#worker = startWorker();
		this.#worker.addEventListener('message', (event: MessageEvent<Answered>) => this.#hear(event.data));
		this.#worker.addEventListener('error', () => (this.state = 'failed'));
		return () => {
			clearTimeout(this.#timer);
			this.#worker?.terminate();
			this.#worker = undefined;
		};
	}

	/** A change: the document is inspected anew. */
	take(document: Json): void {
		this.#run += 1;
		const run = this.#run;
		this.stale = true;
		performance.clearMarks(CHANGED_MARK);
		performance.mark(CHANGED_MARK);
		clearTimeout(this.#timer);
		this.#timer = setTimeout(() => this.#ask({ kind: 'document', run, document, seed: this.#seed }), GATHER);
	}

	/** The next example. */
	next(): void {
		this.show((this.example?.seed ?? this.#seed) + 1);
	}

	/** The example of a seed. */
	show(seed: number): void {
		this.#seed = seed;
		this.#ask({ kind: 'example', run: this.#run, seed });
	}

	#ask(asked: Asked): void {
		if (asked.kind === 'document' && this.state !== 'broken') this.state = 'inspecting';
		this.#worker?.postMessage(asked);
	}

	#hear(answer: Answered): void {
		if (answer.run !== this.#run) return;
		switch (answer.kind) {
			case 'problems':
				this.problems = answer.problems;
				this.state = 'broken';
				break;
			case 'fits':
				this.scenario = answer.scenario;
				this.problems = [];
				this.progress = undefined;
				this.state = 'inspecting';
				break;
			case 'example':
				this.example = { seed: answer.seed, problem: answer.problem, reasons: answer.reasons };
				break;
			case 'progress':
				this.progress = { done: answer.done, of: answer.of };
				break;
			case 'inspected':
				this.inspection = answer.inspection;
				this.state = 'inspected';
				this.stale = false;
				performance.measure(INSPECTED_MEASURE, CHANGED_MARK);
				break;
			case 'failed':
				this.state = 'failed';
		}
	}
}
