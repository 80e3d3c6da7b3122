/** Moments of a fall against the laws of even acceleration, worked out here by themselves (elementary mechanics). */
import { describe, expect, test } from 'vitest';
import { drawPicture, type MomentFacts, type Picture } from '#lib/findings/index.ts';

const SEEDS = Array.from({ length: 500 }, (_, seed) => seed);
const G = 9.80665;

const of = (numbers: Readonly<Record<string, number>>, id: string): number => numbers[id] ?? NaN;

/** Speed of a D-ring that has come down so far: grows over the free fall, shrinks evenly over the elongation. */
function speedAt(numbers: Readonly<Record<string, number>>, dRing: number): number {
	const [h, x] = [of(numbers, 'freeFall'), of(numbers, 'elongation')];
	const down = of(numbers, 'dRingHeight') - dRing;
	return down <= h ? Math.sqrt(2 * G * down) : Math.sqrt(Math.max(0, 2 * G * h * (1 - (down - h) / x)));
}

function moments(picture: Picture): { id: string; facts: MomentFacts; numbers: Readonly<Record<string, number>> }[] {
	return picture.shown.parts.map((part) => {
		const facts = picture.key.facts[part.id];
		if (facts === undefined) throw new RangeError(`${part.id} has no facts`);
		return { id: part.id, facts, numbers: part.numbers ?? {} };
	});
}

describe.each(['moment-now', 'moment-used-up'])('%s', (id) => {
	test.each(SEEDS.slice(0, 200))('seed %i: the drawn places agree with the stage and with each other', (seed) => {
		const { shown, key } = drawPicture(id, seed);
		const n = shown.numbers;
		const stage = key.facts['now']?.stage;
		const down = of(n, 'dRingHeight') - of(n, 'dRing');
		expect(of(n, 'deployed')).toBeCloseTo(Math.max(0, down - of(n, 'freeFall')), 2);
		const share = of(n, 'deployed') / of(n, 'elongation');
		expect(of(n, 'slid')).toBeCloseTo(of(n, 'stretch') * share * share, 2);
		expect(of(n, 'soles')).toBeCloseTo(of(n, 'dRing') - of(n, 'dRingHeight') - of(n, 'slid'), 2);
		expect(stage).toBe(down < 0.001 ? 'standing' : share < 0.001 ? 'free-fall' : share > 0.999 ? 'hanging' : 'slowing');
		// Free fall = lanyard + D-ring height − anchorage height (29 CFR 1926.500(b), straight below the anchorage).
		expect(of(n, 'freeFall')).toBeCloseTo(of(n, 'lanyard') + of(n, 'dRingHeight') - of(n, 'anchorage'), 6);
		expect(of(n, 'depth')).toBeGreaterThan(of(n, 'freeFall') + of(n, 'elongation') + of(n, 'stretch') + of(n, 'margin'));
	});
});

describe('moment-now', () => {
	test.each(SEEDS.slice(0, 100))('seed %i: lengths are begun as the stage says', (seed) => {
		const { key } = drawPicture('moment-now', seed);
		const begun = { standing: 0, 'free-fall': 1, slowing: 3, hanging: 3 } as const;
		expect(key.marks).toEqual(['free-fall', 'elongation', 'stretch'].slice(0, begun[key.facts['now']?.stage ?? 'standing']));
		expect(key.choice).toBe(key.facts['now']?.stage);
	});
});

describe('moment-used-up', () => {
	test.each(SEEDS)('seed %i: what is left is the sum of the three less what is gone', (seed) => {
		const { shown, key } = drawPicture('moment-used-up', seed);
		const n = shown.numbers;
		const left = of(n, 'freeFall') + of(n, 'elongation') + of(n, 'stretch') - of(n, 'fallen');
		const lengths = shown.choices.map((one) => one.length ?? NaN);
		expect(shown.choices.find((one) => one.id === key.choice)?.length).toBeCloseTo(left, 6);
		expect(lengths.length).toBe(5);
		lengths.slice(1).forEach((length, i) => expect(length - (lengths[i] ?? NaN)).toBeGreaterThan(0.099));
		for (const one of shown.choices) expect(key.criticalChoices.includes(one.id)).toBe((one.length ?? NaN) < left - 0.001);
		const wholly = [of(n, 'deployed') > 0, of(n, 'deployed') > of(n, 'elongation') - 0.001, of(n, 'slid') > of(n, 'stretch') - 0.001];
		expect(key.marks).toEqual(['free-fall', 'elongation', 'stretch'].filter((_, i) => wholly[i]));
	});
});

describe('moment-pull', () => {
	test.each(SEEDS)('seed %i: the lanyard pulls where it is tight, and one moment is clearly the fastest', (seed) => {
		const picture = drawPicture('moment-pull', seed);
		const all = moments(picture);
		expect(all.length).toBe(5);
		expect(picture.key.marks).toEqual(all.filter(({ numbers }) => of(numbers, 'deployed') > 0).map(({ id }) => id));
		const speeds = all.map(({ id, numbers }) => ({ id, speed: speedAt(picture.shown.numbers, of(numbers, 'dRing')) }));
		speeds.sort((a, b) => b.speed - a.speed);
		expect(picture.key.choice).toBe(speeds[0]?.id);
		expect(speeds[0]?.speed).toBeGreaterThan(1.1 * (speeds[1]?.speed ?? NaN));
	});
});

describe('moment-faster', () => {
	test.each(SEEDS)('seed %i: faster and slower are clear, and the pulls compare as even braking says', (seed) => {
		const picture = drawPicture('moment-faster', seed);
		const n = picture.shown.numbers;
		const framed = speedAt(n, of(n, 'framed-dRing'));
		const all = moments(picture);
		const faster = all.filter(({ numbers }) => speedAt(n, of(numbers, 'dRing')) > framed).map(({ id }) => id);
		expect(picture.key.marks).toEqual(faster);
		for (const { numbers } of all) {
			const speed = speedAt(n, of(numbers, 'dRing'));
			expect(Math.abs(speed - framed)).toBeGreaterThan(0.08 * Math.max(speed, framed));
		}
		// Over the elongation m g (h + x)/x, hanging m g, in free fall nothing: in weights.
		const pullOf = (id: string | undefined): number => {
			const numbers = all.find((one) => one.id === id)?.numbers ?? {};
			const deployed = of(numbers, 'deployed');
			if (deployed === 0) return 0;
			return deployed > of(n, 'elongation') - 0.001 ? 1 : (of(n, 'freeFall') + of(n, 'elongation')) / of(n, 'elongation');
		};
		const [a, b] = picture.shown.choices;
		const difference = pullOf(a?.id) - pullOf(b?.id);
		expect(picture.key.choice).toBe(Math.abs(difference) < 0.01 ? 'same' : difference > 0 ? a?.id : b?.id);
	});
});
