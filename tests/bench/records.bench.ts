/**
 * Records of 100,000 people with 300,000 completions and 5 million answers, on SQLite: the pages that an employer asks
 * for, the list of all completions, and verifying. BENCH_PEOPLE makes the organisation smaller.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { ROOT } from '../../src/cli/root.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import type { Person } from '#lib/server/index.ts';
import { readAskedList, trainingList } from '#lib/server/records/list.ts';
import { personPage } from '#lib/server/records/person-page.ts';
import { verifyRecords } from '#lib/server/records/verify/verify.ts';
import { fillHouse, realCourses, type House } from './simulated/records-house.ts';
import { quantile } from './simulated/timing.ts';

/** @source acceptance of the employer's part. */
const GOAL = { people: 100_000, completions: 3, answers: 50, page: 100, memory: 150, entries: 50_000, regraded: 10_000, redrawn: 0.01 } as const;
const SHARE_NEW = 0.04;
/** People whose every answer is marked again: enough for some seconds. */
const VERIFIED = 1000;
const MODELS = 12;
const TIMES = 60;
const SEED = 20_261_201;
const NOW = new Date('2026-11-30T10:00:00.000Z');

/** What employers look for. */
const LISTS: readonly (readonly [string, readonly string[]])[] = [
	['people page', ['', 'page=2', 'sort=name', 'state=current&sort=name', 'page=900']],
	['search', ['q=norrby', 'q=lucia+corvo', 'q=W-4711', 'q=ha', 'q=nobody']],
	['expiring list', ['state=expires-soon', 'state=expired', 'state=expired&page=20', 'state=expires-soon&sort=until']]
];

/** How long some work takes this process, ms: the database is in it. On a machine that is busy otherwise the rest is waiting for a turn. */
async function worked(work: () => Promise<void>): Promise<number> {
	const before = process.cpuUsage();
	await work();
	const { user, system } = process.cpuUsage(before);
	return (user + system) / 1000;
}

async function p95(times: number, one: (nth: number) => Promise<void>): Promise<number> {
	const measured: number[] = [];
	for (let nth = 0; nth < times; nth += 1) measured.push(await worked(() => one(nth)));
	return quantile(measured, 0.95);
}

async function pages(db: Database, house: House): Promise<readonly Figure[]> {
	const employer: Person = { kind: 'person', id: house.employer, organisation: house.organisation, role: 'employer', name: '', answerer: '', language: null };
	const figures: Figure[] = [];
	for (const [name, searches] of LISTS) {
		const value = await p95(TIMES, async (nth) => {
			await trainingList(db, employer, readAskedList(new URLSearchParams(searches[nth % searches.length])), NOW);
		});
		figures.push({ name: `${name}, p95`, value, unit: 'ms', goal: `≤ ${GOAL.page} ms`, holds: value <= GOAL.page });
	}
	const person = await p95(TIMES, async (nth) => {
		const page = await personPage(db, employer, house.people[(nth * 977) % house.people.length] ?? '', NOW);
		if (page === null) throw new Error('a person is not found');
	});
	figures.push({ name: 'person page, p95', value: person, unit: 'ms', goal: `≤ ${GOAL.page} ms`, holds: person <= GOAL.page });
	return figures;
}

/**
 * A heap of 40 MB: by itself Node lets memory grow as the machine allows, and collects late. What streams gets by with
 * little; what does not would end here.
 */
const LITTLE = ['--max-old-space-size=40', '--max-semi-space-size=2'];

function completions(address: string, house: House): readonly Figure[] {
	const printed = execFileSync(process.execPath, [...LITTLE, join(ROOT, 'tests/bench/simulated/drain-completions.ts'), address, house.organisation], { encoding: 'utf8' });
	const { bytes, loaded, peak } = JSON.parse(printed) as { bytes: number; loaded: number; peak: number };
	if (bytes < house.completions * 100) throw new Error('the list of completions is too short');
	return [
		{ name: `CSV of ${house.completions} completions, most memory of the process`, value: peak, unit: 'MB', goal: `< ${GOAL.memory} MB`, holds: peak < GOAL.memory },
		{ name: 'of it the program, loaded', value: loaded, unit: 'MB', goal: '–', holds: true }
	];
}

async function verified(db: Database, house: House, small: House): Promise<readonly Figure[]> {
	const verify = async (organisation: string, depth: 'hashes' | 'records' | 'answers', share: number) => {
		const before = process.cpuUsage();
		const result = await verifyRecords(db, { organisation, depth, redraw: { share, seed: SEED } });
		if (result.kind !== 'holds') throw new Error(`the records do not hold: ${JSON.stringify(result.broken)}`);
		const { user, system } = process.cpuUsage(before);
		// What one core is busy with; the collector's helpers on others count as well.
		return { seconds: (user + system) / 1e6, counts: result.counts };
	};
	const chain = await verify(house.organisation, 'hashes', 0);
	const entries = chain.counts.entries / chain.seconds;
	const records = await verify(small.organisation, 'records', 0);
	const answers = await verify(small.organisation, 'answers', GOAL.redrawn);
	const regraded = answers.counts.regraded / (answers.seconds - records.seconds);
	return [
		{ name: `chain of ${chain.counts.entries} entries`, value: entries, unit: 'per second', goal: `≥ ${GOAL.entries}`, holds: entries >= GOAL.entries },
		{ name: `marking again, ${100 * GOAL.redrawn} % drawn again`, value: regraded, unit: 'per second', goal: `≥ ${GOAL.regraded}`, holds: regraded >= GOAL.regraded },
		{ name: 'entries and their rows, without marking', value: records.counts.entries / records.seconds, unit: 'per second', goal: '–', holds: true }
	];
}

const bench: Bench = {
	name: 'records',
	async run() {
		const folder = mkdtempSync(join(tmpdir(), 'underfoot-bench-'));
		const file = join(folder, 'records.sqlite');
		const address = `file:${file}`;
		const people = Number(process.env['BENCH_PEOPLE'] ?? GOAL.people);
		try {
			const db = await openDatabase(address);
			const courses = await realCourses(db, MODELS);
			const small = await fillHouse(db, file, 'Lantern Quay Repairs', { people: VERIFIED, newcomers: 0, completions: 1, answers: VERIFIED * 36 }, courses, SEED);
			const house = await fillHouse(db, file, 'Harrow Bridge Works', { people, newcomers: Math.round(people * SHARE_NEW), completions: GOAL.completions, answers: people * GOAL.answers }, courses, SEED + 1);
			const figures = [...(await pages(db, house)), ...(await verified(db, house, small))];
			await db.destroy();
			return [...figures, ...completions(address, house)];
		} finally {
			rmSync(folder, { recursive: true, force: true });
		}
	}
};

export default bench;
