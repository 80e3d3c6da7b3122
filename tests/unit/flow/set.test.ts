import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shippedScenario } from '#lib/course/shipped.ts';
import { asksOfPlace, isPassed, placeAtHand, placeOf, placesOf, replaySet, type SetAnswer, type SetContent } from '#lib/flow/index.ts';
import { draw, slipsWithEffect, type NumberAsk, type Scenario } from '#lib/scenario/index.ts';

const RULE = { right: 2, critical: 0 };

function answer(place: number, right = true, critical = 0): SetAnswer {
	return { place, right, critical };
}

function shipped(...ids: readonly string[]): readonly Scenario[] {
	return ids.map((id) => {
		const scenario = shippedScenario(id);
		if (scenario === undefined) throw new Error(`no scenario ${id} is shipped`);
		return scenario;
	});
}

function contentOf(scenarios: readonly Scenario[], change: Partial<SetContent> = {}): SetContent {
	return {
		scenarios: scenarios.map(({ id, version, asks }) => ({ id, version, asks: asks.map((ask) => ask.id) })),
		count: 6,
		rule: { right: 4, critical: 0 },
		sameForAll: false,
		language: null,
		aims: [],
		...change
	};
}

/** A seed's problem, and what is asked of it in numbers. */
function problemAt(scenarios: readonly Scenario[], place: { scenario: string; seed: number; asks: readonly string[] }) {
	const scenario = scenarios.find((one) => one.id === place.scenario);
	const result = scenario === undefined ? undefined : draw(scenario, place.seed);
	if (scenario === undefined || result?.kind !== 'drawn') throw new Error(`${place.scenario} gives nothing for ${place.seed}`);
	return { problem: result.problem, asks: asksOfPlace(scenario, place).filter((ask): ask is NumberAsk => ask.kind === 'number') };
}

describe('the flow of a set', () => {
	it('begins before its first problem', () => {
		const standing = replaySet({ count: 3, rule: RULE }, []);
		expect(standing.state).toBe('notStarted');
		expect(placeAtHand(standing)).toBe(0);
	});

	it('takes the answers of a round in any order, each place once', () => {
		const standing = replaySet({ count: 3, rule: RULE }, [answer(2), answer(2, false, 1), answer(0, false)]);
		expect(standing).toMatchObject({ state: 'working', context: { round: 0, answered: [2, 0], right: 1, critical: 0 } });
		expect(placeAtHand(standing)).toBe(1);
	});

	it('is passed when a round keeps the rule, and takes no answer after it', () => {
		const standing = replaySet({ count: 3, rule: RULE }, [answer(0), answer(1, false), answer(2), answer(3)]);
		expect(standing).toMatchObject({ state: 'passed', context: { round: 0, right: 2, over: [{ round: 0, right: 2, critical: 0 }] } });
		expect(placeAtHand(standing)).toBeUndefined();
	});

	it.each([
		['too few are right', [answer(0), answer(1, false), answer(2, false)]],
		['one is on the unsafe side', [answer(0), answer(1), answer(2, false, 1)]]
	])('goes on with a fresh round when %s', (_, answers) => {
		const standing = replaySet({ count: 3, rule: RULE }, answers);
		expect(standing).toMatchObject({ state: 'again', context: { round: 1, answered: [], right: 0, critical: 0 } });
		expect(placeAtHand(standing)).toBe(3);
		expect(replaySet({ count: 3, rule: RULE }, [...answers, answer(0), answer(4)])).toMatchObject({ state: 'working', context: { answered: [4] } });
	});

	it('counts the same however the answers of a round are ordered', () => {
		const round = fc.array(fc.record({ right: fc.boolean(), critical: fc.integer({ min: 0, max: 2 }) }), { minLength: 4, maxLength: 4 });
		fc.assert(
			fc.property(round, fc.shuffledSubarray([0, 1, 2, 3], { minLength: 4, maxLength: 4 }), fc.integer({ min: 1, max: 4 }), fc.integer({ min: 0, max: 2 }), (answers, order, right, critical) => {
				const all = answers.map((one, place) => ({ ...one, place }));
				const shuffled = order.flatMap((place) => all.filter((one) => one.place === place));
				const rule = { right, critical };
				const sums = { right: all.filter((one) => one.right).length, critical: all.reduce((sum, one) => sum + one.critical, 0) };
				const standing = replaySet({ count: 4, rule }, shuffled);
				expect(standing.context.over).toEqual([{ round: 0, ...sums }]);
				expect(standing.state).toBe(isPassed(rule, sums) ? 'passed' : 'again');
			}),
			{ numRuns: 200 }
		);
	});
});

