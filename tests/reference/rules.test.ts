/**
 * The rule tables against the texts they were taken from, one plan beside each clause. The source
 * stands in each title; what no source prints is said to be from memory.
 */
import { describe, expect, it } from 'vitest';
import { toSI } from '#lib/quantity/index.ts';
import {
	RULE_TABLES,
	absorberClass,
	checksOf,
	decides,
	dutyArises,
	judge,
	practiceTable,
	ruleTable,
	type Check,
	type Facts,
	type Judgement,
	type Quantities,
	type Trigger
} from '#lib/rules/index.ts';

function limitOf(id: string) {
	const table = ruleTable(id.split('.')[0] ?? '');
	const limit = table?.limits.find((one) => one.id === id);
	if (limit === undefined) throw new RangeError(`no limit ${id}`);
	return limit;
}

function check(id: string): Check {
	const limit = limitOf(id);
	if (limit.role !== 'check') throw new TypeError(`${id} is no check`);
	return limit;
}

function trigger(id: string): Trigger {
	const limit = limitOf(id);
	if (limit.role !== 'trigger') throw new TypeError(`${id} is no trigger`);
	return limit;
}

function judged(id: string, facts: Facts, quantities: Quantities): Judgement {
	return judge(check(id), facts, quantities);
}

const ft = (feet: number) => toSI(feet, 'ft');
const lb = (pounds: number) => toSI(pounds, 'lb');
const lbf = (pounds: number) => toSI(pounds, 'lbf');

describe('US construction, 29 CFR 1926.502(d) (read)', () => {
	it('(16)(iii): free fall to 6 ft, not a hundredth of an inch more', () => {
		expect(judged('us-construction.free-fall', {}, { freeFall: ft(6) }).status).toBe('held');
		expect(judged('us-construction.free-fall', {}, { freeFall: ft(6) + toSI(0.01, 'in') }).status).toBe('failed');
		expect(check('us-construction.free-fall').clause).toBe('1926.502(d)(16)(iii)');
	});

	it('(16)(ii): 1,800 lbf, which is a little over the printed 8 kN', () => {
		expect(judged('us-construction.arrest-force', {}, { peakForce: 8000 }).status).toBe('held');
		expect(judged('us-construction.arrest-force', {}, { peakForce: lbf(1800) }).status).toBe('held');
		expect(judged('us-construction.arrest-force', {}, { peakForce: lbf(1801) }).status).toBe('failed');
	});

	it('(16)(iv): 3.5 ft of deceleration, 42 in after the letter of 9 Feb 1995; a 48 in deployment is over it', () => {
		expect(judged('us-construction.deceleration', {}, { decelerationDistance: toSI(42, 'in') }).status).toBe('held');
		expect(judged('us-construction.deceleration', {}, { decelerationDistance: toSI(48, 'in') }).status).toBe('failed');
		expect(judged('us-construction.deceleration', {}, {}).status).toBe('unknown');
	});

	it('(15): 5,000 lbf a person, or twice the force by a qualified person; 16 kN alone is not enough', () => {
		const engineered = { factorTwoDesign: true };
		expect(judged('us-construction.anchorage', {}, { strengthPerPerson: lbf(5000) }).status).toBe('held');
		expect(judged('us-construction.anchorage', {}, { strengthPerPerson: 16_500, peakForce: 8000 }).status).toBe('unknown');
		expect(judged('us-construction.anchorage', { factorTwoDesign: false }, { strengthPerPerson: 16_500, peakForce: 8000 }).status).toBe('failed');
		expect(judged('us-construction.anchorage', engineered, { strengthPerPerson: 16_500, peakForce: 8000 }).status).toBe('held');
		expect(judged('us-construction.anchorage', engineered, { strengthPerPerson: 15_500, peakForce: 8000 }).status).toBe('failed');
	});

	it('note to (16): below 310 lb; from 310 lb up only with criteria adapted', () => {
		expect(judged('us-construction.capacity', {}, { massAttached: lb(309.9) }).status).toBe('held');
		expect(judged('us-construction.capacity', { systemAdaptedToMass: false }, { massAttached: lb(310) }).status).toBe('failed');
		expect(judged('us-construction.capacity', {}, { massAttached: lb(310) }).status).toBe('unknown');
		expect(judged('us-construction.capacity', { systemAdaptedToMass: true }, { massAttached: lb(340) }).status).toBe('held');
	});

	it('(17): attached at the back or above the head, not at the chest; (d): no body belt', () => {
		expect(judged('us-construction.attachment', { attachment: 'above-head' }, {}).status).toBe('held');
		expect(judged('us-construction.attachment', { attachment: 'chest' }, {}).status).toBe('failed');
		expect(judged('us-construction.harness', { harness: 'body-belt' }, {}).status).toBe('failed');
	});

	it('1926.501(b), .451(g)(1), .760: duty at 6 ft, on scaffolds above 10 ft, in steel erection above 15 ft', () => {
		expect(dutyArises(trigger('us-construction.duty'), { workplace: 'general' }, { fallHeight: ft(6) })).toBe('held');
		expect(dutyArises(trigger('us-construction.duty'), { workplace: 'general' }, { fallHeight: ft(5.99) })).toBe('failed');
		expect(dutyArises(trigger('us-construction.duty-scaffold'), { workplace: 'scaffold' }, { fallHeight: ft(10) })).toBe('failed');
		expect(dutyArises(trigger('us-construction.duty-scaffold'), { workplace: 'scaffold' }, { fallHeight: ft(10.1) })).toBe('held');
		expect(dutyArises(trigger('us-construction.duty-steel-erection'), { workplace: 'general' }, { fallHeight: ft(20) })).toBe('failed');
	});
});

