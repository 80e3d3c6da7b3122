import { describe, expect, it } from 'vitest';
import { judge, judgeCondition, type Bound, type Check, type Condition, type Requirement } from '#lib/rules/index.ts';
import { toSI } from '#lib/quantity/index.ts';

const SOURCE = { title: 'A law of the test', where: 'this test', lookedAt: '2026-11-25' };

function limit(require: Requirement, more: Partial<Check> = {}): Check {
	return {
		id: 'test.limit',
		role: 'check',
		subject: 'free-fall',
		require,
		clause: 's. 1',
		source: SOURCE,
		mark: 'read',
		...more
	};
}

const sixFeet: Bound = { quantity: 'freeFall', max: { value: 6, unit: 'ft' }, pair: '1.8 m' };
const sixKilonewtons: Bound = { quantity: 'peakForce', max: { value: 6, unit: 'kN' } };
const below310: Bound = { quantity: 'massAttached', max: { value: 310, unit: 'lb' }, exclusive: true };
const noContact: Bound = { quantity: 'spare', min: { value: 0, unit: 'm' } };

describe('a bound', () => {
	it('holds 6 ft summed from feet and inches, whatever the last bits say', () => {
		for (const parts of [[2, 4], [1.1, 4.9], [0.1, 0.2, 5.7], [5.9, 0.1], Array<number>(60).fill(0.1)]) {
			const freeFall = parts.reduce((sum, part) => sum + toSI(part, 'ft'), 0);
			expect(judge(limit(sixFeet), {}, { freeFall }).status).toBe('held');
		}
		expect(judge(limit(sixFeet), {}, { freeFall: toSI(72.01, 'in') }).status).toBe('failed');
	});

	it('decides in its primary unit: 1.82 m is under 6 ft though over the printed 1.8 m', () => {
		expect(judge(limit(sixFeet), {}, { freeFall: 1.82 }).status).toBe('held');
		const metric: Bound = { quantity: 'freeFall', max: { value: 1.8, unit: 'm' }, pair: '6 ft' };
		expect(judge(limit(metric), {}, { freeFall: toSI(6, 'ft') }).status).toBe('failed');
	});

	it('fails at the very limit when it is exclusive, noise or no noise', () => {
		const at = toSI(310, 'lb');
		expect(judge(limit(below310), {}, { massAttached: at }).status).toBe('failed');
		expect(judge(limit(below310), {}, { massAttached: at - 1e-12 }).status).toBe('failed');
		expect(judge(limit(below310), {}, { massAttached: toSI(309.9, 'lb') }).status).toBe('held');
	});

	it('says by how much it is held or failed, in SI', () => {
		const [over] = judge(limit(sixFeet), {}, { freeFall: 2 }).bounds;
		expect(over).toMatchObject({ quantity: 'freeFall', side: 'max', limitSI: 1.8288, valueSI: 2, status: 'failed' });
		expect(over?.slack).toBeCloseTo(-0.1712, 12);
		const [under] = judge(limit(noContact), {}, { spare: 0.25 }).bounds;
		expect(under).toMatchObject({ side: 'min', limitSI: 0, slack: 0.25, status: 'held' });
	});

	it('holds contact at nothing to spare, and fails a centimetre short', () => {
		expect(judge(limit(noContact), {}, { spare: 0.3 - 0.1 - 0.2 }).status).toBe('held');
		expect(judge(limit(noContact), {}, { spare: -0.01 }).status).toBe('failed');
	});

	it('is unknown without its quantity, and refuses NaN as a mistake of the caller', () => {
		expect(judge(limit(sixFeet), {}, {}).status).toBe('unknown');
		expect(judge(limit(sixFeet), {}, { freeFall: undefined }).bounds[0]?.slack).toBeUndefined();
		expect(() => judge(limit(sixFeet), {}, { freeFall: Number.NaN })).toThrow(/freeFall/);
		expect(() => judge(limit(sixFeet), {}, { freeFall: Infinity })).toThrow(RangeError);
	});

	it('may be a multiple of another quantity, unknown while that one is', () => {
		const twice: Bound = { quantity: 'strengthPerPerson', min: { times: 2, of: 'peakForce' } };
		const judged = judge(limit(twice), {}, { strengthPerPerson: 16_000, peakForce: 8_000 });
		expect(judged.bounds[0]).toMatchObject({ limitSI: 16_000, slack: 0, status: 'held', multiple: { times: 2, of: 'peakForce' } });
		expect(judge(limit(twice), {}, { strengthPerPerson: 15_999, peakForce: 8_000 }).status).toBe('failed');
		expect(judge(limit(twice), {}, { strengthPerPerson: 16_000 }).status).toBe('unknown');
	});
});

