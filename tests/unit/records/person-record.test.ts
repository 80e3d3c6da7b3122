import { randomUUID } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { NO_END, RETRAINING_REASONS, isWhole, personRecord, stateOn, validityOf, type Entry, type EntryOf, type PersonRecord } from '#lib/records/index.ts';
import { completedEntry, handsOnEntry, orderEntry, priorTrainingEntry } from '../../support/record-entries.ts';

const PERSON = '0f1f64a9-6f3c-4c62-9c2c-54b5a7c0a0b1';
const TODAY = '2026-11-25';

/** A fold over entries as they were appended. */
function fold(...entries: readonly Entry[]): PersonRecord {
	return personRecord(entries.map((entry, i) => ({ seq: i + 2, hash: String(i), entry })));
}

const until = (day: string | null): EntryOf<'completed'>['validity'] => (day === null ? { months: null, by: 'nothing-fixed', until: null } : { months: 24, by: 'law', until: day });
const completed = (day: string, end: string | null = null) => completedEntry(PERSON, day, { validity: until(end) });
const handsOn = (day: string) => handsOnEntry(PERSON, day);
const order = (day: string, due: string, reason?: EntryOf<'retraining-ordered'>['reason']) => orderEntry(PERSON, day, due, reason);
const withdrawn = (of: string): Entry => ({ kind: 'retraining-withdrawn', at: `${TODAY}T10:00:00.000Z`, by: randomUUID(), person: PERSON, of });
const revoked = (of: string): Entry => ({ kind: 'revoked', at: `${TODAY}T10:00:00.000Z`, by: randomUUID(), person: PERSON, of, reason: 'entered-by-mistake' });
const reinstated = (of: string): Entry => ({ kind: 'reinstated', at: `${TODAY}T10:00:00.000Z`, by: randomUUID(), person: PERSON, of });
const standing = (...entries: readonly Entry[]) => {
	const { record, until: end, due, detail } = validityOf(fold(...entries));
	return { record: record?.id, until: end, due, detail };
};

/** @source issue "The employer", the completion record: a record of theory training until the hands-on sign-off is there */
describe('a training', () => {
	it('is none, and then one of theory only, until the hands-on part is signed', () => {
		const passed = completed('2026-11-20', '2028-11-20');
		expect(standing()).toEqual({ record: undefined, until: null, due: undefined, detail: undefined });
		expect(standing(passed)).toEqual({ record: undefined, until: null, due: undefined, detail: 'sign-off-missing' });
		expect(standing(passed, handsOn('2026-11-21'))).toEqual({ record: passed.id, until: '2028-11-20', due: undefined, detail: undefined });
	});

	it('is whole with a sign-off from before the theory too', () => {
		const passed = completed('2026-11-20');
		expect(standing(handsOn('2026-11-19'), passed)).toMatchObject({ record: passed.id, until: NO_END });
	});

	it('from elsewhere, judged adequate, needs no sign-off', () => {
		const prior = priorTrainingEntry(PERSON, '2026-11-20', '2027-06-30');
		const [one] = fold(prior).trainings;
		expect(one !== undefined && isWhole(one)).toBe(true);
		expect(standing(prior)).toEqual({ record: prior.record.id, until: '2027-06-30', due: undefined, detail: undefined });
	});

	it('is not cut short by training from before that is entered later and ends earlier', () => {
		const own = completed('2026-11-20', '2028-11-20');
		const prior = priorTrainingEntry(PERSON, '2026-11-22', '2027-06-30');
		expect(standing(own, handsOn('2026-11-21'), prior)).toEqual({ record: own.id, until: '2028-11-20', due: undefined, detail: undefined });
		// Once an order was carried through, only what came after it counts.
		expect(standing(own, handsOn('2026-11-21'), order('2026-11-22', '2026-12-31'), prior)).toMatchObject({ record: prior.record.id, until: '2027-06-30' });
	});

	it('counts as the last whole one: a new theory alone takes nothing away', () => {
		const first = completed('2024-11-20', '2026-11-30');
		const again = completed('2026-11-20', '2028-11-20');
		const done = [first, handsOn('2024-11-21'), order('2026-11-01', '2026-12-31', 'expiry')];
		expect(standing(...done, again)).toEqual({ record: first.id, until: '2026-11-30', due: '2026-12-31', detail: 'sign-off-missing' });
		expect(standing(...done, again, handsOn('2026-11-22'))).toEqual({ record: again.id, until: '2028-11-20', due: undefined, detail: undefined });
	});

	it('whose hands-on part was never signed is over once retraining is ordered: a signature now would go with what comes', () => {
		const passed = completed('2026-11-20');
		const ordered = order('2026-11-24', '2026-12-24', 'change-of-work');
		expect(standing(passed, ordered)).toEqual({ record: undefined, until: null, due: '2026-12-24', detail: 'retraining-ordered' });
		expect(standing(passed, ordered, completed('2026-12-01'))).toMatchObject({ due: '2026-12-24', detail: 'sign-off-missing' });
		// Withdrawn, it is as if it had not been ordered.
		expect(standing(passed, ordered, withdrawn(ordered.id))).toMatchObject({ due: undefined, detail: 'sign-off-missing' });
	});

	it('keeps what belongs to it: certificate and confirmations, by its id', () => {
		const [one, other] = [completed('2026-11-20'), completed('2026-11-21')];
		const made: Entry = { kind: 'certificate-made', at: `${TODAY}T10:00:00.000Z`, by: randomUUID(), person: PERSON, of: one.id, code: 'a'.repeat(64), statusIndex: 7 };
		const confirmed: Entry = { kind: 'acknowledged', at: `${TODAY}T10:00:00.000Z`, by: PERSON, person: PERSON, of: one.id, meaning: 'I had it.', language: 'en' };
		const byEmployer: Entry = { kind: 'employer-acknowledged', at: `${TODAY}T10:00:00.000Z`, by: randomUUID(), person: PERSON, of: one.id, meaning: 'So it was.', language: 'en' };
		const [first, second] = fold(one, other, made, confirmed, byEmployer).trainings;
		expect([first?.certificate?.entry, first?.acknowledged?.entry, first?.employerAcknowledged?.entry]).toEqual([made, confirmed, byEmployer]);
		expect([second?.certificate, second?.acknowledged, second?.employerAcknowledged]).toEqual([undefined, undefined, undefined]);
	});
});