describe('US general industry, 29 CFR 1910.140 (read)', () => {
	it('(d)(2)(ii): more than 6 ft if the maker tested it and the force stays within 1,800 lbf', () => {
		const fall = { freeFall: ft(8) };
		expect(judged('us-general-industry.free-fall', {}, { freeFall: ft(6) }).status).toBe('held');
		expect(judged('us-general-industry.free-fall', {}, { ...fall, peakForce: lbf(1800) }).status).toBe('unknown');
		expect(judged('us-general-industry.free-fall', { makerTestedLongerFreeFall: true }, { ...fall, peakForce: lbf(1800) }).status).toBe('held');
		expect(judged('us-general-industry.free-fall', { makerTestedLongerFreeFall: true }, { ...fall, peakForce: lbf(1900) }).status).toBe('failed');
		expect(judged('us-general-industry.free-fall', { makerTestedLongerFreeFall: false }, fall).status).toBe('failed');
	});

	it('(c)(22): the chest only with at most 2 ft of free fall', () => {
		expect(judged('us-general-industry.attachment', { attachment: 'chest' }, { freeFall: ft(2) }).status).toBe('held');
		expect(judged('us-general-industry.attachment', { attachment: 'chest' }, { freeFall: ft(2.1) }).status).toBe('failed');
		expect(judged('us-general-industry.attachment', { attachment: 'back' }, { freeFall: ft(6) }).status).toBe('held');
	});

	it('(d)(1)(ii): the same 3.5 ft, though printed 1.1 m here and 1.07 m in construction', () => {
		const at = { decelerationDistance: 1.08 };
		expect(judged('us-general-industry.deceleration', {}, at).status).toBe('failed');
		expect(judged('us-construction.deceleration', {}, at).status).toBe('failed');
		expect(judged('us-general-industry.deceleration', {}, at).citation.printedAs).toEqual(['3.5 ft (1.1 m)']);
		expect(judged('us-construction.deceleration', {}, at).citation.printedAs).toEqual(['3.5 ft (1.07 m)']);
	});

	it('1910.28(b)(1): duty at 4 ft (read in a reproduction)', () => {
		expect(dutyArises(trigger('us-general-industry.duty'), {}, { fallHeight: ft(4) })).toBe('held');
		expect(dutyArises(trigger('us-general-industry.duty'), {}, { fallHeight: ft(3.9) })).toBe('failed');
	});
});

