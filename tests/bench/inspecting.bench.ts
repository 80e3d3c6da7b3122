/**
 * How soon an author sees what a change of a scenario does: the inspection of a few hundred draws, run as the page's
 * worker runs it, of every shipped scenario. The slowest one counts.
 */
import type { Bench } from '../../src/cli/figure.ts';
import { GATHER, type Answered } from '../../src/routes/crew/scenarios/[scenario]/model/inspect-messages.ts';
import { DRAWS, inspector } from '../../src/routes/crew/scenarios/[scenario]/model/inspecting.ts';
import { SHIPPED_IDS, shippedDocument } from '../support/shipped-documents.ts';
import { median } from './simulated/timing.ts';

/** @source acceptance of the trainer's part: from the last change to what is found, ms. */
const GOAL = 300;
/** How often each is inspected, after once to warm up. */
const TIMES = 5;

/** What this process works for one inspection of a document, from the parse to the last finding, ms. @throws if it is not inspected to its end */
async function timeOf(id: string): Promise<number> {
	const document = shippedDocument(id);
	const answers: Answered[] = [];
	const before = process.cpuUsage();
	const take = inspector({ post: (answer) => answers.push(structuredClone(answer)), pause: () => Promise.resolve(), now: () => performance.now() });
	await take({ kind: 'document', run: 1, document, seed: 1 });
	const { user, system } = process.cpuUsage(before);
	const last = answers.at(-1);
	if (last?.kind !== 'inspected' || last.inspection.draws !== DRAWS) throw new Error(`${id} was not inspected`);
	return (user + system) / 1000;
}

const bench: Bench = {
	name: 'inspecting',
	async run() {
		const found: { readonly id: string; readonly time: number }[] = [];
		for (const id of SHIPPED_IDS) {
			const times: number[] = [];
			for (let i = 0; i <= TIMES; i += 1) times.push(await timeOf(id));
			found.push({ id, time: GATHER + median(times.slice(1)) });
		}
		const [slowest] = found.toSorted((a, b) => b.time - a.time);
		if (slowest === undefined) throw new Error('there is nothing to inspect');
		return [
			{ name: `from the last change to the inspection of ${String(DRAWS)} draws, slowest scenario (${slowest.id})`, value: slowest.time, unit: 'ms', goal: `≤ ${String(GOAL)} ms`, holds: slowest.time <= GOAL },
			{ name: 'the same, median of all scenarios', value: median(found.map(({ time }) => time)), unit: 'ms', goal: '–', holds: true }
		];
	}
};

export default bench;
