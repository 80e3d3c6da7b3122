/** The entries about a person, in words. */
import { LESSON_IDS } from '#lib/course/index.ts';
import type { Placed } from '#lib/records/index.ts';
import type { EmployerMessages, Messages } from '#lib/text/index.ts';
import { dayText } from '../../../day-text.ts';
import { actorName, heldName, type Speech } from './record-rows.ts';

/** @returns what a check is called. @param lesson id of a lesson, or `final` */
export function checkName(m: Messages & EmployerMessages, lesson: string): string {
	if (lesson === 'final') return m.onePerson.finalCheck;
	const known = LESSON_IDS.find((id) => id === lesson);
	return known === undefined ? lesson : m.lessons.of[known].title;
}

/** @returns what an entry says; empty for one that says nothing of a person. */
export function entryText(speech: Speech, { entry }: Placed): string {
	const { m, language } = speech;
	const t = m.onePerson;
	const { events } = t;
	const day = (one: string): string => dayText(one, language);
	switch (entry.kind) {
		case 'named':
			return events.named({ name: heldName(speech, entry.commitment) });
		case 'left':
			return events.left({ day: day(entry.day) });
		case 'returned':
			return events.returned({ day: day(entry.day) });
		case 'identity-erased':
			return events.erased({ day: day(entry.day) });
		case 'former-names-erased':
			return events.formerErased({ day: day(entry.day) });
		case 'check-ended':
			return (entry.passed ? events.checkPassed : events.checkNotPassed)({ check: checkName(m, entry.lesson), n: entry.nth });
		case 'completed':
			return events.completed;
		case 'hands-on':
			return events.handsOn({ day: day(entry.record.day) });
		case 'prior-training':
			return events.prior({ day: day(entry.record.judgedDay) });
		case 'acknowledged':
			return events.acknowledged;
		case 'employer-acknowledged':
			return events.employerAcknowledged;
		case 'retraining-ordered':
			return events.ordered({ reason: m.retraining.reasons[entry.reason], due: day(entry.due) });
		case 'retraining-withdrawn':
			return events.withdrawn;
		case 'revoked':
			return events.revoked({ reason: t.revokeReasons[entry.reason] });
		case 'reinstated':
			return events.reinstated;
		case 'certificate-made':
			return events.certificate;
		case 'opened':
		case 'checkpointed':
			return '';
	}
}

/** @returns who made an entry, in words. */
export function entryBy(speech: Speech, { entry }: Placed): string {
	const t = speech.m.onePerson;
	return entry.by === null ? t.byProgram : t.by({ name: actorName(speech, entry.by) });
}