describe('a tree', () => {
	const both: Requirement = { all: [sixFeet, sixKilonewtons] };
	const either: Requirement = { any: [sixFeet, sixKilonewtons] };

	it('all-of is as bad as its worst part', () => {
		expect(judge(limit(both), {}, { freeFall: 1, peakForce: 5000 }).status).toBe('held');
		expect(judge(limit(both), {}, { freeFall: 1 }).status).toBe('unknown');
		expect(judge(limit(both), {}, { freeFall: 2 }).status).toBe('failed');
	});

	it('any-of is as good as its best part', () => {
		expect(judge(limit(either), {}, { freeFall: 3, peakForce: 5000 }).status).toBe('held');
		expect(judge(limit(either), {}, { freeFall: 3 }).status).toBe('unknown');
		expect(judge(limit(either), {}, { freeFall: 3, peakForce: 7000 }).status).toBe('failed');
	});

	it('reports every bound and every fact, whether or not it settled the limit', () => {
		const require: Requirement = { any: [sixFeet, { all: [{ fact: 'factorTwoDesign', is: true }, sixKilonewtons] }] };
		const judged = judge(limit(require), { factorTwoDesign: false }, { freeFall: 1, peakForce: 9000 });
		expect(judged.status).toBe('held');
		expect(judged.bounds.map((bound) => [bound.quantity, bound.status])).toEqual([
			['freeFall', 'held'],
			['peakForce', 'failed']
		]);
		expect(judged.facts).toEqual([{ fact: 'factorTwoDesign', asked: true, status: 'failed' }]);
	});

	it("takes 'unknown' and a missing fact for the same", () => {
		const require: Requirement = { fact: 'rescueArranged', is: true };
		expect(judge(limit(require), { rescueArranged: 'unknown' }, {}).status).toBe('unknown');
		expect(judge(limit(require), {}, {}).status).toBe('unknown');
		expect(judge(limit(require), { rescueArranged: false }, {}).status).toBe('failed');
		expect(judge(limit(require), { rescueArranged: true }, {}).status).toBe('held');
	});
});

describe('a condition', () => {
	const when: Condition = { fact: 'absorber', is: false };

	it('that does not hold leaves the limit held and says that it does not apply', () => {
		const judged = judge(limit(sixFeet, { when }), { absorber: true }, { freeFall: 3 });
		expect(judged).toMatchObject({ applies: 'failed', status: 'held' });
	});

	it('that is unknown leaves a failed limit unknown and a held one held', () => {
		expect(judge(limit(sixFeet, { when }), {}, { freeFall: 3 })).toMatchObject({ applies: 'unknown', status: 'unknown' });
		expect(judge(limit(sixFeet, { when }), {}, { freeFall: 1 })).toMatchObject({ applies: 'unknown', status: 'held' });
	});

	it('joins facts with all, any and not', () => {
		const tree: Condition = {
			all: [{ not: { fact: 'absorber', is: true } }, { any: [{ fact: 'persons', is: 1 }, { fact: 'persons', is: 2 }] }]
		};
		expect(judgeCondition(tree, { absorber: false, persons: 2 })).toBe('held');
		expect(judgeCondition(tree, { absorber: false, persons: 3 })).toBe('failed');
		expect(judgeCondition(tree, { persons: 2 })).toBe('unknown');
		expect(judgeCondition(tree, { absorber: true })).toBe('failed');
	});
});

describe('a limit from memory', () => {
	const remembered = limit(sixFeet, { mark: 'memory', confidence: 'high', source: { title: 'A standard', where: 'the standard' } });

	it('is judged and shown but decides nothing', () => {
		const judged = judge(remembered, {}, { freeFall: 3 });
		expect(judged).toMatchObject({ status: 'failed', decides: false });
		expect(judged.citation).toMatchObject({ mark: 'memory', confidence: 'high' });
	});

	it('decides once its own id is confirmed, and not by the confirmation of another', () => {
		expect(judge(remembered, {}, {}, { confirmed: new Set(['test.limit']) }).decides).toBe(true);
		expect(judge(remembered, {}, {}, { confirmed: new Set(['test.other']) }).decides).toBe(false);
	});
});

it('leaves with its citation: clause, source, mark and what is printed, on the whole and on each bound', () => {
	const judged = judge(limit({ any: [sixFeet, sixKilonewtons] }), {}, {});
	expect(judged.citation).toEqual({ clause: 's. 1', source: SOURCE, mark: 'read', printedAs: ['6 ft (1.8 m)', '6 kN'] });
	expect(judged.bounds.map((bound) => bound.citation.printedAs)).toEqual([['6 ft (1.8 m)'], ['6 kN']]);
	expect(judge(limit(noContact), {}, {}).citation.printedAs).toEqual([]);
});
