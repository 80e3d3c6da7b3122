/**
 * The engine's planning-case fall against an integrator that shares no line with it: 1,000 random plans, in
 * the times of their events, the speeds there and the places, to 1e-4 (of a metre, second, metre a second, or
 * relative where the figure is over one). physics.md sections 4 and 9; no outside source: both are mechanics.
 */
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { beforeAll, describe, expect, test } from 'vitest';
import { analyse, simulate, type FallEventId, type LanyardPlan, type PlayedFall } from '#lib/arrest/index.ts';
import { STANDARD_GRAVITY } from '#lib/quantity/index.ts';
import { stepFall, type FallResult, type Moment } from '../support/integrator-fall.ts';

const PLANS = 1000;
const SEED = 20261125;
const WITHIN = 1e-4;
const LEAST_DECELERATION = 0.1 * STANDARD_GRAVITY;

interface Case {
	readonly name: string;
	readonly plan: LanyardPlan;
	/** Depth of an assumed lower level below the walking surface, m. */
	readonly level: number;
	readonly played: PlayedFall;
	readonly stepped: FallResult;
}

function randomCases(): Case[] {
	const random = xoroshiro128plus(SEED);
	const unit = (): number => uniformInt(random, 0, 999_999) / 1e6;
	const between = (low: number, high: number): number => low + (high - low) * unit();
	const often = (share: number): boolean => unit() < share;

	const cases: Case[] = [];
	while (cases.length < PLANS) {
		const length = between(0.8, 2.2);
		const connector = often(0.3) ? between(0.2, 1.2) : 0;
		const reach = length + connector;
		const offset = often(0.6) ? between(0.02, 0.95) * reach : 0;
		const down = Math.sqrt(reach * reach - offset * offset);
		const rise = often(0.15) ? down - between(0, 0.15) : between(-Math.min(down, 2), down);
		const meets = often(0.4);
		const dRingHeight = between(1.2, 1.6);
		const dRingNow = !meets && often(0.3) ? between(0.5, dRingHeight) : undefined;
		const standingHeight = often(0.2) ? between(0, 1.5) : 0;
		const anchorageHeight = rise + (dRingNow ?? dRingHeight) + standingHeight;
		const elongation = between(0.2, 1.75);
		const mass = between(50, 160);
		const fullDepth = reach + elongation - anchorageHeight + dRingHeight;
		const deep = often(0.5) ? between(0, 0.15) : between(0, fullDepth + standingHeight);
		const level = meets ? fullDepth - deep - 1e-3 : 100;
		const plan: LanyardPlan = {
			system: 'lanyard',
			rules: 'us-construction',
			practice: 'us-two-foot',
			worker: {
				dRingHeight,
				posture: dRingNow === undefined ? 'standing' : 'kneeling',
				dRingNow,
				standingHeight,
				mass: { body: mass, clothing: 0, equipment: 0, tools: 0, tethered: 0 }
			},
			lanyard: { length },
			absorber: { elongation, condition: 'dry', testedForLongerFall: 'unknown' },
			harness: { slide: meets ? 0 : between(0, 0.4), stretch: 0 },
			connectors: { compatible: 'yes' },
			anchorage: {
				height: anchorageHeight,
				persons: 1,
				engineered: 'unknown',
				connector: connector > 0 ? { length: connector, lies: 'hanging' } : null
			},
			offset: { distance: offset, direction: 'along-edge' },
			lineMeetsEdge: false,
			below: { depth: 100, obstacles: [] },
			rescue: 'arranged'
		};
		const outcome = analyse(plan);
		if (outcome.kind === 'refused') throw new Error(`refused: ${outcome.refusal.why}`);
		const played = simulate(outcome.analysis, { lowerLevelAt: level });
		if (played.kind === 'refused') throw new Error(`not played: ${played.refusal.why}`);
		const stepped = stepFall({
			mass,
			reach,
			rise,
			offset,
			gravity: STANDARD_GRAVITY,
			law: { kind: 'even', deployment: elongation, least: LEAST_DECELERATION },
			step: 5e-3,
			floor: meets ? anchorageHeight + level - dRingHeight : undefined
		});
		cases.push({
			name: `plan ${cases.length}: reach ${reach}, rise ${rise}, offset ${offset}, elongation ${elongation}, level ${level}`,
			plan,
			level,
			played,
			stepped
		});
	}
	return cases;
}

