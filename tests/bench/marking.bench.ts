/**
 * In Chromium, on the production build: how long after Enter a wrong answer stands marked and explained on screen,
 * and how many frames a second the playback of a fall keeps.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { chromiumPath } from '../../src/cli/chromium.ts';
import type { Bench, Figure } from '../../src/cli/figure.ts';
import { addressOf, enter, problemOf, ready, rightEntries, slipEntry } from '../e2e/learner.ts';
import { startOwnServer } from '../e2e/own-server.ts';

/** @source acceptance of the orientation course: an answer is marked on screen this soon after Enter, ms. */
const SOON = 100;
/** @source acceptance of the orientation course: frames a second. */
const FRAMES = 60;
/** A frame clock that runs a little slow still counts. @reason the measured second has no sharp ends. */
const NEARLY = 0.98;
/** How often an answer is handed in. The first finds code that has never run. */
const TIMES = 25;

function quantile(values: readonly number[], share: number): number {
	const sorted = values.toSorted((a, b) => a - b);
	return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? NaN;
}

/** From the press of Enter to the first frame after which the explanation has been painted, ms. */
async function timeOfEnter(page: Page, field: string): Promise<number> {
	await page.evaluate(() => {
		const marked = new Promise<number>((done) => {
			addEventListener('keydown', (event) => {
				const pressed = event.timeStamp;
				const look = (): void => {
					requestAnimationFrame(() => {
						if (document.querySelector('.explained [data-lead]') === null) return look();
						// The frame that shows it is painted before the next one begins.
						requestAnimationFrame((next) => done(next - pressed));
					});
				};
				look();
			}, { once: true, capture: true });
		});
		Object.assign(window, { marked });
	});
	await page.locator(field).press('Enter');
	return await page.evaluate(() => Reflect.get(window, 'marked') as Promise<number>);
}

interface Marked {
	/** Enter to paint, ms. */
	readonly times: readonly number[];
	/** What the page's main thread worked for it, ms: on a busy machine the rest is waiting for a turn. */
	readonly work: readonly number[];
}

async function marking(page: Page): Promise<Marked> {
	const session = await page.context().newCDPSession(page);
	await session.send('Performance.enable', { timeDomain: 'threadTicks' });
	const worked = async (): Promise<number> => {
		const { metrics } = await session.send('Performance.getMetrics');
		return 1000 * (metrics.find((one) => one.name === 'TaskDuration')?.value ?? NaN);
	};
	const problem = problemOf('bridge-bearing', 1);
	await page.goto(addressOf(problem));
	await ready(page);
	await page.waitForLoadState('networkidle');
	const times: number[] = [];
	const work: number[] = [];
	for (let i = 0; i < TIMES; i += 1) {
		await enter(page, problem, { ...rightEntries(problem), required: slipEntry(problem, 'required', i % 2 === 0 ? 'elongation-left-out' : 'margin-left-out') });
		const before = await worked();
		times.push(await timeOfEnter(page, '#answer-required'));
		work.push((await worked()) - before);
		if (i < TIMES - 1) await page.getByRole('button', { name: 'Try again' }).click();
	}
	return { times, work };
}

interface Played {
	/** Frames a second over the playback. */
	readonly rate: number;
	/** The longest time between two frames, ms. */
	readonly longest: number;
	/** The same page at rest: what this machine and its browser give at all. */
	readonly atRest: number;
}

/** Plays the explained fall, slowly, and counts the frames. */
async function playing(page: Page): Promise<Played> {
	const frames = (milliseconds: number): Promise<{ rate: number; longest: number }> =>
		page.evaluate(
			(span) =>
				new Promise<{ rate: number; longest: number }>((done) => {
					const at: number[] = [];
					const tick = (time: number): void => {
						at.push(time);
						const first = at[0] ?? time;
						if (time - first < span) {
							requestAnimationFrame(tick);
							return;
						}
						const gaps = at.slice(1).map((one, i) => one - (at[i] ?? one));
						done({ rate: (1000 * gaps.length) / (time - first), longest: Math.max(...gaps) });
					};
					requestAnimationFrame(tick);
				}),
			milliseconds
		);
	const rest = await frames(1500);
	await page.getByRole('button', { name: 'Play' }).click();
	const played = await frames(2500);
	return { ...played, atRest: rest.rate };
}

const bench: Bench = {
	name: 'marking',
	async run() {
		const executablePath = chromiumPath();
		if (executablePath === null) throw new Error('No Chromium found: npm test installs it, or set CHROMIUM_PATH');
		const folder = mkdtempSync(join(tmpdir(), 'underfoot-bench-'));
		const server = await startOwnServer(join(folder, 'bench.sqlite'));
		const browser = await chromium.launch({ executablePath });
		try {
			const page = await browser.newPage({ baseURL: server.address, viewport: { width: 1280, height: 800 }, locale: 'en-US' });
			const { times, work } = await marking(page);
			const played = await playing(page);
			const shown = (name: string, value: number, unit: string): Figure => ({ name, value, unit, goal: '–', holds: true });
			const median = quantile(times, 0.5);
			return [
				{ name: 'Enter to the explanation on screen, median', value: median, unit: 'ms', goal: `≤ ${SOON} ms`, holds: median <= SOON },
				shown('Enter to the explanation on screen, nine of ten', quantile(times, 0.9), 'ms'),
				shown('Enter to the explanation on screen, the first time', times[0] ?? NaN, 'ms'),
				shown('of it work of the page, median', quantile(work, 0.5), 'ms'),
				shown('of it work of the page, the first time', work[0] ?? NaN, 'ms'),
				{
					name: 'playback, frames a second',
					value: played.rate,
					unit: 'a second',
					goal: `≥ ${FRAMES * NEARLY} a second`,
					holds: played.rate >= FRAMES * NEARLY
				},
				shown('playback, longest time between two frames', played.longest, 'ms'),
				shown('the same page at rest, frames a second', played.atRest, 'a second')
			];
		} finally {
			await browser.close();
			await server.end('SIGTERM');
			rmSync(folder, { recursive: true });
		}
	}
};

export default bench;