describe('Quebec, S-2.1 r. 4, s. 2.10.12 (read in French) and 2.10.15 (read)', () => {
	it('asks 1.8 m or 6 kN: either is enough', () => {
		expect(judged('ca-quebec.free-fall-or-force', {}, { freeFall: 1.8, peakForce: 8000 }).status).toBe('held');
		expect(judged('ca-quebec.free-fall-or-force', {}, { freeFall: 3, peakForce: 6000 }).status).toBe('held');
		expect(judged('ca-quebec.free-fall-or-force', {}, { freeFall: 3 }).status).toBe('unknown');
		expect(judged('ca-quebec.free-fall-or-force', {}, { freeFall: 3, peakForce: 6100 }).status).toBe('failed');
	});

	it('does not take 6 ft for 1.8 m', () => {
		expect(judged('ca-quebec.free-fall-or-force', {}, { freeFall: ft(6), peakForce: 8000 }).status).toBe('failed');
	});

	it('keeps a lanyard with absorber to 2 m, and asks nothing of one without', () => {
		expect(judged('ca-quebec.lanyard-length', { absorber: true }, { lanyardLength: 2 }).status).toBe('held');
		expect(judged('ca-quebec.lanyard-length', { absorber: true }, { lanyardLength: 2.01 }).status).toBe('failed');
		expect(judged('ca-quebec.lanyard-length', { absorber: false }, { lanyardLength: 3 })).toMatchObject({ applies: 'failed', status: 'held' });
	});

	it('asks an anchorage of 18 kN, or engineered for twice the force, for one person', () => {
		expect(judged('ca-quebec.anchorage', {}, { strengthPerPerson: 18_000 }).status).toBe('held');
		expect(judged('ca-quebec.anchorage', { factorTwoDesign: true }, { strengthPerPerson: 12_000, peakForce: 6000 }).status).toBe('held');
		expect(judged('ca-quebec.anchorage', { factorTwoDesign: false }, { strengthPerPerson: 17_900, peakForce: 6000 }).status).toBe('failed');
		expect(judged('ca-quebec.one-person', { persons: 2 }, {}).status).toBe('failed');
		expect(judged('ca-quebec.sideways', {}, { offset: 3 }).status).toBe('held');
		expect(judged('ca-quebec.sideways', {}, { offset: 3.1 }).status).toBe('failed');
	});
});

describe('Alberta, OHS Code Part 9 (limits read in a digest; 16 kN and duty read)', () => {
	it('limits free fall to 1.2 m only where there is no absorber', () => {
		expect(judged('ca-alberta.free-fall', { absorber: false }, { freeFall: 1.2 }).status).toBe('held');
		expect(judged('ca-alberta.free-fall', { absorber: false }, { freeFall: 1.3 }).status).toBe('failed');
		expect(judged('ca-alberta.free-fall', { absorber: true }, { freeFall: 1.8 })).toMatchObject({ applies: 'failed', status: 'held' });
	});

	it('limits the force to 6 kN, to 8 kN with class E6 used as instructed', () => {
		const e6 = { absorberClass: 'csa-e6', usedAsInstructed: true };
		expect(judged('ca-alberta.arrest-force', {}, { peakForce: 6000 }).status).toBe('held');
		expect(judged('ca-alberta.arrest-force', { absorberClass: 'csa-e4' }, { peakForce: 6100 }).status).toBe('failed');
		expect(judged('ca-alberta.arrest-force', e6, { peakForce: 8000 }).status).toBe('held');
		expect(judged('ca-alberta.arrest-force', e6, { peakForce: 8100 }).status).toBe('failed');
		expect(judged('ca-alberta.arrest-force', { ...e6, usedAsInstructed: false }, { peakForce: 8000 }).status).toBe('failed');
		expect(judged('ca-alberta.arrest-force', { absorberClass: 'csa-e6' }, { peakForce: 8000 }).status).toBe('unknown');
	});

	it('asks 16 kN of an anchorage (Explanation Guide, s. 152), formerly 22.2', () => {
		expect(judged('ca-alberta.anchorage', {}, { strengthPerPerson: 16_000 }).status).toBe('held');
		expect(judged('ca-alberta.anchorage', {}, { strengthPerPerson: 15_900 }).status).toBe('failed');
	});

	it('s. 139(1): duty at 3 m, in permanent work areas above 1.2 m', () => {
		expect(dutyArises(trigger('ca-alberta.duty'), {}, { fallHeight: 3 })).toBe('held');
		expect(dutyArises(trigger('ca-alberta.duty-permanent'), { workplace: 'permanent' }, { fallHeight: 1.2 })).toBe('failed');
		expect(dutyArises(trigger('ca-alberta.duty-permanent'), { workplace: 'permanent' }, { fallHeight: 1.3 })).toBe('held');
		expect(dutyArises(trigger('ca-alberta.duty-permanent'), { workplace: 'general' }, { fallHeight: 1.3 })).toBe('failed');
	});
});

