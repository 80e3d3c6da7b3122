/** From what was kept back into the flow. */
import type { StepGrade } from '#lib/grading/index.ts';
import { answersOf, isQuery, notRight, type FlowContext, type Grades, type WalkedStep } from './context.ts';
import { startContext, type FlowInput, type FlowState } from './site-problem.ts';
import type { Remembered } from './snapshot.ts';

export interface Regrading {
	/** Grades answers as the flow's host does. */
	readonly grade: (context: FlowContext) => Grades;
	/** Grades the steps of a step-through that were worked, in order; the steps of a walk must be as many. */
	readonly walk: (ask: string, texts: readonly string[]) => readonly (StepGrade | undefined)[];
}

/**
 * @returns the state and the context that the flow goes on with. Grades are computed again: if they no longer
 * fit the state that was kept, the state that fits them is taken.
 */
export function resume(
	input: FlowInput,
	remembered: Remembered,
	regrading: Regrading
): { readonly state: FlowState; readonly context: FlowContext } {
	if (remembered.kind === 'nothing') return { state: 'reading', context: startContext(input) };
	if (remembered.kind === 'typed') {
		return { state: 'working', context: startContext({ ...input, entries: remembered.entries, sent: remembered.sent }) };
	}
	const { entries, sent, chosen, focus, state, walk, help } = remembered.snapshot;
	const context = startContext({ ...input, entries, sent, chosen, help, focus: focus ?? undefined });
	if (state === 'reading') return { state, context };
	if (state === 'working' || state === 'grading' || state === 'left') return { state: 'working', context };
	if (answersOf(context).size < context.asks.length) return { state: 'working', context };

	const grades = regrading.grade(context);
	if (Object.values(grades).some(isQuery)) return { state: 'working', context };
	const graded = { ...context, grades };
	const allRight = notRight(context.asks, grades).length === 0;
	const settled: FlowState = allRight ? 'solved' : 'explained';
	if (walk === null || (state !== 'stepping' && state !== 'walked')) return { state: settled, context: graded };

	const stepGrades = regrading.walk(walk.ask, walk.texts);
	if (stepGrades.length !== walk.of) return { state: settled, context: graded };
	const steps = walk.texts.map((text, i): WalkedStep => ({ text, grade: stepGrades[i] }));
	return { state, context: { ...graded, walk: { ask: walk.ask, at: walk.at, of: walk.of, steps } } };
}
