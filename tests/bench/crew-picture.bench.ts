/**
 * The picture of a crew of 200 people with 500 answers each: how long the server works for the page, and whether that
 * grows with answers of people outside the crew. On SQLite, the database that a server has unless told otherwise.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { openDatabase, type Database } from '#lib/server/db/open.ts';
import { picturePage, type ScenarioSource } from '#lib/server/picture/page.ts';
import { shippedScenarios } from './simulated/shipped.ts';
import { quantile } from './simulated/timing.ts';
import { PictureSeeds } from './simulated/outcomes.ts';

/** @source acceptance of the trainer's part: people, answers of each, ms, answers of others, and how much slower these may make it. */
const GOAL = { people: 200, answers: 500, time: 150, others: [1000, 1_000_000], ratio: 1.5 } as const;
/** How often each page is asked for. */
const TIMES = 40;
const SEED = 20_261_130;

/** A server's database with the crew, and answers of others beside it. */
interface Beside {
	readonly db: Database;
	readonly seeds: PictureSeeds;
}

async function filled(file: string, others: number): Promise<Beside> {
	const db = await openDatabase(`file:${file}`);
	const seeds = new PictureSeeds(file, SEED);
	seeds.crewOf(GOAL.people, GOAL.answers);
	seeds.others(others);
	seeds.close();
	return { db, seeds };
}

/** How long one page takes, ms. */
interface Time {
	/** What this process works for it: the database is in it. On a machine that is busy otherwise the rest is waiting for a turn. */
	readonly work: number;
	/** By the clock. */
	readonly clock: number;
}

async function timeOf({ db, seeds }: Beside, search: string, scenarios: ScenarioSource): Promise<Time> {
	const start = performance.now();
	const before = process.cpuUsage();
	const page = await picturePage(db, seeds.trainer, seeds.crew, new URLSearchParams(search), scenarios);
	const { user, system } = process.cpuUsage(before);
	const clock = performance.now() - start;
	if (page === null || page.picture.rows.length !== GOAL.people || page.picture.weeks.length === 0) throw new Error('the page does not show the crew');
	return { work: (user + system) / 1000, clock };
}

/** Asks each for a page in turn, so that whatever else the machine does meets all alike. */
async function inTurn(pages: readonly (readonly [Beside, string])[]): Promise<readonly (readonly Time[])[]> {
	const shipped = shippedScenarios();
	const scenarios: ScenarioSource = {
		toChoose: shipped,
		versionOf: (id, version) => Promise.resolve(shipped.find((one) => one.id === id && one.version === version))
	};
	const times = pages.map((): Time[] => []);
	for (let round = 0; round < TIMES; round += 1) {
		for (const [i, [beside, search]] of pages.entries()) times[i]?.push(await timeOf(beside, search, scenarios));
	}
	return times;
}

const bench: Bench = {
	name: 'crew-picture',
	async run() {
		const folder = mkdtempSync(join(tmpdir(), 'underfoot-bench-'));
		const [few, many] = GOAL.others;
		const databases: Beside[] = [];
		try {
			for (const others of [few, many]) databases.push(await filled(join(folder, `${others}.sqlite`), others));
			const [small, large] = databases;
			if (small === undefined || large === undefined) throw new Error('there is nothing to compare');
			const searches = ['', 'cell=required-clearance', 'scenario=bridge-bearing&from=2026-09-01'] as const;
			const [before = [], beforeCell = [], beforeNarrow = [], after = [], afterCell = [], afterNarrow = []] = await inTurn(
				[small, large].flatMap((beside) => searches.map((search): [Beside, string] => [beside, search]))
			);
			const at = (times: readonly Time[], share: number): number => quantile(times.map(({ work }) => work), share);
			const time = (name: string, times: readonly Time[]): Figure => {
				const value = at(times, 0.95);
				return { name: `${name}, work of the server, p95`, value, unit: 'ms', goal: `≤ ${GOAL.time} ms`, holds: value <= GOAL.time };
			};
			const growth = (name: string, then: readonly Time[], now: readonly Time[]): Figure => {
				const value = at(now, 0.5) / at(then, 0.5);
				return { name: `${name}: beside ${many} other answers in times of that beside ${few}, medians`, value, unit: '×', goal: `≤ ${GOAL.ratio}`, holds: value <= GOAL.ratio };
			};
			return [
				time(`the picture of ${GOAL.people} people × ${GOAL.answers} answers beside ${few} others`, before),
				time(`the same beside ${many} others`, after),
				{ name: 'the same by the clock, median', value: quantile(after.map(({ clock }) => clock), 0.5), unit: 'ms', goal: '–', holds: true },
				time('with a cell opened', afterCell),
				time('of one scenario and three months', afterNarrow),
				growth('the picture', before, after),
				growth('with a cell opened', beforeCell, afterCell),
				growth('of one scenario and three months', beforeNarrow, afterNarrow)
			];
		} finally {
			for (const { db } of databases) await db.destroy();
			rmSync(folder, { recursive: true });
		}
	}
};

export default bench;
