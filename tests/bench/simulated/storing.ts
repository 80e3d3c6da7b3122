/** An answer posted, graded and durably stored, against a bare endpoint with one durable insert: whole processes. */
import { randomBytes, randomUUID } from 'node:crypto';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rightValue } from '#lib/grading/index.ts';
import { DRAW_VERSION, type Problem, type Scenario } from '#lib/scenario/index.ts';
import { SLIP_SET_VERSION } from '#lib/slips/index.ts';
import { ROOT } from '../../../src/cli/root.ts';
import { dice, slippedAnswer, tasksOf, type Dice } from './learner.ts';
import { post, requestRate } from './load.ts';
import { problemsOf } from './shipped.ts';
import { started, type Started } from './started.ts';
import { median } from './timing.ts';
import { gridPoint, typed } from './writing.ts';

/** As the stack's own baseline was measured. */
const CONNECTIONS = 32;
const REQUESTS = 1500;
const ROUNDS = 7;
/** Answers that one guest hands in: a few sittings. */
const ANSWERS_A_GUEST = 50;
const SEED = 4711;

/** What a learner sends for a whole problem: half of the numbers right, half from a slip. */
function answersFor(problem: Problem, roll: Dice): Readonly<Record<string, object>> {
	const tasks = tasksOf(problem, (ask) => rightValue(problem, ask) !== undefined);
	const answers: Record<string, object> = {};
	for (const ask of problem.scenario.asks) {
		if (ask.kind === 'decision') {
			answers[ask.id] = { kind: 'decision', decision: roll(2) === 0 ? 'tie-off' : 'do-not-tie-off' };
			continue;
		}
		const task = tasks.find((one) => one.ask === ask);
		const right = task?.mistakes.right;
		if (task === undefined || right === undefined) answers[ask.id] = { kind: 'not-stated' };
		else {
			const wrong = roll(2) === 0 ? undefined : slippedAnswer([task], 1, roll);
			answers[ask.id] = { kind: 'number', text: wrong?.text ?? typed(gridPoint(right, ask, 'at the end'), ask, 0) };
		}
	}
	return answers;
}

/** Requests that each hand in one of the problems. */
function requestsFor(problems: readonly Problem[], roll: Dice): readonly Buffer[] {
	let cookie = '';
	return problems.map((problem, i) => {
		if (i % ANSWERS_A_GUEST === 0) cookie = `guest=${randomBytes(32).toString('base64url')}`;
		const body = {
			id: randomUUID(),
			scenario: problem.scenario.id,
			version: problem.scenario.version,
			drawVersion: DRAW_VERSION,
			slipSetVersion: SLIP_SET_VERSION,
			seed: problem.seed,
			acceptedTry: problem.acceptedTry,
			language: 'en',
			answers: answersFor(problem, roll)
		};
		return post('/api/attempts', JSON.stringify(body), cookie);
	});
}

/** The same in an order by chance. */
function shuffled<T>(all: readonly T[], roll: Dice): readonly T[] {
	const order = [...all];
	for (let i = order.length - 1; i > 0; i -= 1) {
		const j = roll(i + 1);
		const [a, b] = [order[i], order[j]];
		if (a !== undefined && b !== undefined) [order[i], order[j]] = [b, a];
	}
	return order;
}

export interface StoringRates {
	/** Answers posted, graded and stored, a second: to problems that were opened at this server, as people do. */
	readonly ours: number;
	/** The same to problems that this server never drew before: opened at another one, or long ago. */
	readonly unopened: number;
	/** Requests a second of the bare endpoint. */
	readonly bare: number;
}

/** @returns the median rates of both servers, run in turn under the same load. */
export async function storingRates(scenarios: readonly Scenario[]): Promise<StoringRates> {
	const folder = mkdtempSync(join(tmpdir(), 'underfoot-bench-'));
	const roll = dice(SEED);
	const each = Math.ceil((REQUESTS * (ROUNDS + 1)) / scenarios.length);
	const problems = shuffled(scenarios.flatMap((scenario) => problemsOf(scenario, each)), roll);
	const servers: Started[] = [];
	try {
		const ours = await started(join(ROOT, 'src/cli/start.ts'), [], {
			PORT: '0',
			HOST: '127.0.0.1',
			DATABASE_URL: `file:${join(folder, 'ours.sqlite')}`
		});
		servers.push(ours);
		const bare = await started(join(import.meta.dirname, 'bare-endpoint.ts'), [join(folder, 'bare.sqlite')], {});
		servers.push(bare);
		const rates = { ours: [] as number[], unopened: [] as number[], bare: [] as number[] };
		const opened = problems.slice(0, REQUESTS);
		// Warms both up, and has the server draw the problems as opening their pages does.
		await requestRate(ours.address, requestsFor(opened, roll), CONNECTIONS, 201);
		await requestRate(bare.address, requestsFor(opened, roll), CONNECTIONS, 201);
		for (let round = 1; round <= ROUNDS; round += 1) {
			const fresh = problems.slice(round * REQUESTS, (round + 1) * REQUESTS);
			// The opened ones first: fresh ones may push them out of the server's memory, so they are drawn anew below.
			rates.ours.push(await requestRate(ours.address, requestsFor(opened, roll), CONNECTIONS, 201));
			rates.bare.push(await requestRate(bare.address, requestsFor(fresh, roll), CONNECTIONS, 201));
			rates.unopened.push(await requestRate(ours.address, requestsFor(fresh, roll), CONNECTIONS, 201));
			await requestRate(ours.address, requestsFor(opened, roll), CONNECTIONS, 201);
		}
		return { ours: median(rates.ours), unopened: median(rates.unopened), bare: median(rates.bare) };
	} finally {
		await Promise.all(servers.map((server) => server.stop()));
		rmSync(folder, { recursive: true, force: true });
	}
}
