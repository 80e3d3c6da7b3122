/** What a record says of a training, row by row: as it is printed on a certificate, and as the employer reads it. */
import { baseOf } from '#lib/mastery/index.ts';
import type { CertificateRow } from '#lib/paper/index.ts';
import { NO_END, type EntryOf, type SignOffRecord, type TrainingRecord } from '#lib/records/index.ts';
import { languageInfo, type Messages, type RecordMessages } from '#lib/text/index.ts';
import { dayText } from '../day-text.ts';
import { ofHundred, ruleName } from '../rule-words.ts';
import { courseName, lessonName, notCoveredName, scopeName, tableNames } from './record-names.ts';

/** Words and their language. */
export interface CertificateWords {
	readonly m: Messages;
	readonly record: Pick<RecordMessages, 'certificate' | 'recordLaw'>;
	readonly language: 'en' | 'es';
}

/** What a record is called: no certificate before the hands-on part is signed. */
export function headingOf({ entry, signOff }: Pick<TrainingRecord, 'entry' | 'signOff'>): 'whole' | 'theory' | 'prior' {
	if (entry.kind === 'prior-training') return 'prior';
	return signOff === undefined ? 'theory' : 'whole';
}

/** @returns a moment as clocks of a zone show it. @param instant ISO 8601 @param zone IANA */
function momentText(instant: string, zone: string, language: 'en' | 'es'): string {
	return new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short', timeZone: zone }).format(new Date(instant));
}

function ratesText(entry: EntryOf<'completed'>, { m, record: { certificate: c }, language }: CertificateWords): string {
	const number = new Intl.NumberFormat(language, { maximumFractionDigits: 0 });
	const list = entry.passRule.rates.map(({ right, allowedTries }) => c.rate({ right: number.format(100 * right), passes: ofHundred(m, language, allowedTries) }));
	return c.rates({ list: list.join('; ') });
}

/** @returns when and where the hands-on part was seen, or that it is not signed. */
export function handsOnText(signOff: SignOffRecord | undefined, { record: { certificate: c }, language }: CertificateWords): string {
	if (signOff === undefined) return c.handsOnMissing;
	const { day, place } = signOff.entry.record;
	return c.handsOn({ day: dayText(day, language), place });
}

/**
 * @param told the name of who was present, null where it is forgotten; and the hands-on part in words
 * @returns the rows of own training
 */
export function theoryRows(entry: EntryOf<'completed'>, told: { readonly present: string | null; readonly handsOn: string }, words: CertificateWords): readonly CertificateRow[] {
	const { m, record, language } = words;
	const c = record.certificate;
	const { course, passRule: rule, supervised } = entry;
	const base = baseOf(rule.id);
	const present = supervised === null ? c.nobodyPresent : c.present({ name: told.present ?? c.erased, how: supervised.identified, place: supervised.place });
	return [
		{ name: c.rows.course, value: c.courseVersion({ course: courseName(m, course.id), n: course.version }) },
		{ name: c.rows.scope, value: scopeName(m, course.scope) },
		{ name: c.rows.subjects, value: course.lessons.map((one) => lessonName(m, one)).join('; '), small: true },
		{ name: c.rows.notCovered, value: course.notCovered.map((one) => notCoveredName(m, one)).join('; '), small: true },
		{ name: c.rows.tables, value: tableNames(m, entry.rules, entry.practice) },
		{ name: c.rows.language, value: c.languageState({ language: languageInfo(entry.language).name, state: c.reviews[entry.languageState] }) },
		{ name: c.rows.dates, value: c.fromTo({ from: momentText(entry.startedAt, entry.zone, language), to: momentText(entry.endedAt, entry.zone, language), zone: entry.zone }) },
		{ name: c.rows.check, value: c.result(entry) },
		{ name: c.rows.passRule, value: c.rule({ rule: ruleName(m, { base, own: base !== rule.id }), n: rule.version, mark: rule.provisional ? c.marks.provisional : c.marks.judged }) },
		...(rule.rates.length === 0 ? [] : [{ name: c.rows.rates, value: ratesText(entry, words), small: true }]),
		{ name: c.rows.present, value: present },
		{ name: c.rows.handsOn, value: told.handsOn },
		{ name: c.rows.basis, value: c.basis.own }
	];
}

/** A row, where there is something to say. */
function given(name: string, value: string | null | undefined): readonly CertificateRow[] {
	return value === null || value === undefined ? [] : [{ name, value }];
}

/** @returns the rows of training from before or elsewhere. */
export function priorRows({ record }: EntryOf<'prior-training'>, { m, record: { certificate: c }, language }: CertificateWords): readonly CertificateRow[] {
	return [
		{ name: c.rows.training, value: record.training },
		...given(c.rows.provider, record.approved?.provider),
		...given(c.rows.programme, record.approved?.programme),
		{ name: c.rows.scope, value: scopeName(m, record.scope) },
		{ name: c.rows.trained, value: record.trainedDay === null ? c.dayUnknown : dayText(record.trainedDay, language) },
		{ name: c.rows.judged, value: dayText(record.judgedDay, language) },
		{ name: c.rows.document, value: record.document ?? c.noDocument, small: record.document !== null },
		{ name: c.rows.basis, value: c.basis.prior }
	];
}

/** @param until last local day; `NO_END` for no fixed end. @returns until when it is valid, and by what */
export function validRow(entry: EntryOf<'completed' | 'prior-training'>, until: string, { record: { certificate: c }, language }: CertificateWords): CertificateRow {
	const by = entry.kind === 'completed' ? c.by[entry.validity.by] : c.by.employer;
	return { name: c.rows.valid, value: until === NO_END ? c.noEnd : c.validUntil({ day: dayText(until, language), by }) };
}