describe('Ontario, O. Reg. 213/91', () => {
	it('s. 26: duty above 3 m (read), not at 3 m', () => {
		expect(dutyArises(trigger('ca-ontario.duty'), {}, { fallHeight: 3 })).toBe('failed');
		expect(dutyArises(trigger('ca-ontario.duty'), {}, { fallHeight: 3.1 })).toBe('held');
	});

	it('s. 26.7: a temporary support of 8 kN, of 6 kN with an absorber (read in a digest)', () => {
		expect(judged('ca-ontario.anchorage', { absorber: false }, { strengthPerPerson: 8000 }).status).toBe('held');
		expect(judged('ca-ontario.anchorage', { absorber: false }, { strengthPerPerson: 6000 }).status).toBe('failed');
		expect(judged('ca-ontario.anchorage', { absorber: true }, { strengthPerPerson: 6000 }).status).toBe('held');
	});

	it('s. 26.6: 8 kN is from memory, so it decides nothing until it is confirmed', () => {
		const over = judged('ca-ontario.arrest-force', {}, { peakForce: 9000 });
		expect(over).toMatchObject({ status: 'failed', decides: false });
		expect(decides(check('ca-ontario.arrest-force'), new Set(['ca-ontario.arrest-force']))).toBe(true);
	});
});

describe('European Union and United Kingdom', () => {
	it.each(['eu', 'uk'])('%s: law names contact without a number (Annex II 3.1.2.2; Schedule 5 Part 4)', (id) => {
		const contact = judged(`${id}.contact`, {}, { spare: 0 });
		expect(contact).toMatchObject({ status: 'held', decides: true });
		expect(contact.citation.printedAs).toEqual([]);
	});

	it.each(['eu', 'uk'])('%s: 6 kN and 2 m are the standards\' (EN 363 and EN 354 in DGUV Regel 112-198)', (id) => {
		expect(judged(`${id}.arrest-force`, {}, { peakForce: 6000 }).status).toBe('held');
		expect(judged(`${id}.arrest-force`, {}, { peakForce: 6100 }).status).toBe('failed');
		expect(judged(`${id}.lanyard-length`, {}, { lanyardLength: 2 }).status).toBe('held');
		expect(judged(`${id}.lanyard-length`, {}, { lanyardLength: 2.1 }).status).toBe('failed');
		expect(judged(`${id}.arrest-force`, {}, {}).citation.clause).toMatch(/EN 363/);
	});

	it.each(['eu', 'uk'])('%s: EN 795 asks 12 kN and 1 kN for each further user (from memory)', (id) => {
		expect(judged(`${id}.anchorage`, { persons: 1 }, { anchorageStrength: 12_000 })).toMatchObject({ status: 'held', decides: false });
		expect(judged(`${id}.anchorage`, { persons: 2 }, { anchorageStrength: 12_000 }).status).toBe('failed');
		expect(judged(`${id}.anchorage`, { persons: 3 }, { anchorageStrength: 14_000 }).status).toBe('held');
		expect(judged(`${id}.anchorage`, { persons: 4 }, { anchorageStrength: 20_000 }).applies).toBe('failed');
	});

	it('UK Schedule 5 Part 4: not where a line may be cut', () => {
		expect(judged('uk.edge', { lineMeetsEdge: false }, {}).status).toBe('held');
		expect(judged('uk.edge', { lineMeetsEdge: true }, {}).status).toBe('unknown');
		expect(judged('uk.edge', { lineMeetsEdge: true, lineMayBeCut: true }, {}).status).toBe('failed');
	});
});