const timeOf = (played: PlayedFall, id: FallEventId): number | undefined => played.events.find((event) => event.id === id)?.t;

/** Differences of one event, each over the figure where that is above one. */
function apart({ plan, played }: Case, id: FallEventId, moment: Moment): number[] {
	const t = timeOf(played, id);
	if (t === undefined) return [Infinity];
	const { dRing, dRingVelocity } = played.at(t);
	const pairs: readonly (readonly [number, number])[] = [
		[t, moment.time],
		[dRing.x, moment.x],
		[dRing.z - plan.anchorage.height, moment.z],
		[dRingVelocity.x, moment.vx],
		[dRingVelocity.z, moment.vz]
	];
	return pairs.map(([one, other]) => Math.abs(one - other) / Math.max(1, Math.abs(other)));
}

describe(`${PLANS} random plans, seed ${SEED}`, () => {
	let cases: Case[] = [];
	beforeAll(() => {
		cases = randomCases();
	}, 120_000);

	const worstOf = (id: FallEventId, momentOf: (stepped: FallResult) => Moment | undefined): { off: number; of: number; name: string } => {
		let worst = { off: 0, of: 0, name: '' };
		let of = 0;
		for (const one of cases) {
			const moment = momentOf(one.stepped);
			if (moment === undefined) {
				expect(timeOf(one.played, id), `${one.name}: ${id} is played but not stepped`).toBeUndefined();
				continue;
			}
			of += 1;
			const off = Math.max(...apart(one, id, moment));
			if (!(off <= worst.off)) worst = { off, of, name: one.name };
		}
		return { ...worst, of };
	};

	const contact = (stepped: FallResult): boolean => stepped.ends === 'contact';

	test.each([
		['lanyard-tight', (stepped: FallResult) => stepped.taut, 700],
		['absorber-done', (stepped: FallResult) => stepped.held, 500],
		['lowest', (stepped: FallResult) => stepped.lowest, 500],
		['rest', (stepped: FallResult) => (contact(stepped) ? undefined : stepped.end), 500],
		['contact', (stepped: FallResult) => (contact(stepped) ? stepped.end : undefined), 200]
	] as const)('%s: same time, place and velocity', (id, momentOf, atLeast) => {
		const { off, of, name } = worstOf(id, momentOf);
		console.log(`${id}: ${of} plans, farthest apart ${off.toExponential(1)}`);
		expect(of).toBeGreaterThan(atLeast);
		expect(off, name).toBeLessThan(WITHIN);
	});

	test('the stop pulls with the same force at its end', () => {
		let worst = { off: 0, name: '' };
		for (const { stepped, played, name } of cases) {
			if (stepped.held === undefined || stepped.held.along > WITHIN) continue;
			const force = played.at(stepped.held.time - 1e-6).force;
			const off = Math.abs(force / stepped.held.pull - 1);
			if (!(off <= worst.off)) worst = { off, name };
		}
		console.log(`force: farthest apart ${worst.off.toExponential(1)}`);
		expect(worst.off, worst.name).toBeLessThan(WITHIN);
	});

	test('every kind of fall is among them', () => {
		const count = (match: (one: Case) => boolean): number => cases.filter(match).length;
		expect(count(({ plan }) => plan.offset.distance === 0)).toBeGreaterThan(300);
		expect(count(({ stepped }) => stepped.ends === 'far-side')).toBeGreaterThan(300);
		expect(count(({ stepped }) => stepped.ends === 'hanging')).toBeGreaterThan(150);
		expect(count(({ stepped }) => stepped.forceless > 0)).toBeGreaterThan(40);
		expect(count(({ plan }) => plan.worker.posture === 'kneeling')).toBeGreaterThan(100);
		expect(count(({ stepped, plan }) => contact(stepped) && plan.offset.distance > 0 && stepped.held !== undefined)).toBeGreaterThan(15);
	});
});
