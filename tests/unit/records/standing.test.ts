import { describe, expect, it } from 'vitest';
import { NO_END, isWithdrawn, lastDayOf, personRecord, standingOf, type Entry, type PersonRecord, type TrainingRecord } from '#lib/records/index.ts';
import { completedEntry, handsOnEntry, orderEntry, priorTrainingEntry } from '../../support/record-entries.ts';

const PERSON = '11111111-1111-4111-8111-111111111111';
const AT = '2026-11-25T09:00:00.000Z';

function fold(entries: readonly Entry[]): { readonly person: PersonRecord; readonly one: TrainingRecord } {
	const person = personRecord(entries.map((entry, i) => ({ seq: i + 1, hash: String(i), entry })));
	const [one] = person.trainings;
	if (one === undefined) throw new Error('no training');
	return { person, one };
}

const revoked = (of: string): Entry => ({ kind: 'revoked', at: AT, by: PERSON, person: PERSON, of, reason: 'other' });
const reinstated = (of: string): Entry => ({ kind: 'reinstated', at: AT, by: PERSON, person: PERSON, of });

/** A year from March to March, signed. */
const COURSE = completedEntry(PERSON, '2026-03-02', { validity: { months: 12, by: 'employer', until: '2027-03-02' } });
const SIGN_OFF = handsOnEntry(PERSON, '2026-03-03');

describe('a record', () => {
	it('stands until the end of its last day', () => {
		const { person, one } = fold([COURSE, SIGN_OFF]);
		expect(lastDayOf(person, one)).toBe('2027-03-02');
		expect([standingOf(person, one, '2027-03-02'), standingOf(person, one, '2027-03-03')]).toEqual(['valid', 'expired']);
	});

	it('without an end stands for ever, and prior training needs no hands-on part', () => {
		const { person, one } = fold([priorTrainingEntry(PERSON, '2026-03-02')]);
		expect([lastDayOf(person, one), standingOf(person, one, '2126-03-02')]).toEqual([NO_END, 'valid']);
	});

	it('of the theory alone is one of theory only, until it is over', () => {
		const { person, one } = fold([COURSE]);
		expect([standingOf(person, one, '2026-11-25'), standingOf(person, one, '2027-03-03')]).toEqual(['theory-only', 'expired']);
	});

	it('ends by the first order of retraining after it: on the due day, or before the day of an order for what was seen', () => {
		const due = fold([COURSE, SIGN_OFF, orderEntry(PERSON, '2026-06-01', '2026-07-01'), orderEntry(PERSON, '2026-06-02', '2026-08-01')]);
		expect(lastDayOf(due.person, due.one)).toBe('2026-07-01');
		const seen = fold([COURSE, SIGN_OFF, orderEntry(PERSON, '2026-06-01', '2026-07-01', 'incident')]);
		expect(lastDayOf(seen.person, seen.one)).toBe('2026-05-31');
		// One that came before it is done by it; one that was withdrawn never was.
		const order = orderEntry(PERSON, '2026-06-01', '2026-07-01');
		const before = fold([order, COURSE, SIGN_OFF]);
		expect(lastDayOf(before.person, before.one)).toBe('2027-03-02');
		const withdrawn = fold([COURSE, SIGN_OFF, order, { kind: 'retraining-withdrawn', at: AT, by: PERSON, person: PERSON, of: order.id }]);
		expect(lastDayOf(withdrawn.person, withdrawn.one)).toBe('2027-03-02');
	});

	it('that was taken back is revoked before all else, and good again when it is reinstated', () => {
		const gone = fold([COURSE, SIGN_OFF, revoked(COURSE.id)]);
		expect([standingOf(gone.person, gone.one, '2030-01-01'), isWithdrawn(gone.person, gone.one)]).toEqual(['revoked', true]);
		const back = fold([COURSE, SIGN_OFF, revoked(COURSE.id), reinstated(COURSE.id)]);
		expect([standingOf(back.person, back.one, '2026-11-25'), isWithdrawn(back.person, back.one)]).toEqual(['valid', false]);
	});

	it('whose sign-off was taken back is theory only, and what was handed out with it is withdrawn; a new sign-off mends both', () => {
		const gone = fold([COURSE, SIGN_OFF, revoked(SIGN_OFF.record.id)]);
		expect([standingOf(gone.person, gone.one, '2026-11-25'), isWithdrawn(gone.person, gone.one)]).toEqual(['theory-only', true]);
		const again = fold([COURSE, SIGN_OFF, revoked(SIGN_OFF.record.id), handsOnEntry(PERSON, '2026-11-20')]);
		expect([standingOf(again.person, again.one, '2026-11-25'), isWithdrawn(again.person, again.one)]).toEqual(['valid', false]);
		const never = fold([COURSE]);
		expect(isWithdrawn(never.person, never.one)).toBe(false);
	});
});