/** Rules of this program: runs are parted by orders of retraining; common practice, no source. */
describe('an order of retraining', () => {
	const done = [completed('2026-01-20', '2028-01-20'), handsOn('2026-01-21')];

	it('leaves what was valid until its due day, and no longer', () => {
		expect(standing(...done, order('2026-11-20', '2026-12-31'))).toMatchObject({ until: '2026-12-31', due: '2026-12-31', detail: 'retraining-ordered' });
		expect(standing(...done, order('2026-11-20', '2030-12-31'))).toMatchObject({ until: '2028-01-20', due: '2030-12-31' });
	});

	/** @source 29 CFR 1926.503(c)(3): inadequacies in knowledge or use show that the person has not the understanding; from memory */
	it.each(RETRAINING_REASONS)('for "%s" ends at once what was valid only where somebody was seen not to know enough', (reason) => {
		const atOnce = reason === 'seen-inadequate' || reason === 'incident';
		const { until: end } = standing(...done, order('2026-11-20', '2026-12-31', reason));
		expect(end).toBe(atOnce ? '2026-11-19' : '2026-12-31');
		expect(stateOn({ until: end, begun: true }, '2026-11-20', 30)).toBe(atOnce ? 'expired' : 'current');
	});

	it('is done by a training after it, theory and hands-on both; what was signed before does not go with it', () => {
		const again = completed('2026-12-01', '2028-12-01');
		const ordered = [...done, order('2026-11-20', '2026-12-31')];
		expect(fold(...ordered, again).orders.map((one) => one.done)).toEqual([false]);
		expect(standing(...ordered, again)).toMatchObject({ until: '2026-12-31', due: '2026-12-31' });
		const after = fold(...ordered, again, handsOn('2026-12-02'));
		expect(after.orders.map((one) => one.done)).toEqual([true]);
		expect(after.trainings.map(({ run, signOff }) => [run, signOff?.run])).toEqual([[0, 0], [1, 1]]);
		// Why it was done again stands with what was done again.
		expect(after.trainings.map(({ ordered: by }) => by?.seq)).toEqual([undefined, after.orders[0]?.seq]);
		expect(validityOf(after)).toMatchObject({ until: '2028-12-01', due: undefined });
	});

	it('given twice, the one due first holds; a training after the first alone leaves the second open', () => {
		const [first, second] = [order('2026-11-20', '2027-03-31'), order('2026-11-21', '2026-12-31')];
		expect(standing(...done, first, second)).toMatchObject({ until: '2026-12-31', due: '2026-12-31' });
		const between = fold(...done, first, completed('2026-11-20'), handsOn('2026-11-20'), second);
		expect(between.orders.map((one) => one.done)).toEqual([true, false]);
		const after = fold(...done, first, second, completed('2026-11-22'), handsOn('2026-11-22'));
		expect(after.orders.map((one) => one.done)).toEqual([true, true]);
	});

	it('that was withdrawn parts nothing: theory from before it goes with a sign-off after it', () => {
		const passed = completed('2026-11-19', '2028-11-19');
		const ordered = order('2026-11-20', '2026-12-31', 'incident');
		expect(standing(passed, ordered, handsOn('2026-11-22'))).toMatchObject({ record: undefined, until: null });
		expect(standing(passed, ordered, handsOn('2026-11-22'), withdrawn(ordered.id))).toEqual({ record: passed.id, until: '2028-11-19', due: undefined, detail: undefined });
		expect(standing(...done, ordered, withdrawn(ordered.id))).toMatchObject({ until: '2028-01-20', due: undefined, detail: undefined });
	});
});

