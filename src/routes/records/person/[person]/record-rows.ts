/** One record as rows of names and values: what it is about, how it went, who was there, how long it holds. */
import { NO_END, type EntryOf, type TrainingRecord } from '#lib/records/index.ts';
import type { PersonPage } from '#lib/server/index.ts';
import type { EmployerMessages, Messages, RecordMessages } from '#lib/text/index.ts';
import { dayText } from '../../../day-text.ts';
import { shownName } from '../../../shown-name.ts';
import { handsOnText, priorRows, theoryRows, validRow } from '../../../handing-out/training-rows.ts';

/** Words, and the page that they speak of. */
export interface Speech {
	readonly m: Messages & EmployerMessages & RecordMessages;
	readonly language: 'en' | 'es';
	readonly page: PersonPage;
}

export interface Row {
	readonly name: string;
	readonly value: string;
}

/** @returns a name that is held by a commitment. */
export function heldName({ m, page }: Speech, commitment: string): string {
	return page.committed.get(commitment) ?? m.training.erased;
}

/** @returns the name of who did something. @param by id of a person; null for the program */
export function actorName({ m, page }: Speech, by: string | null): string {
	return shownName((by === null ? undefined : page.actors.get(by)) ?? m.onePerson.unknown, m.training.erased);
}

/** @returns the local day of a moment, in words. @param at ISO 8601 */
export function dayAt({ page, language }: Speech, at: string): string {
	return new Intl.DateTimeFormat(language, { day: 'numeric', month: 'long', year: 'numeric', timeZone: page.zone }).format(new Date(at));
}

/** @returns the rows of a record: what its certificate says of it, who signed, and what the worker said. */
export function recordRows(speech: Speech, { entry, signOff, ordered, acknowledged, employerAcknowledged, validUntil }: TrainingRecord): readonly Row[] {
	const { m, language } = speech;
	const t = m.onePerson;
	const words = { m, record: m, language };
	const valid = validRow(entry, validUntil ?? NO_END, words);
	const byEmployer = employerAcknowledged?.entry;
	const said = [
		{ name: t.rows.acknowledged, value: acknowledged === undefined ? t.notAcknowledged : t.acknowledged({ day: dayAt(speech, acknowledged.entry.at) }) },
		{ name: t.rows.employerAcknowledged, value: byEmployer === undefined ? t.notEmployerAcknowledged : t.employerAcknowledged({ name: actorName(speech, byEmployer.by), day: dayAt(speech, byEmployer.at) }) }
	];
	const order = ordered === undefined ? [] : [{ name: t.rows.ordered, value: t.orderedFor({ reason: m.retraining.reasons[ordered.entry.reason], day: dayText(ordered.entry.day, language) }) }];
	if (entry.kind === 'prior-training') return [...priorRows(entry, words), ...order, valid, { name: t.rows.signed, value: signatureText(speech, entry.signature) }, ...said];
	const present = entry.supervised === null ? null : heldName(speech, entry.supervised.named);
	const handsOn = signOff === undefined ? t.theoryOnly : `${handsOnText(signOff, words)}. ${signatureText(speech, signOff.entry.signature)}`;
	return [{ name: m.certificate.rows.employer, value: entry.employer.name }, ...theoryRows(entry, { present, handsOn }, words), ...order, valid, ...said];
}

function signatureText(speech: Speech, { named, capacity, at }: EntryOf<'hands-on' | 'prior-training'>['signature']): string {
	return speech.m.onePerson.signedBy({ name: heldName(speech, named), as: speech.m.certificate.capacities[capacity], day: dayAt(speech, at) });
}
