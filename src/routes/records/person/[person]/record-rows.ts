/** One record as rows of names and values: what it is about, how it went, who was there, how long it holds. */
import type { NotCovered } from '#lib/course/index.ts';
import type { EntryOf, TrainingRecord } from '#lib/records/index.ts';
import { practiceTable, ruleTable } from '#lib/rules/index.ts';
import type { PersonPage } from '#lib/server/index.ts';
import { jurisdictionName, languageInfo, type EmployerMessages, type Messages, type RecordMessages } from '#lib/text/index.ts';
import { dayText } from '../../../day-text.ts';
import { ofHundred, ruleName } from '../../../rule-words.ts';

export interface Speech {
	readonly m: Messages & EmployerMessages & RecordMessages;
	readonly language: 'en' | 'es';
	readonly page: PersonPage;
}

export interface Row {
	readonly name: string;
	readonly value: string;
}

/** How an id of an own rule begins. */
const OWN = 'own-';

/** @returns a name that is held by a commitment. */
export function heldName({ m, page }: Speech, commitment: string): string {
	return page.committed.get(commitment) ?? m.training.erased;
}

/** @returns the local day of a moment, in words. @param at ISO 8601 */
export function dayAt({ page, language }: Speech, at: string): string {
	return new Intl.DateTimeFormat(language, { day: 'numeric', month: 'long', year: 'numeric', timeZone: page.zone }).format(new Date(at));
}

function momentAt({ page, language }: Speech, at: string): string {
	return new Intl.DateTimeFormat(language, { dateStyle: 'medium', timeStyle: 'short', timeZone: page.zone }).format(new Date(at));
}

/** @returns the rows of a record. */
export function recordRows(speech: Speech, { entry, signOff, acknowledged }: TrainingRecord): readonly Row[] {
	const { m } = speech;
	const rows = entry.kind === 'completed' ? [...completedRows(speech, entry), handsOnRow(speech, signOff)] : priorRows(speech, entry);
	const t = m.onePerson;
	return [...rows, { name: t.rows.acknowledged, value: acknowledged === undefined ? t.notAcknowledged : t.acknowledged({ day: dayAt(speech, acknowledged.entry.at) }) }];
}

function completedRows(speech: Speech, entry: EntryOf<'completed'>): readonly Row[] {
	const { m, language } = speech;
	const c = m.certificate;
	const { course, rows } = { course: m.lessons.course, rows: c.rows };
	const notCovered: Readonly<Record<NotCovered, string>> = course.notCovered;
	const named = (id: string): string => Object.entries(notCovered).find(([known]) => known === id)?.[1] ?? id;
	const { passRule, supervised, validity } = entry;
	const own = passRule.id.startsWith(OWN);
	const rule = ruleName(m, { base: own ? passRule.id.slice(OWN.length) : passRule.id, own });
	const rates = passRule.rates.map(({ right, allowedTries }) => c.rate({ right: ofHundred(m, language, right), passes: ofHundred(m, language, allowedTries) }));
	return [
		{ name: rows.course, value: c.courseVersion({ course: entry.course.id === 'lanyard-orientation' ? course.title : entry.course.id, n: entry.course.version }) },
		{ name: rows.scope, value: course.scope },
		{ name: rows.notCovered, value: entry.course.notCovered.map(named).join('; ') },
		{ name: rows.tables, value: tablesText(speech, entry) },
		{ name: rows.language, value: c.languageState({ language: languageInfo(entry.language).name, state: c.reviews[entry.languageState] }) },
		{ name: rows.dates, value: c.fromTo({ from: momentAt(speech, entry.startedAt), to: momentAt(speech, entry.endedAt), zone: entry.zone }) },
		{ name: rows.check, value: c.result(entry) },
		{ name: rows.passRule, value: c.rule({ rule, n: passRule.version, mark: passRule.provisional ? c.marks.provisional : c.marks.judged }) },
		{ name: rows.rates, value: c.rates({ list: rates.join('; ') }) },
		{
			name: rows.present,
			value: supervised === null ? c.nobodyPresent : c.present({ name: heldName(speech, supervised.named), how: supervised.identified, place: supervised.place })
		},
		{ name: rows.employer, value: entry.employer.name },
		{ name: rows.basis, value: c.basis.own },
		{ name: rows.valid, value: c.validUntil({ day: validity.until === null ? c.noEnd : dayText(validity.until, language), by: c.by[validity.by] }) }
	];
}

/** The tables of law and practice by their titles; an id where a table is not kept any more. */
function tablesText({ m }: Speech, { rules, practice }: EntryOf<'completed'>): string {
	const table = ruleTable(rules);
	const law = table === undefined ? rules : `${jurisdictionName(m, table.jurisdiction)}: ${table.title}`;
	return `${law}; ${practiceTable(practice)?.title ?? practice}`;
}

function priorRows(speech: Speech, { record, signature }: EntryOf<'prior-training'>): readonly Row[] {
	const { m, language } = speech;
	const c = m.certificate;
	return [
		{ name: c.rows.training, value: record.training },
		{ name: c.rows.scope, value: m.lessons.course.scope },
		{ name: c.rows.trained, value: record.trainedDay === null ? c.dayUnknown : dayText(record.trainedDay, language) },
		{ name: c.rows.judged, value: dayText(record.judgedDay, language) },
		{ name: c.rows.document, value: record.document ?? c.noDocument },
		{ name: c.rows.basis, value: c.basis.prior },
		{ name: c.rows.valid, value: record.validUntil === null ? c.noEnd : dayText(record.validUntil, language) },
		{ name: m.onePerson.rows.signed, value: signatureText(speech, signature) }
	];
}

function signatureText(speech: Speech, { named, capacity, at }: EntryOf<'hands-on' | 'prior-training'>['signature']): string {
	return speech.m.onePerson.signedBy({ name: heldName(speech, named), as: speech.m.certificate.capacities[capacity], day: dayAt(speech, at) });
}

/** The hands-on part in one row: when, where, and who signed for it as what. */
function handsOnRow(speech: Speech, signOff: TrainingRecord['signOff']): Row {
	const { m, language } = speech;
	const name = m.onePerson.rows.signOff;
	if (signOff === undefined) return { name, value: m.onePerson.theoryOnly };
	const { record, signature } = signOff.entry;
	return { name, value: `${m.certificate.handsOn({ day: dayText(record.day, language), place: record.place })}. ${signatureText(speech, signature)}` };
}
