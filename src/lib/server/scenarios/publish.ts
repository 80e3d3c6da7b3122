/** From a draft to a version: what does not fit, or what inspecting finds at fault, is not published. */
import { setImmediate } from 'node:timers/promises';
import { inspectSteps, type InspectFinding, type Inspection, type Scenario } from '#lib/scenario/index.ts';
import type { Database } from '../db/open.ts';
import { changeDraft, insertVersion } from '../db/own-scenarios.ts';
import { noteDeed, NOT_FOUND } from '../people/crews.ts';
import type { Person } from '../people/who.ts';
import type { InputProblem } from '../problems.ts';
import { changedMeanwhile, findToChange, type ChangedMeanwhile, type NotFound } from './change.ts';
import { readDocument } from './document.ts';
import { parseDocument, type Parsing } from './parse.ts';

/** What came of publishing. */
export type Publishing =
	| { readonly kind: 'published'; readonly version: number }
	/** It does not fit: `problems`; or drawing it many times finds a fault: `findings`, the faults among them. One of the two is empty. */
	| { readonly kind: 'refused'; readonly problems: readonly InputProblem[]; readonly findings: readonly InspectFinding[] }
	/** Another scenario of the organisation is being published just now. */
	| { readonly kind: 'busy' }
	/** Drawing it takes longer than is given to it. */
	| { readonly kind: 'too-slow' }
	| ChangedMeanwhile
	| NotFound;

/** How much is done for one publishing. */
export interface PublishLimits {
	/** How often the scenario is drawn. */
	readonly draws: number;
	/** How long the server computes for it in all, ms. */
	readonly most: number;
}

/** @reason as many draws as the author saw; good scenarios need a second, and a learner waits for no draw as long as half a minute for 300 is. */
export const PUBLISH_LIMITS: PublishLimits = { draws: 300, most: 10_000 };

/** How long the server computes in one go before others have their turn, ms. @reason no more than an answer takes to be marked. */
const SLICE = 8;

/** Organisations that publish just now, in this process: inspecting is the dearest thing that anybody can ask for. */
const publishing = new Set<string>();

/**
 * Publishes the draft of a scenario as its next version. A scenario without a draft is published already.
 * @param revision that the person saw
 */
export async function publish(db: Database, who: Person, id: string, revision: number, now: Date, limits: PublishLimits = PUBLISH_LIMITS): Promise<Publishing> {
	const row = await findToChange(db, who, id);
	if (row === null) return NOT_FOUND;
	// Sent twice, or with nothing changed: what was asked for is so.
	if (row.draft === null && row.published !== null) return { kind: 'published', version: row.published };
	if (row.revision !== revision) return { kind: 'changed-meanwhile', revision: row.revision };
	const version = (row.published ?? 0) + 1;
	const parsed = parsedDraft(row.draft ?? '', id, version);
	if (parsed.kind === 'refused') return { kind: 'refused', problems: parsed.problems, findings: [] };
	if (publishing.has(who.organisation)) return { kind: 'busy' };
	publishing.add(who.organisation);
	try {
		const inspected = await inspectWithin(parsed.scenario, limits);
		if (inspected === 'too-slow') return { kind: 'too-slow' };
		if ('problem' in inspected) return { kind: 'refused', problems: [inspected], findings: [] };
		const { findings } = inspected;
		if (findings.some((one) => one.severity === 'fault')) return { kind: 'refused', problems: [], findings };
		const published = await db.transaction().execute(async (transaction) => {
			if (!(await changeDraft(transaction, id, revision, null, now.toISOString()))) return false;
			await insertVersion(transaction, { scenario: id, version, document: JSON.stringify(parsed.document), by: who.id, now: now.toISOString() });
			await noteDeed(transaction, who, 'scenario-published', id, now, { version });
			return true;
		});
		return published ? { kind: 'published', version } : await changedMeanwhile(db, who, id);
	} finally {
		publishing.delete(who.organisation);
	}
}

function parsedDraft(draft: string, id: string, version: number): Parsing {
	const read = readDocument(draft);
	return read.kind === 'refused' ? read : parseDocument(read.value, id, version);
}

/** Inspects with pauses in which the server answers others. */
async function inspectWithin(scenario: Scenario, { draws, most }: PublishLimits): Promise<Inspection | 'too-slow' | InputProblem> {
	const steps = inspectSteps(scenario, { draws });
	let spent = 0;
	let sincePause = 0;
	for (;;) {
		const began = performance.now();
		const step = nextOf(steps);
		const took = performance.now() - began;
		if ('problem' in step) return step;
		if (step.done === true) return step.value;
		spent += took;
		if (spent > most) return 'too-slow';
		sincePause += took;
		if (sincePause < SLICE) continue;
		await setImmediate();
		sincePause = 0;
	}
}

/** A step of an inspection. A scenario that fits the schema can still give plans that nothing can be computed of. */
function nextOf(steps: ReturnType<typeof inspectSteps>): ReturnType<typeof steps.next> | InputProblem {
	try {
		return steps.next();
	} catch (error) {
		if (!(error instanceof RangeError || error instanceof ReferenceError)) throw error;
		return { field: 'document', problem: `cannot be drawn: ${error.message}`, remedy: 'check the ranges and the base plan' };
	}
}