describe('Australia, Queensland WHS Regulation 2011, s. 306I (read)', () => {
	it('(4): 6 kN; (7): no contact', () => {
		expect(judged('au.arrest-force', {}, { peakForce: 6000 }).status).toBe('held');
		expect(judged('au.arrest-force', {}, { peakForce: 6001 }).status).toBe('failed');
		expect(judged('au.contact', {}, { spare: -0.1 }).status).toBe('failed');
	});

	it('(2): 15 kN for one, 12 kN if the free fall is limited, 21 kN for two', () => {
		expect(judged('au.anchorage', { persons: 1 }, { anchorageStrength: 15_000 }).status).toBe('held');
		expect(judged('au.anchorage', { persons: 1, limitedFreeFall: true }, { anchorageStrength: 12_000 }).status).toBe('held');
		expect(judged('au.anchorage', { persons: 1, limitedFreeFall: false }, { anchorageStrength: 12_000 }).status).toBe('failed');
		expect(judged('au.anchorage', { persons: 1 }, { anchorageStrength: 12_000 }).status).toBe('unknown');
		expect(judged('au.anchorage', { persons: 2 }, { anchorageStrength: 20_000 }).status).toBe('failed');
		expect(judged('au.anchorage', { persons: 2 }, { anchorageStrength: 21_000 }).status).toBe('held');
	});

	it('AS/NZS 1891.4: 2 m of free fall is from memory and shown as such', () => {
		expect(judged('au.free-fall', {}, { freeFall: 2.1 })).toMatchObject({ status: 'failed', decides: false });
	});
});

describe('practice and equipment', () => {
	it('never takes 0.6 m and 2 ft for the same margin (rules-and-limits, section 0)', () => {
		const metric = practiceTable('canada')?.margin;
		const imperial = practiceTable('us-two-foot')?.margin;
		expect(metric && toSI(metric.value, metric.unit)).toBe(0.6);
		expect(imperial && toSI(imperial.value, imperial.unit)).toBe(0.6096);
	});

	it('counts the body by one custom each: D-ring height, or full height (Technical Manual; WAC pattern)', () => {
		expect(practiceTable('us-two-foot')?.bodyCustom).toBe('d-ring-and-stretch');
		expect(practiceTable('us-three-foot-full-height')?.bodyCustom).toBe('full-height');
		expect(practiceTable('japan')?.crossCheckOnly).toBe(true);
	});

	it('E4 and E6 by the Alberta Explanation Guide, s. 142.3 (read): 4/6 kN to 115 kg, 6/8 kN from 90 to 175 kg', () => {
		const e4 = absorberClass('csa-e4');
		const e6 = absorberClass('csa-e6');
		expect([e4?.peakForce.value, e4?.peakForceConditioned?.value, e4?.massMin?.value, e4?.massMax?.value]).toEqual([4, 6, 45, 115]);
		expect([e6?.peakForce.value, e6?.peakForceConditioned?.value, e6?.massMin?.value, e6?.massMax?.value]).toEqual([6, 8, 90, 175]);
		expect([e4?.peakForce.mark, e6?.massMax?.mark, e6?.deploymentMax.mark]).toEqual(['read', 'read', 'memory']);
	});

	it('every class that a rule table names is there', () => {
		const named = RULE_TABLES.flatMap((table) => JSON.stringify(table.limits).match(/"absorberClass","is":"[^"]+"/g) ?? []).map(
			(text) => /"is":"([^"]+)"/.exec(text)?.[1] ?? ''
		);
		expect(named).toEqual(['csa-e6']);
		for (const id of named) expect(absorberClass(id)?.id).toBe(id);
	});
});

it('no table limits the contact rule to what a plan with nothing to spare would fail', () => {
	const contacts = RULE_TABLES.flatMap(checksOf).filter((limit) => limit.subject === 'contact');
	expect(contacts.map((limit) => limit.id.split('.')[0])).toEqual([
		'us-construction',
		'us-general-industry',
		'ca-ontario',
		'ca-alberta',
		'eu',
		'uk',
		'au'
	]);
	for (const limit of contacts) {
		expect(judge(limit, {}, { spare: 0 }).status).toBe('held');
		expect(judge(limit, {}, { spare: -0.001 }).status).toBe('failed');
	}
});