describe('the problems of a set', () => {
	const three = shipped('bridge-bearing', 'stage-grid', 'yard-mast');

	it('are the same for the same set, seed, person and round, and can all be drawn', () => {
		const places = placesOf(contentOf(three), three, 'seed', 'ada', 0);
		expect(placesOf(contentOf(three), three, 'seed', 'ada', 0)).toEqual(places);
		expect(places).toHaveLength(6);
		for (const place of places) expect(problemAt(three, place).asks.length).toBeGreaterThan(0);
	});

	it('are found one by one as they are found together', () => {
		const content = contentOf(three);
		const places = placesOf(content, three, 'seed', 'ada', 1);
		expect(placeOf({ content, scenarios: three, seed: 'seed', person: 'ada' }, 7)).toEqual(places[1]);
	});

	it('differ between people, assignments and rounds', () => {
		const seeds = (seed: string, person: string, round: number) => placesOf(contentOf(three), three, seed, person, round).map((one) => `${one.scenario} ${one.seed}`);
		const all = [...seeds('a', 'ada', 0), ...seeds('a', 'bo', 0), ...seeds('b', 'ada', 0), ...seeds('a', 'ada', 1)];
		expect(new Set(all).size).toBe(all.length);
	});

	it('are one and the same for everybody where the set says so', () => {
		const content = contentOf(three, { sameForAll: true });
		expect(placesOf(content, three, 'a', 'bo', 0)).toEqual(placesOf(content, three, 'a', 'ada', 0));
		expect(placesOf(content, three, 'b', 'ada', 0)).not.toEqual(placesOf(content, three, 'a', 'ada', 0));
	});

	it('never repeat a scenario one after the other where there are two, through all rounds', () => {
		fc.assert(
			fc.property(fc.string(), fc.subarray(['bridge-bearing', 'stage-grid', 'yard-mast', 'tank-landing'], { minLength: 2 }), fc.integer({ min: 1, max: 7 }), (seed, ids, count) => {
				const scenarios = shipped(...ids);
				const order = [0, 1].flatMap((round) => placesOf(contentOf(scenarios, { count }), scenarios, seed, 'ada', round)).map((one) => one.scenario);
				for (const [i, id] of order.entries()) expect(order[i + 1]).not.toBe(id);
				// Each comes as often as the others, give or take one.
				const times = ids.map((id) => order.filter((one) => one === id).length);
				expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1);
			}),
			{ numRuns: 12 }
		);
	});

	it('ask what the set says', () => {
		const [bridge] = shipped('bridge-bearing');
		const asks = bridge?.asks.slice(0, 1).map((ask) => ask.id) ?? [];
		const content = contentOf(shipped('bridge-bearing'), { scenarios: [{ id: 'bridge-bearing', version: bridge?.version ?? 0, asks }], count: 2 });
		expect(placesOf(content, shipped('bridge-bearing'), 'a', 'ada', 0).map((one) => one.asks)).toEqual([asks, asks]);
	});

	it('bring out an aimed slip wherever it can be', () => {
		const scenarios = shipped('shaft-landing', 'formwork-deck');
		const aims = ['obstacle-overlooked'];
		const shows = (content: SetContent) =>
			placesOf(content, scenarios, 'aimed', 'ada', 0).map((place) => {
				const { problem, asks } = problemAt(scenarios, place);
				return asks.some((ask) => slipsWithEffect(problem, ask).some((slip) => aims.includes(slip)));
			});
		expect(shows(contentOf(scenarios, { count: 8, aims }))).not.toContain(false);
		// Left to chance, some would not.
		expect(shows(contentOf(scenarios, { count: 8 }))).toContain(false);
	});

	it('are looked for no longer than some hundred tries of draws, however hard a scenario is to draw', () => {
		const scenarios = shipped('telecom-mast');
		// A slip that shows in few of its draws.
		const content = contentOf(scenarios, { aims: ['d-ring-left-out'] });
		const drawsAt = (tries: number | undefined): number => {
			let draws = 0;
			const drawn = (scenario: Scenario, seed: number) => {
				draws += 1;
				const result = draw(scenario, seed);
				return tries === undefined ? result : { ...result, tries };
			};
			for (let place = 0; place < 3; place += 1) placeOf({ content, scenarios, seed: 'x', person: 'p', drawn }, place);
			return draws / 3;
		};
		expect(drawsAt(undefined)).toBeGreaterThan(8);
		expect(drawsAt(400)).toBeLessThanOrEqual(4);
	});

	it('stay as they are where no aimed slip has a place', () => {
		const scenarios = shipped('stage-grid');
		const plain = placesOf(contentOf(scenarios, { count: 2 }), scenarios, 'a', 'ada', 0);
		expect(placesOf(contentOf(scenarios, { count: 2, aims: ['obstacle-overlooked'] }), scenarios, 'a', 'ada', 0)).toEqual(plain);
	});

	it('cannot be found where a scenario of the set is not there', () => {
		expect(() => placesOf(contentOf(three), shipped('stage-grid'), 'a', 'ada', 0)).toThrow(/is not there/);
	});
});