describe('a record that was taken back', () => {
	const [first, second] = [completed('2026-01-20', '2028-01-20'), completed('2026-06-20', '2028-06-20')];
	const signed = handsOn('2026-01-21');

	it('counts no more, and the one before it counts again', () => {
		expect(standing(first, signed, second)).toMatchObject({ record: second.id });
		expect(standing(first, signed, second, revoked(second.id))).toEqual({ record: first.id, until: '2028-01-20', due: undefined, detail: undefined });
		expect(standing(first, signed, revoked(first.id))).toEqual({ record: undefined, until: null, due: undefined, detail: 'revoked' });
	});

	it('counts again when it is reinstated, and not when it is taken back once more', () => {
		const back = [first, signed, revoked(first.id), reinstated(first.id)];
		expect(standing(...back)).toMatchObject({ record: first.id, detail: undefined });
		expect(fold(...back).trainings[0]?.revoked).toBeUndefined();
		expect(standing(...back, revoked(first.id))).toMatchObject({ record: undefined, detail: 'revoked' });
	});

	it('that is a sign-off leaves a record of theory only, until another is signed', () => {
		expect(standing(first, signed, revoked(signed.record.id))).toMatchObject({ record: undefined, detail: 'sign-off-missing' });
		const anew = handsOn('2026-01-23');
		expect(fold(first, signed, revoked(signed.record.id), anew).trainings[0]?.signOff?.id).toBe(anew.record.id);
	});

	it('makes an order open again that it had done', () => {
		const again = completed('2026-12-01', '2028-12-01');
		const all = [first, signed, order('2026-11-20', '2026-12-31'), again, handsOn('2026-12-02')];
		expect(standing(...all, revoked(again.id))).toMatchObject({ record: first.id, until: '2026-12-31', due: '2026-12-31' });
	});
});

describe('who somebody is', () => {
	const named = (commitment: string): Entry => ({ kind: 'named', at: `${TODAY}T10:00:00.000Z`, by: null, person: PERSON, role: 'learner', commitment });

	it('is the newest commitment; every one there was is kept', () => {
		const [one, other] = ['a'.repeat(64), 'b'.repeat(64)];
		expect(fold(named(one), named(other))).toMatchObject({ named: other, names: [one, other], erased: undefined });
		expect(fold(named(one), { kind: 'identity-erased', at: `${TODAY}T10:00:00.000Z`, by: null, person: PERSON, day: TODAY, why: 'asked-for' }).erased).toBe(TODAY);
	});

	it('has left since the last day that was said, unless they returned', () => {
		const left: Entry = { kind: 'left', at: `${TODAY}T10:00:00.000Z`, by: null, person: PERSON, day: '2026-11-20' };
		const back: Entry = { ...left, kind: 'returned', day: '2026-11-24' };
		expect([fold().left, fold(left).left, fold(left, back).left, fold(left, back, { ...left, day: TODAY }).left]).toEqual([undefined, '2026-11-20', undefined, TODAY]);
	});
});

/** @source issue "The employer", finding: current, expiring within N days, expired, in training, never */
describe('how somebody stands on a day', () => {
	it.each([
		[null, false, 'never'],
		[null, true, 'in-training'],
		['2026-11-24', true, 'expired'],
		// Valid until a day is valid through the whole of it; common practice, no source.
		['2026-11-25', true, 'expires-soon'],
		['2026-12-25', true, 'expires-soon'],
		['2026-12-26', true, 'current'],
		[NO_END, true, 'current'],
		// Prior training: nobody who has it needs to have begun the course.
		['2027-06-30', false, 'current']
	] as const)('valid until %s, course begun %s: %s', (end, begun, state) => {
		expect(stateOn({ until: end, begun }, TODAY, 30)).toBe(state);
	});

	it('with no days ahead, soon is only the last day itself', () => {
		expect([stateOn({ until: TODAY, begun: true }, TODAY, 0), stateOn({ until: '2026-11-26', begun: true }, TODAY, 0)]).toEqual(['expires-soon', 'current']);
	});
});
