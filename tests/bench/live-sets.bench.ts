/**
 * How soon a trainer sees what a class of 200 answers: a whole server, everyone at a steady pace, and the trainer's page
 * asking as it does in a browser. Counted from the reply to an answer to the moment when the page knows of it.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import type { SetStates } from '#lib/server/index.ts';
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { ROOT } from '../../src/cli/root.ts';
import { follow, type Look } from '../../src/routes/crew/sets/[set]/follow.ts';
import { setClass, type ClassLearner, type SetClass } from './simulated/set-class.ts';
import { started } from './simulated/started.ts';
import { quantile } from './simulated/timing.ts';

/** @source acceptance of the trainer's part: people at work, and the longest until the trainer sees an answer, ms. */
const GOAL = { people: 200, seen: 2000 } as const;
/** Problems that each of them answers. */
const PROBLEMS = 10;
/** From one answer of somebody to the next, ms. @reason far faster than people work: fifty answers a second in all */
const PACE = 4000;
/** How long is waited for the last answers to be seen, ms. */
const PATIENCE = 20_000;

/** An answer that was replied to. */
interface Reply {
	readonly person: string;
	/** How many this person had answered with it. */
	readonly nth: number;
	/** When the reply was there, ms. */
	readonly at: number;
	/** How long it took, ms. */
	readonly took: number;
}

/** Sends one person's answers, each at its time. */
async function work(address: string, { person, cookie, bodies }: ClassLearner, offset: number, replied: (reply: Reply) => void): Promise<void> {
	const start = performance.now() + offset;
	for (const [i, body] of bodies.entries()) {
		await wait(Math.max(0, start + i * PACE - performance.now()));
		const began = performance.now();
		const response = await fetch(`${address}/api/attempts`, { method: 'POST', headers: { 'content-type': 'application/json', cookie }, body });
		const text = await response.text();
		if (response.status !== 201) throw new Error(`answered ${String(response.status)}: ${text.slice(0, 500)}`);
		const at = performance.now();
		replied({ person, nth: i + 1, at, took: at - began });
	}
}

/** What the trainer's page asks for, as it does. */
function looker(address: string, { set, trainer }: SetClass, looked: (took: number) => void) {
	return async (stamp: string): Promise<Look<SetStates>> => {
		const began = performance.now();
		const response = await fetch(`${address}/api/sets/${set}/states?stamp=${encodeURIComponent(stamp)}`, { headers: { cookie: trainer } });
		if (response.status === 204) return { kind: 'same' };
		if (!response.ok) throw new Error(`states answered ${String(response.status)}`);
		const states = (await response.json()) as SetStates;
		looked(performance.now() - began);
		return { kind: 'news', news: states, stamp: states.stamp };
	};
}

interface Measured {
	/** From reply to being seen, ms, of every answer. */
	readonly delays: readonly number[];
	readonly replies: readonly number[];
	readonly looks: readonly number[];
}

/** @throws if an answer was not seen in time, or not all are at the end */
async function measure(address: string, of: SetClass): Promise<Measured> {
	const waiting = new Set<Reply>();
	const delays: number[] = [];
	const replies: number[] = [];
	const looks: number[] = [];
	/** By person, how many answers the trainer knows of. */
	const seen = new Map<string, number>();
	const page = follow(looker(address, of, (took) => looks.push(took)), '', (_liveness, news) => {
		const now = performance.now();
		for (const one of news?.assignments.flatMap(({ people }) => people) ?? []) seen.set(one.person, one.answered);
		for (const reply of waiting) {
			if ((seen.get(reply.person) ?? 0) < reply.nth) continue;
			waiting.delete(reply);
			delays.push(now - reply.at);
		}
	});
	page.resume();
	await Promise.all(
		of.learners.map((one, i) =>
			work(address, one, (i * PACE) / of.learners.length, (reply) => {
				replies.push(reply.took);
				// The page may know before the reply has come all the way.
				if ((seen.get(reply.person) ?? 0) >= reply.nth) delays.push(0);
				else waiting.add(reply);
			})
		)
	);
	for (const end = performance.now() + PATIENCE; waiting.size > 0 && performance.now() < end; ) await wait(50);
	page.pause();
	if (waiting.size > 0) throw new Error(`${String(waiting.size)} answers were never seen`);
	return { delays, replies, looks };
}

function shown(name: string, value: number): Figure {
	return { name, value, unit: 'ms', goal: '–', holds: true };
}

const bench: Bench = {
	name: 'live-sets',
	async run() {
		const folder = mkdtempSync(join(tmpdir(), 'underfoot-bench-'));
		try {
			const file = join(folder, 'class.sqlite');
			const of = await setClass(file, GOAL.people, PROBLEMS);
			const server = await started(join(ROOT, 'src/cli/start.ts'), [], { PORT: '0', HOST: '127.0.0.1', DATABASE_URL: `file:${file}` });
			try {
				const { delays, replies, looks } = await measure(server.address, of);
				const longest = Math.max(...delays);
				return [
					{ name: `${String(GOAL.people)} people at a set, ${String(delays.length)} answers: seen by the trainer after, longest`, value: longest, unit: 'ms', goal: `≤ ${String(GOAL.seen)} ms`, holds: longest <= GOAL.seen },
					shown('the same, p95', quantile(delays, 0.95)),
					shown('the same, median', quantile(delays, 0.5)),
					shown('reply to an answer meanwhile, p95', quantile(replies, 0.95)),
					shown('reply to an answer meanwhile, median', quantile(replies, 0.5)),
					shown('reply to the trainer’s page meanwhile, p95', quantile(looks, 0.95)),
					shown('reply to the trainer’s page meanwhile, median', quantile(looks, 0.5))
				];
			} finally {
				await server.stop();
			}
		} finally {
			rmSync(folder, { recursive: true, force: true });
		}
	}
};

export default bench;
